#ifndef BENCH_PACE_H
#define BENCH_PACE_H

#include <stdint.h>

#include "board_clock.h"

/* Keeps simulated time behind real time, never ahead of it. */
struct pace {
  int64_t begun_ns; /* real time at cycle 0 */
  const struct board_clock *clock;
};

/* `clock` must live as long as the pace. */
void pace_begin(struct pace *pace, const struct board_clock *clock, cycles_t now);
/* Cycle that real time has reached. */
cycles_t pace_reached(const struct pace *pace);
/* Waits until real time has reached that cycle, or until `file` can be read; returns at once when late. */
void pace_wait(const struct pace *pace, cycles_t cycle, int file);

#endif
