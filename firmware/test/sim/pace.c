#include "pace.h"

#include <poll.h>
#include <time.h>

#define NS_PER_SECOND 1000000000

static int64_t now_ns(void) {
  struct timespec now;
  clock_gettime(CLOCK_MONOTONIC, &now);
  return (int64_t)now.tv_sec * NS_PER_SECOND + now.tv_nsec;
}

/* 62.5 ns a cycle */
static int64_t ns_of(cycles_t cycles) {
  return (int64_t)(cycles * 125 / 2);
}

void pace_begin(struct pace *pace, cycles_t now) {
  pace->begun_ns = now_ns() - ns_of(now);
}

cycles_t pace_reached(const struct pace *pace) {
  return (cycles_t)(now_ns() - pace->begun_ns) * 2 / 125;
}

void pace_wait(const struct pace *pace, cycles_t cycle, int file) {
  int64_t left = ns_of(cycle) - (now_ns() - pace->begun_ns);
  if (left > 0) {
    struct timespec span = {left / NS_PER_SECOND, left % NS_PER_SECOND};
    struct pollfd input = {.fd = file, .events = POLLIN};
    ppoll(&input, file >= 0 ? 1 : 0, &span, NULL);
  }
}
