#ifndef BENCH_PACE_H
#define BENCH_PACE_H

#include <stdint.h>

#include "simtime.h"

/* Keeps simulated time behind real time, never ahead of it. */
struct pace {
  int64_t begun_ns; /* real time at cycle 0 */
};

void pace_begin(struct pace *pace, cycles_t now);
/* Cycle that real time has reached. */
cycles_t pace_reached(const struct pace *pace);
/* Waits until real time has reached that cycle, or until `file` can be read; returns at once when late. */
void pace_wait(const struct pace *pace, cycles_t cycle, int file);

#endif
