#include "pwm.h"

#include <avr_timer.h>

#include "bench.h"

#define PIN_DRIVEN_LOW 0x08  /* PD3, OC2B */
#define PIN_DRIVEN_HIGH 0x08 /* PB3, OC2A */
#define PWM_CYCLE 256

static void drive(struct threshold *threshold, cycles_t now, bool driven, uint8_t code) {
  if (driven) {
    threshold_drive(threshold, now, SUPPLY_MV * (code + 1) / 256);
  } else {
    threshold_float(threshold, now);
  }
}

static bool low_on(const uint8_t *data) {
  return (data[REG_TCCR2A] & 0x20) && (data[REG_DDRD] & PIN_DRIVEN_LOW);
}

static bool high_on(const uint8_t *data) {
  return (data[REG_TCCR2A] & 0x80) && (data[REG_DDRB] & PIN_DRIVEN_HIGH);
}

static avr_cycle_count_t codes_stand(struct avr_t *avr, avr_cycle_count_t when, void *context) {
  (void)avr, (void)when;
  struct bench *bench = context;
  journal_write(&bench->journal, "pwm", bench->codes_since, "%02X %02X", bench->codes[0], bench->codes[1]);
  return 0;
}

static void come_into_force(struct bench *bench, cycles_t now) {
  const uint8_t *data = bench->chip.avr->data;
  bench->optics.level_is_bandgap = data[REG_ACSR] & COMPARES_BANDGAP;
  bool low = low_on(data), high = high_on(data);
  drive(&bench->optics.low, now, low, data[REG_OCR2B]);
  drive(&bench->optics.high, now, high, data[REG_OCR2A]);
  if (low && high && (data[REG_OCR2B] != bench->codes[0] || data[REG_OCR2A] != bench->codes[1])) {
    bench->codes[0] = data[REG_OCR2B];
    bench->codes[1] = data[REG_OCR2A];
    bench->codes_since = now;
    avr_cycle_timer_register(bench->chip.avr, CYCLES_PER_MILLISECOND, codes_stand, bench);
  }
  bench_optics_changed(bench);
}

static avr_cycle_count_t cycle_begins(struct avr_t *avr, avr_cycle_count_t when, void *context) {
  (void)when;
  come_into_force(context, avr->cycle);
  return 0;
}

static void code_written(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq, (void)value;
  struct bench *bench = context;
  avr_t *avr = bench->chip.avr;
  const avr_timer_t *timer = avr->io[AVR_DATA_TO_IO(REG_TCNT2)].r.param;
  if (timer->cs_div_value == 1 && timer->tov_cycles == PWM_CYCLE) {
    avr_cycle_timer_register(avr, PWM_CYCLE - (avr->cycle - timer->tov_base) % PWM_CYCLE, cycle_begins, bench);
  } else {
    come_into_force(bench, bench_now(bench));
  }
}

static void output_written(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq, (void)value;
  struct bench *bench = context;
  come_into_force(bench, bench_now(bench));
}

void pwm_begin(struct bench *bench) {
  static const uint16_t codes[] = {REG_OCR2A, REG_OCR2B}, outputs[] = {REG_TCCR2A, REG_DDRB, REG_DDRD, REG_ACSR};
  avr_t *avr = bench->chip.avr;
  for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
    avr_irq_register_notify(avr_iomem_getirq(avr, codes[i], NULL, AVR_IOMEM_IRQ_ALL), code_written, bench);
  }
  for (size_t i = 0; i < sizeof outputs / sizeof *outputs; i++) {
    avr_irq_register_notify(avr_iomem_getirq(avr, outputs[i], NULL, AVR_IOMEM_IRQ_ALL), output_written, bench);
  }
}

void pwm_reset(struct bench *bench) {
  come_into_force(bench, bench_now(bench));
}
