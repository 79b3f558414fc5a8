#include "journal.h"

#include <inttypes.h>
#include <stdarg.h>

void journal_write(struct journal *journal, const char *kind, cycles_t cycle, const char *format, ...) {
  if (!journal->file) {
    return;
  }
  fprintf(journal->file, "%s %" PRIu64 " ", kind, cycle);
  va_list arguments;
  va_start(arguments, format);
  vfprintf(journal->file, format, arguments);
  va_end(arguments);
  fputc('\n', journal->file);
  fflush(journal->file);
}
