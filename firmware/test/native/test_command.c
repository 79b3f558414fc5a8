#include "command.h"

#include "tap.h"
#include "vectors.h"

static struct line_reader reader;
static struct command command;

static bool read_command(const char *line) {
  for (; *line; line++) line_reader_take(&reader, (uint8_t)*line);
  if (line_reader_take(&reader, '\n') != LINE_GOOD) return false;
  command = (struct command){0};
  command_read(&command, &reader);
  return true;
}

static uint8_t expected(const struct vector *vector) {
  if (vector->line[0] < 'a') return RESULT_NO_COMMAND;
  if (strcmp(vector->verdict, "unknown") == 0) return RESULT_UNKNOWN;
  if (strcmp(vector->verdict, "fields") == 0) return RESULT_BAD_FIELDS;
  return RESULT_DONE;
}

static bool reads_as(const char *line, char kind, uint16_t seq, uint8_t first, uint16_t number) {
  return read_command(line) && command.result == RESULT_DONE && command.kind == kind && command.seq == seq &&
         command.first == first && command.number == number;
}

int main(int count, char **words) {
  line_reader_start(&reader);
  FILE *file = vectors_open(count, words);
  static struct vector vector;
  int commands = 0;
  while (vectors_next(file, &vector)) {
    if (!read_command(vector.line)) continue;
    commands += vector.line[0] >= 'a';
    tap_check(command.result == expected(&vector), "result %02X: %s", expected(&vector), vector.meaning);
  }
  fclose(file);
  tap_check(commands >= 12, "commands were among them (%d)", commands);
  tap_check(reads_as("p 0003 BEEF#FB89", 'p', 3, 0, 0xBEEF), "token of a ping");
  tap_check(reads_as("t 0004 36 CA#7A11", 't', 4, 0x36, 0xCA), "codes of the thresholds");
  tap_check(reads_as("m 0006 0 0080#00A4", 'm', 6, 0, 0x80), "channel and number of light blocks");
  tap_check(reads_as("r 000A 1 00000640 0001#185E", 'r', 10, 1, 1) && command.wide == 0x640, "kind, width and count of pulses");
  tap_check(reads_as("w 000C 0 02B0 02B4#98FE", 'w', 12, 0, 0x2B4) && command.wide == 0x2B0, "channel and ends of a sweep");
  tap_check(reads_as("i 0007 R-0001#2E70", 'i', 7, 0, 0) && strcmp(reader.body, "R-0001") == 0, "serial number");
  return tap_done();
}
