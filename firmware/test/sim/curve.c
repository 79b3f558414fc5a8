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

struct stretch curve_from(const struct curve *curve, cycles_t start, double before, cycles_t at, size_t *cursor) {
  if (curve->count == 0 || at < start + curve->knots[0].after) {
    return (struct stretch){before, 0, curve->count ? start + curve->knots[0].after : NEVER};
  }
  while (*cursor + 1 < curve->count && start + curve->knots[*cursor + 1].after <= at) {
    ++*cursor;
  }
  const struct knot *here = &curve->knots[*cursor];
  if (*cursor + 1 == curve->count) {
    return (struct stretch){here->open, 0, NEVER};
  }
  const struct knot *next = here + 1;
  double slope = (next->open - here->open) / (double)(next->after - here->after);
  double gone = (double)(at - start - here->after);
  return (struct stretch){here->open + slope * gone, slope, start + next->after};
}
