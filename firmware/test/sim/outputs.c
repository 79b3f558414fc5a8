#include "outputs.h"

#include <avr_timer.h>

#include "bench.h"

#define TRANSMITTER_ON 0x08
#define RECEIVER_ON 0x10

static uint8_t read_port(const avr_t *avr, uint16_t pin_register) {
  uint8_t direction = avr->data[pin_register + 1], port = avr->data[pin_register + 2];
  return (uint8_t)((avr->data[pin_register] & ~direction) | (port & direction));
}

/* Fast PWM, not inverted: high from the bottom up to the compare value. */
static bool pwm_level(const avr_t *avr, uint16_t compare_register) {
  const avr_timer_t *timer = avr->io[AVR_DATA_TO_IO(REG_TCNT2)].r.param;
  if (timer->cs_div_value == 0) {
    return false;
  }
  uint8_t count = (uint8_t)((avr->cycle - timer->tov_base) / timer->cs_div_value);
  return count <= avr->data[compare_register];
}

static uint8_t with_bit(uint8_t value, int bit, bool level) {
  return (uint8_t)((value & ~(1u << bit)) | (unsigned)level << bit);
}

static uint8_t read_pind(struct avr_t *avr, avr_io_addr_t address, void *context) {
  const struct bench *bench = context;
  uint8_t value = read_port(avr, address);
  if (avr->data[REG_UCSR0B] & RECEIVER_ON) {
    value = with_bit(value, 0, wire_rxd(&bench->wire, avr->cycle));
  }
  if (avr->data[REG_UCSR0B] & TRANSMITTER_ON) {
    value = with_bit(value, 1, wire_txd(&bench->wire, avr->cycle));
  }
  if (avr->data[REG_TCCR2A] & 0x20) {
    value = with_bit(value, 3, pwm_level(avr, REG_OCR2B));
  }
  return value;
}

static uint8_t read_pinb(struct avr_t *avr, avr_io_addr_t address, void *context) {
  (void)context;
  uint8_t value = read_port(avr, address);
  if (avr->data[REG_TCCR2A] & 0x80) {
    value = with_bit(value, 3, pwm_level(avr, REG_OCR2A));
  }
  return value;
}

void outputs_begin(struct bench *bench) {
  avr_t *avr = bench->chip.avr;
  avr->io[AVR_DATA_TO_IO(REG_PIND)].r.c = read_pind;
  avr->io[AVR_DATA_TO_IO(REG_PIND)].r.param = bench;
  avr->io[AVR_DATA_TO_IO(REG_PINB)].r.c = read_pinb;
  avr->io[AVR_DATA_TO_IO(REG_PINB)].r.param = bench;
}
