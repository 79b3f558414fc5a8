#ifndef BENCH_BENCH_H
#define BENCH_BENCH_H

#include <stdbool.h>
#include <stdint.h>

#include "agenda.h"
#include "board_clock.h"
#include "chip.h"
#include "journal.h"
#include "optics.h"
#include "wire.h"

/* The whole bench: board, bench parts, what is still to happen. Zero-initialise, then bench_open. */
struct bench {
  struct chip chip;
  struct board_clock clock;
  struct optics optics;
  struct wire wire;
  struct agenda agenda;
  struct journal journal;
  struct curve **curves;
  size_t curve_count;
  int swings[PINS]; /* ringings that hold the pin at 1 now */
  cycles_t edge_due; /* when the edge in hand should come; it lands on the next boundary between instructions */
  bool reset_wanted;
  bool ended;
  const char *stopped; /* why the simulation cannot go on, NULL while it can */
  uint8_t codes[2];    /* thresholds in force: low, high */
  cycles_t codes_since;

  avr_irq_t *converter_irq;
  unsigned conversion_channel; /* selected when the conversion under way was started */
  double conversion_mv;        /* what it sampled */
  bool trigger_flag;    /* OCF0A as the ADC's trigger saw it last */

  /* Listeners, each may be NULL. */
  void (*on_edge)(void *context, cycles_t cycle, cycles_t due, enum pin pin, bool level);
  /* `cycle`: when the timer switched the pin; `landed`: when simavr moved it. */
  void (*on_led)(void *context, cycles_t cycle, cycles_t landed, bool ramped, bool level);
  void (*on_plug)(void *context, bool plugged);
  void *context;
};

/* Loads the firmware and puts the bench around it, at rest, in the dark. NULL, or what is wrong, in one sentence. */
const char *bench_open(struct bench *bench, const char *elf_path);
void bench_close(struct bench *bench);

cycles_t bench_now(const struct bench *bench);
/* Runs until that cycle, the end of the scenario, or a stop. Passes it by up to the next timer of simavr: 256 cycles while
   the board's PWM runs, RUN_LIMIT when nothing does. */
void bench_run_until(struct bench *bench, cycles_t cycle);
/* Adds an event; one that is already due happens before the next instruction. */
void bench_add(struct bench *bench, struct event event);
/* Tells the bench that optics were changed from outside (light, lag, noise, ripple, hysteresis). */
void bench_optics_changed(struct bench *bench);
/* Asks optics anew when it has to be looked at. */
void bench_watch_optics(struct bench *bench);
/* Puts a level on a pin and logs the edge if there is one. */
void bench_pin(struct bench *bench, enum pin pin, bool level);

#endif
