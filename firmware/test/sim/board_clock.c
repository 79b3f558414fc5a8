#include "board_clock.h"

#include <math.h>

#define MOST_OFF 0.1

bool board_clock_reaches(const struct board_clock *clock, double seconds) {
  return fabs(clock->off + clock->drift * seconds) <= MOST_OFF;
}

cycles_t board_clock_cycles(const struct board_clock *clock, double seconds) {
  double own = seconds + (clock->off + clock->drift * seconds / 2) * seconds;
  return (cycles_t)(own * CYCLES_PER_SECOND + 0.5);
}

/* The root of a square equation, written so that it stays right when the drift is nought. */
double board_clock_seconds(const struct board_clock *clock, cycles_t cycle) {
  double own = (double)cycle / CYCLES_PER_SECOND, rate = 1 + clock->off;
  return 2 * own / (rate + sqrt(fmax(0, rate * rate + 2 * clock->drift * own)));
}

double board_clock_rate(const struct board_clock *clock, cycles_t at) {
  return 1 + clock->off + clock->drift * board_clock_seconds(clock, at);
}
