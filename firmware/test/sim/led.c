#include "led.h"

#include <math.h>

static double left_of(double gone, double pole) {
  return pole > 0 ? exp(-gone / pole) : 0;
}

static double square_at(const struct led_light *l, double gone) {
  return l->square_to + (l->square - l->square_to) * left_of(gone, l->lag);
}

static double filtered_at(const struct led_light *l, double gone) {
  return l->ramped_to + (l->filtered - l->ramped_to) * left_of(gone, l->filter);
}

static double ramped_at(const struct led_light *l, double gone) {
  if (l->lag <= 0) {
    return filtered_at(l, gone);
  }
  /* two equal poles are taken as a millionth apart, or the form has no value */
  double filter = fabs(l->filter - l->lag) < 1e-6 * l->lag ? l->lag * (1 + 1e-6) : l->filter;
  double a = (l->filtered - l->ramped_to) * filter / (filter - l->lag);
  return l->ramped_to + a * left_of(gone, filter) + (l->ramped - l->ramped_to - a) * left_of(gone, l->lag);
}

double led_mv(const struct led_light *l, double gone) {
  return l->mv == 0 ? 0 : l->mv * (square_at(l, gone) + ramped_at(l, gone));
}

void led_step(struct led_light *l, double gone, bool square, bool ramped, double lag_cycles, double filter_cycles) {
  double at_square = square_at(l, gone), at_filter = filtered_at(l, gone), at_ramped = ramped_at(l, gone);
  l->square = at_square;
  l->filtered = at_filter;
  l->ramped = at_ramped;
  l->square_to = square;
  l->ramped_to = ramped;
  l->lag = lag_cycles;
  l->filter = filter_cycles;
}

bool led_moves(const struct led_light *l, double settled_mv) {
  double farthest = fabs(l->square - l->square_to);
  farthest = fmax(farthest, fabs(l->filtered - l->ramped_to));
  farthest = fmax(farthest, fabs(l->ramped - l->ramped_to));
  return farthest * l->mv > settled_mv;
}
