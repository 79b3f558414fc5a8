/* Test Anything Protocol, one line a check. */
#ifndef TAP_H
#define TAP_H

#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>

static int tap_checks;
static int tap_failures;

__attribute__((format(printf, 2, 3))) static inline bool tap_check(bool good, const char *format, ...) {
  va_list arguments;
  printf("%s %d - ", good ? "ok" : "not ok", ++tap_checks);
  va_start(arguments, format);
  vprintf(format, arguments);
  va_end(arguments);
  printf("\n");
  if (!good) {
    tap_failures++;
  }
  return good;
}

static inline int tap_done(void) {
  printf("1..%d\n", tap_checks);
  return tap_failures != 0;
}

#endif
