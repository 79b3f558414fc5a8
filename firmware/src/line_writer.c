#include "line_writer.h"

#include "crc16.h"

enum { STAGE_IDLE, STAGE_KIND, STAGE_SPACE, STAGE_FIELD, STAGE_CRC, STAGE_END };

static char hex_digit(uint8_t nibble) { return (char)(nibble < 10 ? '0' + nibble : 'A' - 10 + nibble); }

static struct line_field *new_field(struct line_writer *line, uint8_t digits) {
  struct line_field *field = &line->fields[line->field_count++];
  field->digits = digits;
  return field;
}

bool line_writer_busy(const struct line_writer *line) { return line->stage != STAGE_IDLE; }

void line_writer_begin(struct line_writer *line, char kind, uint16_t seq) {
  line->kind = kind;
  line->field_count = 0;
  line->field = 0;
  line->crc = CRC16_START;
  line->stage = STAGE_KIND;
  line_writer_hex(line, seq, 4);
}

static void put16(uint8_t *bytes, uint16_t value) {
  bytes[0] = (uint8_t)value;
  bytes[1] = (uint8_t)(value >> 8);
}

void line_writer_hex(struct line_writer *line, uint16_t value, uint8_t digits) {
  put16(new_field(line, digits)->as.bytes, value);
}

void line_writer_hex32(struct line_writer *line, uint32_t value) {
  uint8_t *bytes = new_field(line, 8)->as.bytes;
  put16(bytes, (uint16_t)value);
  put16(bytes + 2, (uint16_t)(value >> 16));
}

void line_writer_ticks(struct line_writer *line, const struct ticks *ticks) {
  uint8_t *bytes = new_field(line, 12)->as.bytes;
  put16(bytes, ticks->low);
  put16(bytes + 2, (uint16_t)ticks->high);
  put16(bytes + 4, (uint16_t)(ticks->high >> 16));
}

void line_writer_word(struct line_writer *line, const char *word) { new_field(line, 0)->as.word = word; }

void line_writer_bytes(struct line_writer *line, const uint8_t *bytes, uint8_t count) {
  new_field(line, LINE_FIELD_MEMORY | (uint8_t)(2 * count))->as.memory = bytes;
}

/* `place` counts the digits still to come, or the characters of a word already gone. */
static char field_char(struct line_writer *line) {
  struct line_field *field = &line->fields[line->field];
  char c;
  bool last;
  if (field->digits == 0) {
    c = field->as.word[line->place++];
    last = field->as.word[line->place] == '\0';
  } else {
    uint8_t place = --line->place;
    uint8_t byte = field->digits & LINE_FIELD_MEMORY
                       ? field->as.memory[(uint8_t)((field->digits & ~LINE_FIELD_MEMORY) - 1 - place) >> 1]
                       : field->as.bytes[place >> 1];
    c = hex_digit(place & 1 ? byte >> 4 : byte & 0x0F);
    last = place == 0;
  }
  if (last) {
    line->field++;
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
      if (line->field == line->field_count) {
        line->stage = STAGE_CRC;
        line->place = 4;
        return '#';
      }
      c = ' ';
      line->place = line->fields[line->field].digits & (uint8_t)~LINE_FIELD_MEMORY;
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
