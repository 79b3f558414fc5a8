#include "line_reader.h"

#include "tap.h"
#include "vectors.h"

static struct line_reader reader;

static enum line_verdict take_text(const char *text) {
  enum line_verdict verdict = LINE_UNFINISHED;
  for (; *text; text++) {
    verdict = line_reader_take(&reader, (uint8_t)*text);
  }
  return verdict;
}

static enum line_verdict read_line(const char *line, const char *end) {
  take_text(line);
  return take_text(end);
}

/* Form and CRC are the reader's; whether the fields are right is for whoever knows the kind. */
static enum line_verdict expected(const char *verdict) {
  if (strcmp(verdict, "form") == 0) return LINE_BAD_FORM;
  if (strcmp(verdict, "crc") == 0) return LINE_BAD_CRC;
  if (strcmp(verdict, "long") == 0) return LINE_TOO_LONG;
  return LINE_GOOD;
}

static void vectors(int count, char **words) {
  FILE *file = vectors_open(count, words);
  static struct vector vector;
  while (vectors_next(file, &vector)) {
    enum line_verdict verdict = read_line(vector.line, "\n");
    tap_check(verdict == expected(vector.verdict), "%s: %s", vector.verdict, vector.meaning);
    if (verdict == LINE_GOOD) {
      tap_check(read_line(vector.line, "\r\n") == LINE_GOOD, "CR before the LF is ignored: %s", vector.meaning);
      char body[96];
      snprintf(body, sizeof body, "%s", strlen(vector.line) > 11 ? vector.line + 7 : "");
      body[strcspn(body, "#")] = '\0';
      unsigned seq = (unsigned)strtoul(vector.line + 2, NULL, 16);
      bool kept = strlen(body) <= LINE_BODY_CHARS ? strcmp(reader.body, body) == 0 && !reader.body_cut
                                                  : strncmp(reader.body, body, LINE_BODY_CHARS) == 0 && reader.body_cut;
      tap_check(reader.kind == vector.line[0] && reader.seq == seq && kept, "kind, SEQ and fields of: %s", vector.meaning);
    }
  }
  fclose(file);
}

/* A line of so many bytes with its line feed, good but for its length. */
static enum line_verdict line_of_length(size_t bytes) {
  char line[200] = "x 0001 ";
  memset(line + 7, 'a', bytes - 7 - 6);
  line[bytes - 6] = '\0';
  uint16_t crc = 0xFFFF;
  for (size_t i = 0; line[i]; i++) {
    crc ^= (uint16_t)(line[i] << 8);
    for (int bit = 0; bit < 8; bit++) crc = (uint16_t)(crc & 0x8000 ? crc << 1 ^ 0x1021 : crc << 1);
  }
  snprintf(line + bytes - 6, 7, "#%04X\n", crc);
  return take_text(line);
}

int main(int count, char **words) {
  line_reader_start(&reader);
  vectors(count, words);
  tap_check(read_line("h 0001#9e55", "\n") == LINE_GOOD, "lower case hexadecimal digits are accepted");
  tap_check(read_line("h 0001#9E55 ", "\n") == LINE_BAD_FORM, "a space behind the CRC is bad form");
  tap_check(read_line("h 0001#9E55\r", "\r\n") == LINE_BAD_FORM, "two CR are bad form");
  tap_check(read_line("h 0001#9E551", "\n") == LINE_BAD_FORM, "a CRC of five digits is bad form");
  tap_check(read_line("h 0001 #9E55", "\n") == LINE_BAD_FORM, "an empty field is bad form");
  tap_check(read_line("h 0001 a*b#0000", "\n") == LINE_BAD_FORM, "a character outside the field's set is bad form");
  tap_check(read_line("3 0001#0000", "\n") == LINE_BAD_FORM, "a digit is no kind");
  tap_check(line_of_length(LINE_MAX_BYTES) == LINE_GOOD, "96 bytes with the line feed are accepted");
  tap_check(line_of_length(LINE_MAX_BYTES + 1) == LINE_TOO_LONG, "97 bytes are too long");
  for (int i = 0; i < 1000; i++) line_reader_take(&reader, 'x');
  tap_check(take_text("\n") == LINE_TOO_LONG, "1000 bytes are one long line");
  tap_check(read_line("h 0001#9E55", "\n") == LINE_GOOD, "the next line is good again");
  return tap_done();
}
