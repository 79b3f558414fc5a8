#include "tap.h"

#include <stdarg.h>
#include <stdio.h>

static int checks, failures;

static void say(const char *before, const char *format, va_list arguments) {
  fputs(before, stdout);
  vprintf(format, arguments);
  putchar('\n');
  fflush(stdout);
}

void tap_check(bool good, const char *format, ...) {
  char before[32];
  checks++;
  failures += !good;
  snprintf(before, sizeof before, "%sok %d - ", good ? "" : "not ", checks);
  va_list arguments;
  va_start(arguments, format);
  say(before, format, arguments);
  va_end(arguments);
}

void tap_figure(const char *format, ...) {
  va_list arguments;
  va_start(arguments, format);
  say("# simulated: ", format, arguments);
  va_end(arguments);
}

void tap_note(const char *format, ...) {
  va_list arguments;
  va_start(arguments, format);
  say("# ", format, arguments);
  va_end(arguments);
}

int tap_done(void) {
  printf("1..%d\n", checks);
  return failures != 0;
}
