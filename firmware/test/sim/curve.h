#ifndef BENCH_CURVE_H
#define BENCH_CURVE_H

#include <stddef.h>

#include "simtime.h"

/* A named light curve: how far the shutter is open, straight lines between knots. Knots stand on whole cycles (62.5 ns). */
struct knot {
  cycles_t after; /* cycles after the curve's start, never falling from one knot to the next */
  double open;    /* 0 shut to 1 fully open */
};

struct curve {
  char *name;
  struct knot *knots;
  size_t count;
};

/* What an opening does from one moment on: open(t0 + s) = open + slope * s until `end`. */
struct stretch {
  double open;
  double slope; /* per cycle */
  cycles_t end; /* first cycle that no longer belongs to it, NEVER when it stays */
};

struct curve *curve_new(const char *name);
void curve_add(struct curve *curve, cycles_t after, double open);
void curve_free(struct curve *curve);

/* The stretch that begins at `at` of a curve started at `start`. `rate`: cycles of the board in the time of one cycle of the
   curve, 1 for an exact clock. Before the first knot the opening is `before`, after the
   last knot it stays. `cursor` remembers the knot between calls with rising times; begin with 0. */
struct stretch curve_from(const struct curve *curve, cycles_t start, double rate, double before, cycles_t at, size_t *cursor);

#endif
