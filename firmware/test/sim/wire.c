#include "wire.h"

#include <avr_uart.h>
#include <sim_io.h>
#include <stdlib.h>
#include <string.h>

#define BITS_PER_BYTE 10
#define RECEIVER_BYTES 3 /* two buffered and one in the shift register, as in the data sheet */
#define OVERRUN_FLAG 0x08
#define RECEIVER_ON 0x10
#define DOUBLE_SPEED 0x02

static avr_uart_t *uart(const struct wire *wire) {
  return wire->chip->avr->io[AVR_DATA_TO_IO(REG_UDR0)].r.param;
}

static cycles_t bit_cycles(const struct wire *wire) {
  const uint8_t *data = wire->chip->avr->data;
  cycles_t divider = ((cycles_t)(data[REG_UBRR0H] & 0x0F) << 8 | data[REG_UBRR0L]) + 1;
  return divider * (data[REG_UCSR0A] & DOUBLE_SPEED ? 8 : 16);
}

static size_t waiting_in_receiver(const struct wire *wire) {
  const uart_fifo_t *fifo = &uart(wire)->input;
  return (size_t)(fifo->write + uart_fifo_fifo_size - fifo->read) % uart_fifo_fifo_size;
}

static avr_cycle_count_t send_next(struct avr_t *avr, avr_cycle_count_t when, void *context) {
  struct wire *wire = context;
  (void)when;
  uart(wire)->cycles_per_byte = BITS_PER_BYTE * bit_cycles(wire);
  if (wire->count == 0) {
    wire->sending = false;
    return 0;
  }
  bool on = avr->data[REG_UCSR0B] & RECEIVER_ON;
  if (on && (wire->stopped || waiting_in_receiver(wire) >= RECEIVER_BYTES)) {
    if (wire->held++ == 0) {
      journal_write(wire->journal, "note", avr->cycle, "a byte to the board waits: its receiver is full");
    }
    return avr->cycle + bit_cycles(wire);
  }
  unsigned char byte = wire->queue[wire->first];
  wire->first = (wire->first + 1) % wire->room;
  wire->count--;
  wire->in_byte = byte;
  wire->in_begun = avr->cycle;
  if (on) {
    avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_INPUT), byte);
  } else if (wire->unheard++ == 0) {
    journal_write(wire->journal, "note", avr->cycle, "a byte was sent while the board's receiver was off");
  }
  return avr->cycle + BITS_PER_BYTE * bit_cycles(wire);
}

static void start_sending(struct wire *wire) {
  wire->sending = true;
  avr_cycle_timer_register(wire->chip->avr, 1, send_next, wire);
}

void wire_send(struct wire *wire, const unsigned char *bytes, size_t count) {
  if (wire->count + count > wire->room) {
    size_t room = 2 * (wire->count + count) + 256;
    unsigned char *queue = malloc(room);
    for (size_t i = 0; i < wire->count; i++) {
      queue[i] = wire->queue[(wire->first + i) % wire->room];
    }
    free(wire->queue);
    wire->queue = queue;
    wire->room = room;
    wire->first = 0;
  }
  for (size_t i = 0; i < count; i++) {
    wire->queue[(wire->first + wire->count++) % wire->room] = bytes[i];
  }
  if (!wire->sending && wire->count > 0) {
    start_sending(wire);
  }
}

void wire_overrun(struct wire *wire, const unsigned char *bytes, size_t count) {
  avr_t *avr = wire->chip->avr;
  for (size_t i = 0; i < count; i++) {
    if (waiting_in_receiver(wire) < RECEIVER_BYTES) {
      avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_INPUT), bytes[i]);
    } else {
      avr->data[REG_UCSR0A] |= OVERRUN_FLAG;
    }
  }
}

/* One bit of one character near the start of the line is turned over, never into a line end. */
static unsigned char corrupt(struct wire *wire, unsigned char byte) {
  size_t place = 2 + wire->corrupted * 7 % 9;
  if (!wire->corrupting || wire->length != place) {
    return byte;
  }
  unsigned char bit = (unsigned char)(1u << wire->corrupted % 5);
  unsigned char turned = byte ^ bit;
  if (turned == '\n' || turned == '\r') {
    turned = byte ^ 0x40;
  }
  return turned;
}

static void sent(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq;
  struct wire *wire = context;
  unsigned char byte = (unsigned char)value;
  uart(wire)->cycles_per_byte = BITS_PER_BYTE * bit_cycles(wire);
  wire->out_byte = byte;
  wire->out_begun = wire->chip->avr->cycle;
  if (wire->length == 0) {
    wire->corrupting = wire->corrupt_lines > 0;
  }
  unsigned char passed = corrupt(wire, byte);
  if (byte == '\n') {
    size_t end = wire->length;
    wire->line[end > 0 && wire->line[end - 1] == '\r' ? end - 1 : end] = 0;
    journal_write(wire->journal, "tx", wire->chip->avr->cycle, "%s", wire->line);
    if (wire->corrupting) {
      wire->corrupt_lines--;
      wire->corrupted++;
      journal_write(wire->journal, "note", wire->chip->avr->cycle, "one bit of that line was turned over on its way");
    }
    wire->length = 0;
  } else if (wire->length + 1 < sizeof wire->line) {
    wire->line[wire->length++] = (char)byte;
  }
  if (wire->out) {
    wire->out(wire->out_context, passed);
  }
}

static void flow_stop(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq;
  ((struct wire *)context)->stopped = value != 0;
}

void wire_begin(struct wire *wire, struct chip *chip, struct journal *journal) {
  wire->chip = chip;
  wire->journal = journal;
  avr_t *avr = chip->avr;
  uint32_t flags = 0; /* neither prints what the board sends nor sleeps when it polls */
  avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('0'), &flags);
  avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUTPUT), sent, wire);
  avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUT_XOFF), flow_stop, wire);
}

void wire_free(struct wire *wire) {
  free(wire->queue);
}

void wire_rearm(struct wire *wire) {
  wire->stopped = false;
  if (wire->sending) {
    start_sending(wire);
  }
}

/* Nothing is slower than a byte of ten bits at 300 baud. */
#define LONGEST_BYTE (BITS_PER_BYTE * (CYCLES_PER_SECOND / 300))

static bool level_of(const struct wire *wire, uint8_t byte, cycles_t begun, cycles_t now) {
  if (begun == 0 || now - begun > LONGEST_BYTE) {
    return true;
  }
  cycles_t place = (now - begun) / bit_cycles(wire);
  return place > 8 || (place > 0 && (byte >> (place - 1) & 1));
}

bool wire_txd(const struct wire *wire, cycles_t now) {
  return level_of(wire, wire->out_byte, wire->out_begun, now);
}

bool wire_rxd(const struct wire *wire, cycles_t now) {
  return level_of(wire, wire->in_byte, wire->in_begun, now);
}
