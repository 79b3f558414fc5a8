#include "rig.h"

#include <ctype.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "crc16.h"

#define QUIET_MS 30
#define ANSWER_MS 1000

static void give_up(const char *what, const char *why) {
  printf("Bail out! %s: %s\n", what, why);
  exit(1);
}

static bool is_hex(const char *text, size_t digits) {
  return strlen(text) == digits && strspn(text, "0123456789ABCDEF") == digits;
}

/* KIND SPACE SEQ { SPACE FIELD } '#' CRC, as docs/protocol.md has it. */
static bool take_apart(struct line *line) {
  strcpy(line->cut, line->text);
  line->fields = 0;
  char *hash = strchr(line->cut, '#');
  if (!hash || !is_hex(hash + 1, 4) || strlen(line->text) > 94) {
    return false;
  }
  bool good = strtoul(hash + 1, NULL, 16) == bench_crc16(line->text, (size_t)(hash - line->cut));
  *hash = 0;
  for (char *at = line->cut; at && line->fields < MOST_FIELDS;) {
    line->field[line->fields++] = at;
    at = strchr(at, ' ');
    if (at) {
      *at++ = 0;
    }
  }
  for (int i = 0; i < line->fields; i++) {
    good = good && line->field[i][0] != 0;
  }
  return good && line->fields >= 2 && isupper((unsigned char)line->field[0][0]) && !line->field[0][1] &&
         is_hex(line->field[1], 4);
}

static void take_byte(void *context, unsigned char byte) {
  struct rig *rig = context;
  if (byte != '\n') {
    if (rig->pending_length + 1 < LINE_ROOM) {
      rig->pending[rig->pending_length++] = (char)byte;
    }
    return;
  }
  if (rig->pending_length > 0 && rig->pending[rig->pending_length - 1] == '\r') {
    rig->pending_length--;
  }
  rig->pending[rig->pending_length] = 0;
  rig->pending_length = 0;
  if (rig->line_count == rig->line_room) {
    rig->line_room = rig->line_room ? 2 * rig->line_room : 1024;
    struct line *moved = calloc(rig->line_room, sizeof *moved);
    for (size_t i = 0; i < rig->line_count; i++) { /* the fields point into the line itself */
      strcpy(moved[i].text, rig->lines[i].text);
      moved[i].cycle = rig->lines[i].cycle;
      moved[i].good = take_apart(&moved[i]);
    }
    free(rig->lines);
    rig->lines = moved;
  }
  struct line *line = &rig->lines[rig->line_count++];
  strcpy(line->text, rig->pending);
  line->cycle = bench_now(&rig->bench);
  line->good = take_apart(line);
}

static void take_edge(void *context, cycles_t cycle, cycles_t due, enum pin pin, bool level) {
  struct rig *rig = context;
  if (rig->edge_count == rig->edge_room) {
    rig->edge_room = rig->edge_room ? 2 * rig->edge_room : 1024;
    rig->edges = realloc(rig->edges, rig->edge_room * sizeof *rig->edges);
  }
  rig->edges[rig->edge_count++] = (struct injected){cycle, due, pin, level};
}

static void take_led(void *context, cycles_t cycle, cycles_t landed, bool ramped, bool level) {
  struct rig *rig = context;
  if (rig->led_count == rig->led_room) {
    rig->led_room = rig->led_room ? 2 * rig->led_room : 256;
    rig->leds = realloc(rig->leds, rig->led_room * sizeof *rig->leds);
  }
  rig->leds[rig->led_count++] = (struct led_switch){cycle, landed, ramped, level};
}

void rig_power(struct rig *rig, const char *elf, const unsigned char *eeprom) {
  *rig = (struct rig){.command_seq = 0x1000};
  const char *trouble = bench_open(&rig->bench, elf);
  if (trouble) {
    give_up(elf, trouble);
  }
  if (eeprom) {
    store_write(&rig->bench.chip, eeprom);
  }
  rig->scenario.bench = &rig->bench;
  rig->bench.on_edge = take_edge;
  rig->bench.on_led = take_led;
  rig->bench.context = rig;
  rig->bench.wire.out = take_byte;
  rig->bench.wire.out_context = rig;
}

void rig_off(struct rig *rig) {
  bench_close(&rig->bench);
  free(rig->lines);
  free(rig->edges);
  free(rig->leds);
  *rig = (struct rig){0};
}

void rig_script(struct rig *rig, const char *format, ...) {
  char text[4096];
  va_list arguments;
  va_start(arguments, format);
  vsnprintf(text, sizeof text, format, arguments);
  va_end(arguments);
  for (char *rest = text, *line; (line = strsep(&rest, "\n"));) {
    char copy[4096];
    strcpy(copy, line);
    if (!scenario_line(&rig->scenario, line)) {
      give_up(copy, rig->scenario.trouble);
    }
  }
}

void rig_run(struct rig *rig, double milliseconds) {
  bench_run_until(&rig->bench, bench_now(&rig->bench) + (cycles_t)(milliseconds * CYCLES_PER_MILLISECOND));
  if (rig->bench.stopped) {
    give_up("simulation", rig->bench.stopped);
  }
}

bool rig_settle(struct rig *rig, double limit_milliseconds) {
  double quiet = 0;
  for (double gone = 0; gone < limit_milliseconds; gone++) {
    size_t before = rig->line_count - rig_count(rig, "B", 0);
    rig_run(rig, 1);
    bool silent = before == rig->line_count - rig_count(rig, "B", 0);
    quiet = silent ? quiet + 1 : 0;
    if (quiet >= QUIET_MS) {
      return true;
    }
  }
  return false;
}

