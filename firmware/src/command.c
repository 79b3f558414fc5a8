#include "command.h"

#include "board.h"
#include "fine.h"
#include "reference.h"
#include "sweep.h"

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

/* Three fields: one digit, then `wide_digits`, four or eight, then four; nothing behind them. */
static bool three_fields(struct command *command, const char *text, uint8_t wide_digits) {
  uint16_t first;
  uint16_t high = 0;
  uint16_t low;
  text = hex_field(text, 1, &first);
  if (!text) return false;
  command->first = (uint8_t)first;
  for (; wide_digits > 4; wide_digits--) {
    uint8_t value = line_hex_value(*text++);
    if (value == 0xFF) return false;
    high = (uint16_t)(high << 4 | value);
  }
  text = hex_field(text, 4, &low);
  command->wide = (uint32_t)high << 16 | low;
  if (!text) return false;
  text = hex_field(text, 4, &command->number);
  return text && *text == '\0';
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

static bool is_pulse(const struct command *command) {
  switch (command->first) {
    case REFERENCE_OFF:
    case REFERENCE_STEADY:
      return true;
    case REFERENCE_SQUARE:
    case REFERENCE_RAMPED:
      return command->wide >= REFERENCE_LEAST_TICKS && command->wide <= REFERENCE_MOST_TICKS && command->number != 0;
    default:
      return false;
  }
}

static bool is_sweep(const struct command *command) {
  uint16_t from = (uint16_t)command->wide;
  return command->first <= CHANNEL_CENTRE_HIGH && from >= FINE_LEAST && from < command->number &&
         command->number <= FINE_MOST && command->number - from <= SWEEP_MOST_STEPS;
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
      good = fields(command, line->body, 1, 0) && command->first <= CURVES_NEXT_OF_OUTER_B;
      break;
    case 'r':
      good = three_fields(command, line->body, 8) && is_pulse(command);
      break;
    case 'w':
      good = three_fields(command, line->body, 4) && is_sweep(command);
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
