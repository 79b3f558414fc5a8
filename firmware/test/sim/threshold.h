#ifndef BENCH_THRESHOLD_H
#define BENCH_THRESHOLD_H

#include <stdbool.h>

#include "simtime.h"

/* One threshold: a PWM output of the board behind two 10 kilohm, 100 nF filters, taken as two poles of 1 ms that do not
   load each other. The ripple that is left of the 62.5 kHz (below 1 mV) is not modelled. */
struct threshold {
  double target_mv;          /* mean of the PWM */
  double first_mv, second_mv; /* voltages behind each filter at `since` */
  cycles_t since;
};

#define SUPPLY_MV 5000.0

/* The mean of the PWM changes to `target_mv` now. */
void threshold_drive(struct threshold *threshold, cycles_t now, double target_mv);
/* The board lets the pin float (reset): the capacitors keep what they have. */
void threshold_float(struct threshold *threshold, cycles_t now);
/* Voltage at the comparator; before the last change, what it was there. */
double threshold_mv(const struct threshold *threshold, cycles_t now);
/* Whether it still moves by more than a hundredth of a millivolt. */
bool threshold_moves(const struct threshold *threshold, cycles_t now);

#endif
