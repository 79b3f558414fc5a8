#include "threshold.h"

#include <math.h>

#define POLE_CYCLES (10e3 * 100e-9 * CYCLES_PER_SECOND)
#define SETTLED_MV 0.01

/* Exact for a constant input u: the second pole sees u + (v1 - u) exp(-t), so its own answer has a term t exp(-t). */
static void settle(const struct threshold *t, cycles_t now, double *first, double *second) {
  double gone = now > t->since ? (double)(now - t->since) / POLE_CYCLES : 0;
  if (gone > 40) {
    *first = *second = t->target_mv;
    return;
  }
  double left = exp(-gone);
  *first = t->target_mv + (t->first_mv - t->target_mv) * left;
  *second = t->target_mv + ((t->second_mv - t->target_mv) + (t->first_mv - t->target_mv) * gone) * left;
}

static void go_to(struct threshold *t, cycles_t now) {
  double first, second;
  settle(t, now, &first, &second);
  t->first_mv = first;
  t->second_mv = second;
  t->since = now;
}

void threshold_drive(struct threshold *t, cycles_t now, double target_mv) {
  go_to(t, now);
  t->target_mv = target_mv;
}

void threshold_float(struct threshold *t, cycles_t now) {
  go_to(t, now);
  t->target_mv = t->first_mv;
}

double threshold_mv(const struct threshold *t, cycles_t now) {
  double first, second;
  settle(t, now, &first, &second);
  return second;
}

bool threshold_moves(const struct threshold *t, cycles_t now) {
  double first, second;
  settle(t, now, &first, &second);
  return fabs(first - t->target_mv) > SETTLED_MV || fabs(second - t->target_mv) > SETTLED_MV;
}
