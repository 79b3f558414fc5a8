#include "converter.h"

#include <avr_adc.h>
#include <avr_timer.h>
#include <sim_interrupts.h>

#include "bench.h"

#define AUTO_TRIGGER 0x20
#define SOURCE_TIMER0_COMPARE_A 3
#define NO_CHANNEL 0xFF
#define BANDGAP_MUX 14
#define BANDGAP 7 /* the bench reads it where simavr has a pin that no rig uses */

static double channel_mv(const struct bench *bench, unsigned channel, cycles_t now) {
  switch (channel) {
    case 0:
    case 1:
    case 2:
      return optics_sensor_mv(&bench->optics, (int)channel, now);
    case 3:
      return bench->optics.supply * threshold_mv(&bench->optics.low, now);
    case 4:
      return bench->optics.supply * threshold_mv(&bench->optics.high, now);
    case BANDGAP:
      return bench->optics.bandgap_mv;
    default:
      return 0;
  }
}

/* The capacitor of the input is cut off: two clocks of the ADC and three of the chip behind the trigger, to the cycle. */
static avr_cycle_count_t sampled(struct avr_t *avr, avr_cycle_count_t when, void *context) {
  (void)avr;
  struct bench *bench = context;
  bench->conversion_mv = channel_mv(bench, bench->conversion_channel, when);
  return 0;
}

static cycles_t sample_delay(const avr_t *avr) {
  unsigned prescale = avr->data[REG_ADCSRA] & 7;
  return 2 * ((cycles_t)1 << (prescale ? prescale : 1)) + 3;
}

/* The compare match itself is the moment when Timer0 began to count from zero; simavr tells of it between two instructions. */
static cycles_t match_cycle(const avr_t *avr) {
  const avr_timer_t *timer0 = avr->io[AVR_DATA_TO_IO(REG_TCNT0)].r.param;
  return timer0->tov_base;
}

static void compare_flag(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq;
  struct bench *bench = context;
  avr_t *avr = bench->chip.avr;
  bool rose = value && !bench->trigger_flag; /* a flag that nobody cleared triggers nothing */
  bench->trigger_flag = value;
  if (rose && (avr->data[REG_ADCSRA] & AUTO_TRIGGER) && (avr->data[REG_ADCSRB] & 7) == SOURCE_TIMER0_COMPARE_A) {
    avr_raise_irq(bench->converter_irq + ADC_IRQ_IN_TRIGGER, 1);
  }
}

static void conversion_starts(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq;
  struct bench *bench = context;
  avr_t *avr = bench->chip.avr;
  union {
    uint32_t value;
    avr_adc_mux_t mux;
  } selected = {.value = value};
  bench->conversion_channel = selected.mux.kind == ADC_MUX_SINGLE ? selected.mux.src : NO_CHANNEL;
  cycles_t at = match_cycle(avr) + sample_delay(avr);
  avr_cycle_timer_register(avr, at > avr->cycle ? at - avr->cycle : 0, sampled, bench);
}

static void conversion_ends(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq;
  struct bench *bench = context;
  if (!value) {
    return;
  }
  unsigned code = (unsigned)(bench->conversion_mv * 1024 / (SUPPLY_MV * bench->optics.supply));
  code = code > 1023 ? 1023 : code;
  unsigned fed = (code * 5000 + 1022) / 1023; /* least input from which simavr makes this code */
  for (int channel = 0; channel <= BANDGAP; channel++) { /* whatever is selected when the result is fetched */
    avr_raise_irq(bench->converter_irq + ADC_IRQ_ADC0 + channel, fed);
  }
}

void converter_begin(struct bench *bench) {
  avr_t *avr = bench->chip.avr;
  /* simavr would read its own 1100 mV there */
  avr_adc_t *adc = avr->io[AVR_DATA_TO_IO(REG_ADCSRA)].w.param;
  adc->muxmode[BANDGAP_MUX] = (avr_adc_mux_t){.kind = ADC_MUX_SINGLE, .src = BANDGAP};
  bench->converter_irq = avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, 0);
  avr_irq_register_notify(avr_get_interrupt_irq(avr, VECTOR_TIMER0_COMPA) + AVR_INT_IRQ_PENDING, compare_flag, bench);
  avr_irq_register_notify(avr_get_interrupt_irq(avr, VECTOR_ADC) + AVR_INT_IRQ_PENDING, conversion_ends, bench);
  avr_irq_register_notify(bench->converter_irq + ADC_IRQ_OUT_TRIGGER, conversion_starts, bench);
}