const struct line *rig_find(const struct rig *rig, const char *kind, size_t from) {
  for (size_t i = from; i < rig->line_count; i++) {
    if (rig->lines[i].good && strcmp(rig->lines[i].field[0], kind) == 0) {
      return &rig->lines[i];
    }
  }
  return NULL;
}

size_t rig_count(const struct rig *rig, const char *kind, size_t from) {
  size_t count = 0;
  for (size_t i = from; i < rig->line_count; i++) {
    count += rig->lines[i].good && strcmp(rig->lines[i].field[0], kind) == 0;
  }
  return count;
}

const struct line *rig_wait(struct rig *rig, const char *kind, size_t from, double limit_milliseconds) {
  const struct line *line = rig_find(rig, kind, from);
  for (double gone = 0; !line && gone < limit_milliseconds; gone++) {
    rig_run(rig, 1);
    line = rig_find(rig, kind, from);
  }
  return line;
}

uint64_t rig_hex(const struct line *line, int field) {
  if (field >= line->fields || !is_hex(line->field[field], strlen(line->field[field]))) {
    give_up(line->text, "lacks a hexadecimal field that docs/protocol.md gives it");
  }
  return strtoull(line->field[field], NULL, 16);
}

bool rig_lines_whole(const struct rig *rig, size_t from) {
  for (size_t i = from; i < rig->line_count; i++) {
    const struct line *line = &rig->lines[i];
    if (!line->good) {
      printf("# broken line: %s\n", line->text);
      return false;
    }
    if (i > from && rig_hex(line, 1) != ((rig_hex(line - 1, 1) + 1) & 0xFFFF)) {
      printf("# gap in the sequence before: %s\n", line->text);
      return false;
    }
  }
  return true;
}

int rig_command(struct rig *rig, char kind, const char *fields) {
  size_t from = rig->line_count;
  uint16_t seq = rig->command_seq++;
  rig_script(rig, "tx +0 %c %04X%s%s#", kind, seq, *fields ? " " : "", fields);
  for (double gone = 0; gone < ANSWER_MS; gone++) {
    for (size_t i = from; i < rig->line_count; i++) {
      const struct line *line = &rig->lines[i];
      if (line->good && strcmp(line->field[0], "A") == 0 && rig_hex(line, 2) == seq) {
        return (int)rig_hex(line, 3);
      }
    }
    rig_run(rig, 1);
  }
  return -1;
}

bool rig_counters(struct rig *rig, struct counters *c) {
  size_t from = rig->line_count;
  const struct line *line = rig_command(rig, 's', "") == 0 ? rig_find(rig, "L", from) : NULL;
  if (!line) {
    return false;
  }
  *c = (struct counters){rig_hex(line, 2), rig_hex(line, 3), rig_hex(line, 4), rig_hex(line, 5),
                         rig_hex(line, 6), rig_hex(line, 7), rig_hex(line, 8)};
  return true;
}

void rig_find_origin(struct rig *rig) {
  rig->origin = (chip_ticks(&rig->bench.chip) - bench_now(&rig->bench)) & 0xFFFFFFFFFFFF;
}

void rig_start(struct rig *rig, const char *elf, const char *script) {
  rig_power(rig, elf, NULL);
  rig_script(rig, "%s", script);
  rig_run(rig, 300);
  rig_settle(rig, 1000);
  rig_find_origin(rig);
}

uint64_t rig_ticks_at(const struct rig *rig, cycles_t cycle) {
  return (rig->origin + cycle) & 0xFFFFFFFFFFFF;
}

struct comparison rig_compare(const struct rig *rig, enum pin pin, size_t first_edge, size_t first_line) {
  struct comparison c = {
      .least = 0x7FFFFFFF, .most = -0x7FFFFFFF, .least_due = 0x7FFFFFFF, .most_due = -0x7FFFFFFF};
  size_t edge = first_edge;
  for (size_t i = first_line; i < rig->line_count; i++) {
    const struct line *line = &rig->lines[i];
    if (!line->good || strcmp(line->field[0], "E") != 0 || rig_hex(line, 2) != (uint64_t)pin) {
      continue;
    }
    c.reported++;
    while (edge < rig->edge_count && rig->edges[edge].pin != pin) {
      edge++;
    }
    if (edge == rig->edge_count) {
      continue;
    }
    c.wrong_levels += rig_hex(line, 3) != rig->edges[edge].level;
    uint32_t expected = (uint32_t)rig_ticks_at(rig, rig->edges[edge].cycle);
    long difference = (int32_t)((uint32_t)rig_hex(line, 4) - expected);
    c.least = difference < c.least ? difference : c.least;
    c.most = difference > c.most ? difference : c.most;
    difference += (long)(rig->edges[edge].cycle - rig->edges[edge].due);
    c.least_due = difference < c.least_due ? difference : c.least_due;
    c.most_due = difference > c.most_due ? difference : c.most_due;
    edge++;
  }
  for (size_t i = first_edge; i < rig->edge_count; i++) {
    c.injected += rig->edges[i].pin == pin;
  }
  return c;
}

/* splitmix64 (Steele, Lea, Flood 2014, from memory) */
uint32_t dice_below(struct dice *dice, uint32_t limit) {
  uint64_t x = dice->state += 0x9E3779B97F4A7C15u;
  x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9u;
  x = (x ^ (x >> 27)) * 0x94D049BB133111EBu;
  return (uint32_t)((x ^ (x >> 31)) % limit);
}
