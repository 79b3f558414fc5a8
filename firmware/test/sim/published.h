#ifndef BENCH_PUBLISHED_H
#define BENCH_PUBLISHED_H

#include <stdbool.h>
#include <stdint.h>

/* The time of the bench in a file of eight bytes, for a host that maps it: nanoseconds since the start in the byte order of
   this machine. It never runs back and stands while the bench stands. Zero-initialised it publishes nothing. */
struct published {
  _Atomic int64_t *ns;
};

/* Makes the file anew, at nought. False with errno set when that fails. */
bool published_open(struct published *time, const char *path);
void published_tell(struct published *time, double seconds);

#endif
