#ifndef BENCH_SIMTIME_H
#define BENCH_SIMTIME_H

#include <stdint.h>

/* Simulated time is counted in cycles of the board's 16 MHz clock since the bench began; a reset of the board does not
   set it back. */
typedef uint64_t cycles_t;

#define CYCLES_PER_SECOND 16000000u
#define CYCLES_PER_MICROSECOND 16u
#define CYCLES_PER_MILLISECOND 16000u
#define NEVER UINT64_MAX

#endif
