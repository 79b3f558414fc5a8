#ifndef BENCH_NOISE_H
#define BENCH_NOISE_H

#include <stdint.h>

/* Standard normal number that belongs to (seed, index): the same whenever and however often it is asked for, so that a run
   repeats whatever the bench looks at in between. splitmix64 (Steele, Lea, Flood 2014, from memory), then Box-Muller. */
double noise_at(uint64_t seed, uint64_t index);

#endif
