#include "line_writer.h"

#include "tap.h"
#include "vectors.h"

#define LINE_ROOM 610

/* Digits of each field behind SEQ, 0 for a word: the rig to host tables of docs/protocol.md. */
static const struct {
  char kind;
  const char *widths;
} layouts[] = {{'H', "2 8 0 2 0 8 0 0 12"}, {'E', "1 1 8"}, {'B', "12 2 4"}, {'L', "8 4 4 4 4 4 4"}, {'A', "4 2"},
               {'Q', "4 12 12"},            {'V', "2 2 4 4"}, {'M', "1 4 4 3 3"},
               {'C', "2 1 8 8 4 2"},        {'D', "2 4 0"},   {'R', "4 1 8 8"},   {'W', "1 1 4 4 4"}};

static const char *layout_of(char kind) {
  for (size_t i = 0; i < sizeof layouts / sizeof *layouts; i++) {
    if (layouts[i].kind == kind) return layouts[i].widths;
  }
  return NULL;
}

static struct line_writer writer;

static void add_field(const char *text, int width) {
  unsigned long long value = strtoull(text, NULL, 16);
  if (width == 0) {
    line_writer_word(&writer, text);
  } else if (width == 12) {
    struct ticks ticks = {(uint32_t)(value >> 16), (uint16_t)value};
    line_writer_ticks(&writer, &ticks);
  } else if (width == 8) {
    line_writer_hex32(&writer, (uint32_t)value);
  } else {
    line_writer_hex(&writer, (uint16_t)value, (uint8_t)width);
  }
}

static void collect(char *out, size_t size) {
  size_t length = 0;
  while (line_writer_busy(&writer) && length + 1 < size) {
    out[length++] = line_writer_next(&writer);
  }
  out[length] = '\0';
}

/* Takes the vector apart and has it written again. */
static void write_again(const struct vector *vector) {
  char text[LINE_ROOM], out[LINE_ROOM], wanted[LINE_ROOM];
  snprintf(text, sizeof text, "%s", vector->line);
  text[strcspn(text, "#")] = '\0';
  const char *widths = layout_of(text[0]);
  line_writer_begin(&writer, text[0], (uint16_t)strtoul(text + 2, NULL, 16));
  char *field = strtok(text + 6, " ");
  while (field) {
    add_field(field, (int)strtol(widths, (char **)&widths, 10));
    field = strtok(NULL, " ");
  }
  collect(out, sizeof out);
  snprintf(wanted, sizeof wanted, "%s\n", vector->line);
  tap_check(strcmp(out, wanted) == 0, "%c: %s", vector->line[0], vector->meaning);
}

int main(int count, char **words) {
  FILE *file = vectors_open(count, words);
  static struct vector vector;
  int written = 0;
  while (vectors_next(file, &vector)) {
    if (strcmp(vector.verdict, "valid") == 0 && layout_of(vector.line[0])) {
      write_again(&vector);
      written++;
    }
  }
  fclose(file);
  tap_check(written >= 12, "each kind of line was written (%d lines)", written);
  tap_check(!line_writer_busy(&writer), "a written line leaves the writer idle");
  char out[100];
  line_writer_begin(&writer, 'B', 1);
  line_writer_next(&writer);
  line_writer_begin(&writer, 'E', 1);
  add_field("0", 1);
  add_field("1", 1);
  add_field("8F3C22A0", 8);
  collect(out, sizeof out);
  tap_check(strcmp(out, "E 0001 0 1 8F3C22A0#4623\n") == 0, "a line begun anew forgets the one under way");
  return tap_done();
}
