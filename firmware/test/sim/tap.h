#ifndef BENCH_TAP_H
#define BENCH_TAP_H

#include <stdbool.h>

/* Test Anything Protocol: one `ok` or `not ok` line a check, `#` lines for figures, the plan at the end. */
void tap_check(bool good, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* A figure; all of them come from the simulator and are labelled so. */
void tap_figure(const char *format, ...) __attribute__((format(printf, 1, 2)));
/* Says why a check failed. */
void tap_note(const char *format, ...) __attribute__((format(printf, 1, 2)));
/* Prints the plan; the result for main. */
int tap_done(void);

#endif
