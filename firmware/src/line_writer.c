#include "line_writer.h"

#include <string.h>

#include "crc16.h"

enum { STAGE_IDLE, STAGE_KIND, STAGE_SPACE, STAGE_FIELD, STAGE_CRC, STAGE_END };

static char hex_digit(uint8_t nibble) { return (char)(nibble < 10 ? '0' + nibble : 'A' - 10 + nibble); }

/* The form of a field: its digits, or one of these. */
#define FORM_WORD 0x40
#define FORM_FLASH_WORD 0x41
#define FORM_MEMORY 0x80 /* and twice the number of bytes, 2 to 64 */
#define MOST_DIGITS 12   /* of a number */

bool line_writer_busy(const struct line_writer *line) { return line->stage != STAGE_IDLE; }

void line_writer_begin(struct line_writer *line, char kind, uint16_t seq) {
  line->kind = kind;
  line->end = 0;
  line->field = 0;
  line->crc = CRC16_START;
  line->stage = STAGE_KIND;
  line_writer_hex(line, seq, 4);
}

static void add(struct line_writer *line, uint8_t byte) { line->fields[line->end++] = byte; }

static void add16(struct line_writer *line, uint16_t value) {
  add(line, (uint8_t)value);
  add(line, (uint8_t)(value >> 8));
}

void line_writer_hex(struct line_writer *line, uint16_t value, uint8_t digits) {
  add(line, digits);
  add(line, (uint8_t)value);
  if (digits > 2) {
    add(line, (uint8_t)(value >> 8));
  }
}

void line_writer_hex32(struct line_writer *line, uint32_t value) {
  add(line, 8);
  add16(line, (uint16_t)value);
  add16(line, (uint16_t)(value >> 16));
}

void line_writer_ticks(struct line_writer *line, const struct ticks *ticks) {
  add(line, 12);
  add16(line, ticks->low);
  add16(line, (uint16_t)ticks->high);
  add16(line, (uint16_t)(ticks->high >> 16));
}

static void add_place(struct line_writer *line, uint8_t form, uintptr_t place) {
  add(line, form);
  for (uint8_t i = sizeof place; i > 0; i--) {
    add(line, (uint8_t)place);
    place >>= 8;
  }
}

void line_writer_word(struct line_writer *line, const char *word) { add_place(line, FORM_WORD, (uintptr_t)word); }

void line_writer_flash_word(struct line_writer *line, const FLASH char *word) {
  add_place(line, FORM_FLASH_WORD, (uintptr_t)word);
}

void line_writer_bytes(struct line_writer *line, const uint8_t *bytes, uint8_t count) {
  add_place(line, FORM_MEMORY | (uint8_t)(2 * count), (uintptr_t)bytes);
}

/* On the board this is one load of two bytes. */
static uintptr_t place_of(const uint8_t *bytes) {
  uintptr_t place;
  memcpy(&place, bytes, sizeof place);
  return place;
}

/* `place` counts the digits still to come, or the characters of a word already gone. */
static char field_char(struct line_writer *line) {
  const uint8_t *bytes = line->fields + line->field;
  uint8_t form = *bytes++;
  uint8_t size = sizeof(uintptr_t);
  uint8_t place;
  char c;
  bool last;
  if (form == FORM_WORD) {
    const char *word = (const char *)place_of(bytes) + line->place++;
    c = word[0];
    last = word[1] == '\0';
  } else if (form == FORM_FLASH_WORD) {
    const FLASH char *word = (const FLASH char *)place_of(bytes) + line->place++;
    c = word[0];
    last = word[1] == '\0';
  } else {
    uint8_t byte;
    place = --line->place;
    if (form & FORM_MEMORY) {
      byte = ((const uint8_t *)place_of(bytes))[(uint8_t)((form & ~FORM_MEMORY) - 1 - place) >> 1];
    } else {
      byte = bytes[place >> 1];
      size = (uint8_t)(form + 1) >> 1;
    }
    c = hex_digit(place & 1 ? byte >> 4 : byte & 0x0F);
    last = place == 0;
  }
  if (last) {
    line->field += 1 + size;
    line->stage = STAGE_SPACE;
  }
  return c;
}

char line_writer_next(struct line_writer *line) {
  char c;
  switch (line->stage) {
    case STAGE_KIND:
      c = line->kind;
      line->stage = STAGE_SPACE;
      break;
    case STAGE_SPACE:
      if (line->field == line->end) {
        line->stage = STAGE_CRC;
        line->place = 4;
        return '#';
      }
      c = ' ';
      line->place = line->fields[line->field];
      if (line->place & FORM_MEMORY) {
        line->place &= (uint8_t)~FORM_MEMORY;
      } else if (line->place > MOST_DIGITS) {
        line->place = 0; /* a word */
      }
      line->stage = STAGE_FIELD;
      break;
    case STAGE_FIELD:
      c = field_char(line);
      break;
    case STAGE_CRC:
      c = hex_digit((uint8_t)(line->crc >> 12));
      line->crc = (uint16_t)(line->crc << 4);
      if (--line->place == 0) {
        line->stage = STAGE_END;
      }
      return c;
    default:
      line->stage = STAGE_IDLE;
      return '\n';
  }
  line->crc = crc16_add(line->crc, (uint8_t)c);
  return c;
}
