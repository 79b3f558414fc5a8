#ifndef BENCH_BOARD_CLOCK_H
#define BENCH_BOARD_CLOCK_H

#include <stdbool.h>

#include "simtime.h"

/* The board's clock against true time, which a scenario is written in and a paced bench follows. Its error is `off` at the
   start and grows by `drift` each second, so that after t seconds it has made 16e6 (t + off t + drift t^2 / 2) cycles. Zero-
   initialised it is exact. */
struct board_clock {
  double off;   /* 0.001: a thousandth too fast */
  double drift; /* change of `off` a second */
};

/* False where the drift would have led so far by then that the figures mean nothing. */
bool board_clock_reaches(const struct board_clock *clock, double seconds);
/* Cycles made after so many true seconds since the start. */
cycles_t board_clock_cycles(const struct board_clock *clock, double seconds);
/* True seconds after which a cycle is reached. */
double board_clock_seconds(const struct board_clock *clock, cycles_t cycle);
/* Cycles of this clock in the time of one cycle at 16 MHz, at the moment of a cycle. */
double board_clock_rate(const struct board_clock *clock, cycles_t at);

#endif
