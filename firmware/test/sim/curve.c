#include "curve.h"

#include <stdlib.h>
#include <string.h>

struct curve *curve_new(const char *name) {
  struct curve *curve = calloc(1, sizeof *curve);
  curve->name = strdup(name);
  return curve;
}

void curve_add(struct curve *curve, cycles_t after, double open) {
  curve->knots = realloc(curve->knots, (curve->count + 1) * sizeof *curve->knots);
  curve->knots[curve->count++] = (struct knot){after, open};
}

void curve_free(struct curve *curve) {
  free(curve->name);
  free(curve->knots);
  free(curve);
}

static cycles_t knot_at(const struct curve *curve, cycles_t start, double rate, size_t knot) {
  cycles_t after = curve->knots[knot].after;
  return start + (rate == 1 ? after : (cycles_t)((double)after * rate + 0.5));
}

struct stretch curve_from(const struct curve *curve, cycles_t start, double rate, double before, cycles_t at, size_t *cursor) {
  if (curve->count == 0 || at < knot_at(curve, start, rate, 0)) {
    return (struct stretch){before, 0, curve->count ? knot_at(curve, start, rate, 0) : NEVER};
  }
  while (*cursor + 1 < curve->count && knot_at(curve, start, rate, *cursor + 1) <= at) {
    ++*cursor;
  }
  const struct knot *here = &curve->knots[*cursor];
  if (*cursor + 1 == curve->count) {
    return (struct stretch){here->open, 0, NEVER};
  }
  cycles_t from = knot_at(curve, start, rate, *cursor), to = knot_at(curve, start, rate, *cursor + 1);
  double slope = (here[1].open - here->open) / (double)(to - from);
  return (struct stretch){here->open + slope * (double)(at - from), slope, to};
}
