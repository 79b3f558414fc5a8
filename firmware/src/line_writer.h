/* Builds one line of docs/protocol.md character by character, so that no line is ever held in RAM as text and each call
   costs a bounded number of cycles. No AVR header: also compiled by the native tests. */
#ifndef LINE_WRITER_H
#define LINE_WRITER_H

#include <stdbool.h>
#include <stdint.h>

#include "ticks.h"

#define LINE_WRITER_FIELDS 10 /* the sequence number and the nine fields of a greeting */

#define LINE_FIELD_MEMORY 0x80

struct line_field {
  uint8_t digits; /* 0: a word; with LINE_FIELD_MEMORY: of bytes that stand elsewhere */
  union {
    uint8_t bytes[6]; /* lowest first */
    const char *word; /* must stay as it is until the line is out, as must memory */
    const uint8_t *memory; /* first byte first */
  } as;
};

struct line_writer {
  struct line_field fields[LINE_WRITER_FIELDS];
  char kind;
  uint8_t field_count;
  uint8_t stage;
  uint8_t field;
  uint8_t place;
  uint16_t crc;
};

bool line_writer_busy(const struct line_writer *line);
/* Starts a line; any line under way is dropped. */
void line_writer_begin(struct line_writer *line, char kind, uint16_t seq);
/* Adds a field of 1 to 4 hexadecimal digits. */
void line_writer_hex(struct line_writer *line, uint16_t value, uint8_t digits);
/* Adds eight digits. */
void line_writer_hex32(struct line_writer *line, uint32_t value);
/* Adds twelve digits. */
void line_writer_ticks(struct line_writer *line, const struct ticks *ticks);
void line_writer_word(struct line_writer *line, const char *word);
/* Adds two digits for each of 1 to 32 bytes. */
void line_writer_bytes(struct line_writer *line, const uint8_t *bytes, uint8_t count);
/* The next character; only while busy. The line feed is the last one. */
char line_writer_next(struct line_writer *line);

#endif
