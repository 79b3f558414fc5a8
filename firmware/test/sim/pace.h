#ifndef BENCH_PACE_H
#define BENCH_PACE_H

#include <stdbool.h>
#include <stdint.h>

#include "board_clock.h"

/* Keeps simulated time behind real time, or behind so many times real time, never ahead of it. */
struct pace {
  double factor;     /* seconds of the bench in a real second, above 0 */
  bool catches_up;   /* after the machine was late: else what was lost is left lost */
  int64_t begun_ns;  /* real time at cycle 0 */
  const struct board_clock *clock;
};

/* `factor` and `catches_up` are set; `clock` must live as long as the pace. */
void pace_begin(struct pace *pace, const struct board_clock *clock, cycles_t now);
/* Cycle that real time allows. `now` is how far the bench has come. */
cycles_t pace_reached(struct pace *pace, cycles_t now);
/* Waits until real time allows that cycle, or until `file` can be read; returns at once when late. */
void pace_wait(const struct pace *pace, cycles_t cycle, int file);
/* The bench stood still for a reason of its own and goes on from here. */
void pace_resume(struct pace *pace, cycles_t now);

#endif
