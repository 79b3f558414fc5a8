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
  return wire->chip->avr->io[AVR_DATA_TO_IO(REG_UDR0)].w.param;
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

static cycles_t byte_cycles(const struct wire *wire) {
  return BITS_PER_BYTE * bit_cycles(wire);
}

static bool receiver_on(const struct wire *wire) {
  return wire->chip->avr->data[REG_UCSR0B] & RECEIVER_ON;
}

static void raise_input(struct wire *wire, unsigned char byte) {
  avr_t *avr = wire->chip->avr;
  uart(wire)->cycles_per_byte = 1; /* it has already taken its time on the line */
  avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_INPUT), byte);
  uart(wire)->cycles_per_byte = byte_cycles(wire);
}

static void deliver(struct wire *wire) {
  wire->in_flight = false;
  if (receiver_on(wire)) {
    raise_input(wire, wire->in.byte);
  } else if (wire->unheard++ == 0) {
    journal_write(wire->journal, "note", wire->chip->avr->cycle, "a byte was sent while the board's receiver was off");
  }
}

static avr_cycle_count_t send_next(struct avr_t *avr, avr_cycle_count_t when, void *context) {
  struct wire *wire = context;
  (void)when;
  if (wire->in_flight) {
    deliver(wire);
  }
  if (wire->count == 0) {
    wire->sending = false;
    return 0;
  }
  if (receiver_on(wire) && (wire->stopped || waiting_in_receiver(wire) >= RECEIVER_BYTES)) {
    if (!wire->holding && wire->held++ == 0) {
      journal_write(wire->journal, "note", avr->cycle, "a byte to the board waits: its receiver is full");
    }
    wire->holding = true;
    return avr->cycle + bit_cycles(wire);
  }
  wire->holding = false;
  wire->in = (struct sent_byte){wire->queue[wire->first], avr->cycle};
  wire->in_flight = true;
  wire->first = (wire->first + 1) % wire->room;
  wire->count--;
  return avr->cycle + byte_cycles(wire);
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
      raise_input(wire, bytes[i]);
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

static avr_cycle_count_t buffer_empty(struct avr_t *avr, avr_cycle_count_t when, void *context) {
  (void)when;
  avr_raise_interrupt(avr, &uart(context)->udrc);
  return 0;
}

/* One byte in the shift register, one in the buffer before it, as in the data sheet. */
static void shift_out(struct wire *wire, unsigned char byte) {
  avr_t *avr = wire->chip->avr;
  bool idle = avr->cycle >= wire->out_free;
  cycles_t begun = idle ? avr->cycle : wire->out_free;
  uart(wire)->cycles_per_byte = byte_cycles(wire);
  wire->out_before = wire->out_last;
  wire->out_last = (struct sent_byte){byte, begun};
  wire->out_free = begun + byte_cycles(wire);
  avr_cycle_timer_register(avr, begun - avr->cycle + 1, buffer_empty, wire);
}

static void sent(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq;
  struct wire *wire = context;
  unsigned char byte = (unsigned char)value;
  shift_out(wire, byte);
  if (wire->length == 0) {
    wire->corrupting = wire->corrupt_lines > 0;
  }
  unsigned char passed = corrupt(wire, byte);
  if (byte == '\n') {
    size_t end = wire->length;
    wire->line[end > 0 && wire->line[end - 1] == '\r' ? end - 1 : end] = 0;
    journal_write(wire->journal, "tx", wire->out_free, "%s", wire->line);
    if (wire->corrupting) {
      wire->corrupt_lines--;
      wire->corrupted++;
      journal_write(wire->journal, "note", wire->out_free, "one bit of that line was turned over on its way");
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

/* Without simavr's limit on reading what has already come. */
static uint8_t read_data(struct avr_t *avr, avr_io_addr_t address, void *context) {
  struct wire *wire = context;
  avr_uart_t *port = uart(wire);
  port->rx_cnt = 0;
  return wire->read_data(avr, address, port);
}

void wire_begin(struct wire *wire, struct chip *chip, struct journal *journal) {
  wire->chip = chip;
  wire->journal = journal;
  avr_t *avr = chip->avr;
  uint32_t flags = 0; /* neither prints what the board sends nor sleeps when it polls */
  avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('0'), &flags);
  avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUTPUT), sent, wire);
  avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUT_XOFF), flow_stop, wire);
  wire->read_data = avr->io[AVR_DATA_TO_IO(REG_UDR0)].r.c;
  avr->io[AVR_DATA_TO_IO(REG_UDR0)].r.c = read_data;
  avr->io[AVR_DATA_TO_IO(REG_UDR0)].r.param = wire;
}

void wire_free(struct wire *wire) {
  free(wire->queue);
}

void wire_rearm(struct wire *wire) {
  wire->stopped = wire->in_flight = false;
  wire->out_free = 0;
  if (wire->sending) {
    start_sending(wire);
  }
}

/* Nothing is slower than a byte of ten bits at 300 baud. */
#define LONGEST_BYTE (BITS_PER_BYTE * (CYCLES_PER_SECOND / 300))

static bool level_of(const struct wire *wire, struct sent_byte sent, cycles_t now) {
  if (sent.begun == 0 || now - sent.begun > LONGEST_BYTE) {
    return true;
  }
  cycles_t place = (now - sent.begun) / bit_cycles(wire);
  return place > 8 || (place > 0 && (sent.byte >> (place - 1) & 1));
}

bool wire_txd(const struct wire *wire, cycles_t now) {
  return level_of(wire, now < wire->out_last.begun ? wire->out_before : wire->out_last, now);
}

bool wire_rxd(const struct wire *wire, cycles_t now) {
  return level_of(wire, wire->in, now);
}
