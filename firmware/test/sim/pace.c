#include "pace.h"

#include <poll.h>
#include <time.h>

#define NS_PER_SECOND 1000000000
#define LATE_NS (20 * (NS_PER_SECOND / 1000)) /* later than this is not caught up with */

static int64_t now_ns(void) {
  struct timespec now;
  clock_gettime(CLOCK_MONOTONIC, &now);
  return (int64_t)now.tv_sec * NS_PER_SECOND + now.tv_nsec;
}

/* Real time that the bench takes to a cycle. */
static int64_t ns_of(const struct pace *pace, cycles_t cycle) {
  return (int64_t)(board_clock_seconds(pace->clock, cycle) / pace->factor * NS_PER_SECOND);
}

void pace_resume(struct pace *pace, cycles_t now) {
  pace->begun_ns = now_ns() - ns_of(pace, now);
}

void pace_begin(struct pace *pace, const struct board_clock *clock, cycles_t now) {
  pace->clock = clock;
  pace_resume(pace, now);
}

cycles_t pace_reached(struct pace *pace, cycles_t now) {
  int64_t real = now_ns();
  if (!pace->catches_up && real - pace->begun_ns - ns_of(pace, now) > LATE_NS) {
    pace->begun_ns = real - ns_of(pace, now) - LATE_NS;
  }
  return board_clock_cycles(pace->clock, (double)(real - pace->begun_ns) / NS_PER_SECOND * pace->factor);
}

void pace_wait(const struct pace *pace, cycles_t cycle, int file) {
  int64_t left = ns_of(pace, cycle) - (now_ns() - pace->begun_ns);
  if (left > 0) {
    struct timespec span = {left / NS_PER_SECOND, left % NS_PER_SECOND};
    struct pollfd input = {.fd = file, .events = POLLIN};
    ppoll(&input, file >= 0 ? 1 : 0, &span, NULL);
  }
}
