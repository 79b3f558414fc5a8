/* Builds one line of docs/protocol.md character by character, so that no line is ever held in RAM as text and each call
   costs a bounded number of cycles. No AVR header: also compiled by the native tests. */
#ifndef LINE_WRITER_H
#define LINE_WRITER_H

#include <stdbool.h>
#include <stdint.h>

#include "flash.h"
#include "ticks.h"

/* What the longest line of fields takes, a greeting: sequence number, five numbers, four words. */
#define LINE_WRITER_BYTES (28 + 4 * sizeof(const void *))

struct line_writer {
  uint8_t fields[LINE_WRITER_BYTES]; /* one behind the other: its form, then its bytes, lowest first, or where they stand */
  char kind;
  uint8_t end; /* of the fields */
  uint8_t stage;
  uint8_t field; /* where the one under way stands */
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
/* Adds a word that must stay as it is until the line is out. */
void line_writer_word(struct line_writer *line, const char *word);
void line_writer_flash_word(struct line_writer *line, const FLASH char *word);
/* Adds two digits for each of 1 to 32 bytes, first byte first; they must stay as they are, too. */
void line_writer_bytes(struct line_writer *line, const uint8_t *bytes, uint8_t count);
/* The next character; only while busy. The line feed is the last one. */
char line_writer_next(struct line_writer *line);

#endif
