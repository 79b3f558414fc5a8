#include "led_drive.h"

#include <avr_ioport.h>
#include <avr_timer.h>

#include "bench.h"

#define SQUARE_BIT 1 /* PB1, OC1A */
#define RAMPED_BIT 2 /* PB2, OC1B */
#define MOST_LATE 40 /* cycles behind a match within which it is the cause: an instruction, and entering interrupts */

/* When the pin switched: at the match if the timer is connected to it and has just matched, else now. */
static cycles_t switched_at(const struct bench *bench, bool ramped) {
  const avr_t *avr = bench->chip.avr;
  cycles_t now = bench_now(bench);
  if ((avr->data[REG_TCCR1A] & (ramped ? 0x30 : 0xC0)) == 0) {
    return now;
  }
  const avr_timer_t *timer = avr->io[AVR_DATA_TO_IO(REG_TCNT1L)].r.param;
  uint16_t low = ramped ? REG_OCR1BL : REG_OCR1AL;
  uint16_t compare = (uint16_t)(avr->data[low] | avr->data[low + 1] << 8);
  uint16_t late = (uint16_t)(now - timer->tov_base - compare - 1u);
  return late <= MOST_LATE ? now - late : now;
}

static void drive(struct bench *bench, bool ramped, bool level) {
  bool *was = ramped ? &bench->optics.led_ramped : &bench->optics.led_square;
  if (*was == level) {
    return;
  }
  cycles_t at = switched_at(bench, ramped);
  optics_led(&bench->optics, at, ramped, level);
  bench_watch_optics(bench);
  journal_write(&bench->journal, "led", at, "%s %d", ramped ? "D10" : "D9", level);
  if (bench->on_led) {
    bench->on_led(bench->context, at, bench_now(bench), ramped, level);
  }
}

/* A pin that a match is to clear is set by simavr when the counter comes to zero, as in a PWM mode. Timer1 runs in normal mode,
   in which that does not happen (data sheet, compare output mode, non-PWM). */
static bool set_by_mistake(const struct bench *bench, bool ramped, uint32_t value) {
  return (value & 1) && (bench->chip.avr->data[REG_TCCR1A] >> (ramped ? 4 : 6) & 3) == 2;
}

static void pin_moved(struct bench *bench, bool ramped, uint32_t value) {
  if (set_by_mistake(bench, ramped, value)) {
    return;
  }
  bool driven = bench->chip.avr->data[REG_DDRB] >> (ramped ? RAMPED_BIT : SQUARE_BIT) & 1;
  drive(bench, ramped, driven && (value & 1));
}

static void square_moved(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq;
  pin_moved(context, false, value);
}

static void ramped_moved(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq;
  pin_moved(context, true, value);
}

void led_drive_begin(struct bench *bench) {
  avr_irq_t *pins = avr_io_getirq(bench->chip.avr, AVR_IOCTL_IOPORT_GETIRQ('B'), IOPORT_IRQ_PIN0);
  avr_irq_register_notify(pins + SQUARE_BIT, square_moved, bench);
  avr_irq_register_notify(pins + RAMPED_BIT, ramped_moved, bench);
}

void led_drive_reset(struct bench *bench) {
  drive(bench, false, false);
  drive(bench, true, false);
}
