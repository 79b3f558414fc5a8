#ifndef BENCH_JOURNAL_H
#define BENCH_JOURNAL_H

#include <stdio.h>

#include "simtime.h"

/* The log: what really happened, one line each, flushed at once. A journal without a file keeps nothing. */
struct journal {
  FILE *file;
};

void journal_write(struct journal *journal, const char *kind, cycles_t cycle, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

#endif
