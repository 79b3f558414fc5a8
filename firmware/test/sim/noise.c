#include "noise.h"

#include <math.h>

static uint64_t mix(uint64_t x) {
  x += 0x9E3779B97F4A7C15u;
  x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9u;
  x = (x ^ (x >> 27)) * 0x94D049BB133111EBu;
  return x ^ (x >> 31);
}

double noise_at(uint64_t seed, uint64_t index) {
  uint64_t first = mix(mix(seed) ^ index);
  uint64_t second = mix(first);
  double radius = ((double)(first >> 11) + 0.5) * 0x1p-53; /* in (0, 1): its logarithm is finite */
  double angle = (double)(second >> 11) * 0x1p-53;
  return sqrt(-2 * log(radius)) * cos(2 * 3.14159265358979323846 * angle);
}
