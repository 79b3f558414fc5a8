#include "pace.h"

#include <poll.h>
#include <time.h>

#define NS_PER_SECOND 1000000000

static int64_t now_ns(void) {
  struct timespec now;
  clock_gettime(CLOCK_MONOTONIC, &now);
  return (int64_t)now.tv_sec * NS_PER_SECOND + now.tv_nsec;
}

static int64_t ns_of(const struct board_clock *clock, cycles_t cycle) {
  return (int64_t)(board_clock_seconds(clock, cycle) * NS_PER_SECOND);
}

void pace_begin(struct pace *pace, const struct board_clock *clock, cycles_t now) {
  pace->clock = clock;
  pace->begun_ns = now_ns() - ns_of(clock, now);
}

cycles_t pace_reached(const struct pace *pace) {
  return board_clock_cycles(pace->clock, (double)(now_ns() - pace->begun_ns) / NS_PER_SECOND);
}

void pace_wait(const struct pace *pace, cycles_t cycle, int file) {
  int64_t left = ns_of(pace->clock, cycle) - (now_ns() - pace->begun_ns);
  if (left > 0) {
    struct timespec span = {left / NS_PER_SECOND, left % NS_PER_SECOND};
    struct pollfd input = {.fd = file, .events = POLLIN};
    ppoll(&input, file >= 0 ? 1 : 0, &span, NULL);
  }
}
