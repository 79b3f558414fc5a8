#include "line_reader.h"

#include "crc16.h"

enum { STAGE_KIND, STAGE_SPACE, STAGE_SEQ, STAGE_AFTER_SEQ, STAGE_FIELD_START, STAGE_FIELD, STAGE_CRC, STAGE_END, STAGE_CR, STAGE_BAD };

static bool is_letter(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); }

static bool is_field_char(char c) {
  return is_letter(c) || (c >= '0' && c <= '9') || c == '.' || c == '_' || c == '-';
}

uint8_t line_hex_value(char c) {
  if (c >= '0' && c <= '9') return (uint8_t)(c - '0');
  if (c >= 'A' && c <= 'F') return (uint8_t)(c - 'A' + 10);
  if (c >= 'a' && c <= 'f') return (uint8_t)(c - 'a' + 10);
  return 0xFF;
}

void line_reader_start(struct line_reader *line) {
  line->stage = STAGE_KIND;
  line->length = 0;
  line->crc = CRC16_START;
}

static void keep(struct line_reader *line, char c) {
  if (line->body_length < LINE_BODY_CHARS) {
    line->body[line->body_length++] = c;
  } else {
    line->body_cut = true;
  }
}

/* Shifts one digit into a four-digit number; false when c is no digit. */
static bool take_digit(uint16_t *number, char c) {
  uint8_t value = line_hex_value(c);
  *number = (uint16_t)(*number << 4 | (value & 0x0F));
  return value != 0xFF;
}

static uint8_t stage_after(struct line_reader *line, char c) {
  switch (line->stage) {
    case STAGE_KIND:
      line->kind = c;
      return is_letter(c) ? STAGE_SPACE : STAGE_BAD;
    case STAGE_SPACE:
      line->place = 4;
      return c == ' ' ? STAGE_SEQ : STAGE_BAD;
    case STAGE_SEQ:
      if (!take_digit(&line->seq, c)) return STAGE_BAD;
      line->body_length = 0;
      line->body_cut = false;
      return --line->place == 0 ? STAGE_AFTER_SEQ : STAGE_SEQ;
    case STAGE_FIELD:
      if (is_field_char(c)) {
        keep(line, c);
        return STAGE_FIELD;
      }
      if (c == ' ') {
        keep(line, c);
        return STAGE_FIELD_START;
      }
      line->place = 4;
      return c == '#' ? STAGE_CRC : STAGE_BAD;
    case STAGE_AFTER_SEQ:
      line->place = 4;
      return c == ' ' ? STAGE_FIELD_START : c == '#' ? STAGE_CRC : STAGE_BAD;
    case STAGE_FIELD_START:
      keep(line, c);
      return is_field_char(c) ? STAGE_FIELD : STAGE_BAD;
    case STAGE_CRC:
      if (!take_digit(&line->crc_read, c)) return STAGE_BAD;
      return --line->place == 0 ? STAGE_END : STAGE_CRC;
    case STAGE_END:
      return c == '\r' ? STAGE_CR : STAGE_BAD;
    default:
      return STAGE_BAD;
  }
}

static enum line_verdict verdict(struct line_reader *line) {
  if (line->length >= LINE_MAX_BYTES) return LINE_TOO_LONG;
  if (line->stage != STAGE_END && line->stage != STAGE_CR) return LINE_BAD_FORM;
  line->body[line->body_length] = '\0';
  return line->crc_read == line->crc ? LINE_GOOD : LINE_BAD_CRC;
}

enum line_verdict line_reader_take(struct line_reader *line, uint8_t byte) {
  if (byte == '\n') {
    enum line_verdict result = verdict(line);
    line_reader_start(line);
    return result;
  }
  if (line->length < LINE_MAX_BYTES) {
    line->length++;
  }
  line->stage = stage_after(line, (char)byte);
  /* the '#' itself leads into STAGE_CRC and is not covered */
  if (line->stage < STAGE_CRC) {
    line->crc = crc16_add(line->crc, byte);
  }
  return LINE_UNFINISHED;
}
