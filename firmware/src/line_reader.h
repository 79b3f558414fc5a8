/* Checks the form and the CRC of received lines byte by byte, so that the end of a line costs no more than any other byte.
   No AVR header: also compiled by the native tests. */
#ifndef LINE_READER_H
#define LINE_READER_H

#include <stdbool.h>
#include <stdint.h>

#define LINE_MAX_BYTES 96 /* with the line feed */
/* Fields are kept up to here, which is more than any command has; a longer line is still checked to its end. */
#define LINE_BODY_CHARS 24

enum line_verdict {
  LINE_UNFINISHED,
  LINE_GOOD,     /* form and CRC are right; kind, seq and body may be read until the next byte */
  LINE_BAD_FORM,
  LINE_BAD_CRC,
  LINE_TOO_LONG
};

struct line_reader {
  uint8_t stage;
  uint8_t place;
  uint8_t length; /* bytes so far, stops at LINE_MAX_BYTES */
  uint16_t crc;
  uint16_t crc_read;
  uint16_t seq;
  char kind;
  bool body_cut; /* the fields were longer than LINE_BODY_CHARS */
  uint8_t body_length;
  char body[LINE_BODY_CHARS + 1]; /* fields with single spaces between, ends with NUL */
};

void line_reader_start(struct line_reader *line);
/* Takes one byte; anything but LINE_UNFINISHED comes with the line feed only. */
enum line_verdict line_reader_take(struct line_reader *line, uint8_t byte);
/* Value of a hexadecimal digit of either case, or 0xFF. */
uint8_t line_hex_value(char c);

#endif
