#include "command.h"

#include "board.h"

/* Reads a field of so many digits, which must end there; NULL when it does not. */
static const char *hex_field(const char *text, uint8_t digits, uint16_t *number) {
  *number = 0;
  for (; digits > 0; digits--) {
    uint8_t value = line_hex_value(*text++);
    if (value == 0xFF) return 0;
    *number = (uint16_t)(*number << 4 | value);
  }
  if (*text == '\0') return text;
  return *text == ' ' ? text + 1 : 0;
}

/* One or two fields of fixed width and nothing behind them. */
static bool fields(struct command *command, const char *text, uint8_t first_digits, uint8_t number_digits) {
  if (first_digits != 0) {
    uint16_t first;
    text = hex_field(text, first_digits, &first);
    if (!text) return false;
    command->first = (uint8_t)first;
  }
  if (number_digits != 0) {
    text = hex_field(text, number_digits, &command->number);
  }
  return text && *text == '\0';
}

static bool is_serial(const struct line_reader *line) {
  for (uint8_t i = 0; i < line->body_length; i++) {
    if (line->body[i] == ' ') return false;
  }
  return line->body_length >= 1 && line->body_length <= SERIAL_CHARS;
}

static bool has_light(uint8_t channel) {
  return channel == CHANNEL_CENTRE_LOW || channel == CHANNEL_OUTER_A || channel == CHANNEL_OUTER_B;
}

void command_read(struct command *command, const struct line_reader *line) {
  bool good;
  command->kind = line->kind;
  command->seq = line->seq;
  switch (line->kind) {
    case 'h':
    case 's':
    case 'v':
      good = line->body_length == 0;
      break;
    case 'p':
      good = fields(command, line->body, 0, 4);
      break;
    case 't':
      good = fields(command, line->body, 2, 2) && command->first < command->number;
      break;
    case 'm':
      good = fields(command, line->body, 1, 4) && has_light(command->first);
      break;
    case 'c':
      good = fields(command, line->body, 1, 0) && command->first <= 1;
      break;
    case 'i':
      good = is_serial(line);
      break;
    default:
      command->result = line->kind >= 'a' ? RESULT_UNKNOWN : RESULT_NO_COMMAND;
      return;
  }
  command->result = good && !line->body_cut ? RESULT_DONE : RESULT_BAD_FIELDS;
}
