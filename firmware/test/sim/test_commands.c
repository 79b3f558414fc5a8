/* What the board makes of what it hears: the shared vectors of the protocol, noise, and bytes that come too fast. */

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

static struct rig rig;

static void start(const char *elf) {
  rig_power(&rig, elf, NULL);
  rig_run(&rig, 200);
  rig_settle(&rig, 1000);
}

/* Sends a line as it is and gives the board time; how many A lines came, and the last one's result. */
static int answers(const char *line, uint64_t *result) {
  size_t from = rig.line_count;
  unsigned char bytes[300];
  size_t length = strlen(line);
  memcpy(bytes, line, length);
  bytes[length++] = '\n';
  wire_send(&rig.bench.wire, bytes, length);
  rig_run(&rig, 150); /* a serial number takes 22 bytes of 3.4 ms */
  int count = 0;
  for (size_t i = from; i < rig.line_count; i++) {
    if (rig.lines[i].good && rig.lines[i].field[0][0] == 'A' && strncmp(line + 2, rig.lines[i].field[2], 4) == 0) {
      count++;
      *result = rig_hex(&rig.lines[i], 3);
    }
  }
  return count;
}

static bool same_counts(struct counters before, struct counters after, uint64_t bad, uint64_t too_long) {
  return after.bad_lines == before.bad_lines + bad && after.long_lines == before.long_lines + too_long &&
         after.bytes_lost == before.bytes_lost;
}

static void vector(char *line, const char *verdict, const char *meaning) {
  struct counters before, after;
  uint64_t result = 0xFF;
  rig_settle(&rig, 1000);
  bool told = rig_counters(&rig, &before);
  bool command = line[0] >= 'a' && line[0] <= 'z';
  int count = answers(line, &result);
  rig_settle(&rig, 1000);
  told = told && rig_counters(&rig, &after);
  bool good = false;
  if (strcmp(verdict, "crc") == 0 || strcmp(verdict, "form") == 0) {
    good = count == 0 && same_counts(before, after, 1, 0);
  } else if (strcmp(verdict, "long") == 0) {
    good = count == 0 && same_counts(before, after, 0, 1);
  } else if (!command) { /* for a host: well formed, and no kind that the board knows */
    good = count == 0 && same_counts(before, after, 0, 0);
  } else {
    uint64_t wanted = strcmp(verdict, "unknown") == 0 ? 1 : strcmp(verdict, "valid") == 0 ? 0 : 2;
    good = count == 1 && result == wanted && same_counts(before, after, 0, 0);
  }
  tap_check(told && good, "%s: `%s` (%s)", verdict, line, meaning);
}

static void vectors(const char *elf, const char *path) {
  FILE *file = fopen(path, "r");
  char text[512];
  int read = 0;
  start(elf);
  while (file && fgets(text, sizeof text, file)) {
    text[strcspn(text, "\n")] = 0;
    char *rest = text;
    char *line = strsep(&rest, "\t"), *verdict = strsep(&rest, "\t"), *meaning = rest;
    if (text[0] == '#' && !(verdict && meaning)) {
      continue;
    }
    vector(line, verdict, meaning);
    read++;
  }
  if (file) {
    fclose(file);
  }
  tap_check(read >= 30, "%d vectors were read from %s", read, path);
  rig_off(&rig);
}

static void answers_to_questions(const char *elf) {
  start(elf);
  rig_find_origin(&rig);
  size_t line = rig.line_count;
  cycles_t asked = bench_now(&rig.bench);
  tap_check(rig_command(&rig, 'p', "C0DE") == 0, "a ping is answered");
  const struct line *q = rig_find(&rig, "Q", line);
  bool good = q && strcmp(q->field[2], "C0DE") == 0;
  if (good) {
    int64_t received = (int64_t)(rig_hex(q, 3) - rig_ticks_at(&rig, asked));
    int64_t sent = (int64_t)(rig_hex(q, 4) - rig_hex(q, 3));
    /* 16 bytes of 640 cycles: the ping itself */
    tap_figure("ping of 16 bytes: received %lld ticks after its first start bit, answered %lld ticks later",
               (long long)received, (long long)sent);
    good = received > 15 * 640 && received < 16 * 640 + 8000 && sent >= 0 && sent < 64000;
  }
  tap_check(good, "Q gives the token back, and its ticks are those of the wire");
  const struct line *a = rig_find(&rig, "A", line);
  tap_check(a && q && a > q, "A comes after the line that was asked for");
  line = rig.line_count;
  tap_check(rig_command(&rig, 'h', "") == 0 && rig_find(&rig, "H", line), "`h` brings a greeting without a restart");
  line = rig.line_count;
  tap_check(rig_command(&rig, 's', "") == 0 && rig_find(&rig, "B", line) && rig_find(&rig, "L", line) &&
                rig_find(&rig, "L", line) > rig_find(&rig, "B", line),
            "`s` brings a beat and the counters behind it");
  rig_off(&rig);
}

static void garbage(const char *elf) {
  struct dice dice = {777};
  tap_note("seed %llu", (unsigned long long)dice.state);
  start(elf);
  struct counters before, after;
  bool told = rig_counters(&rig, &before);
  size_t line = rig.line_count;
  unsigned char noise[8000];
  for (size_t i = 0; i < sizeof noise; i++) {
    noise[i] = (unsigned char)dice_below(&dice, 256);
  }
  wire_send(&rig.bench.wire, noise, sizeof noise);
  size_t edge = rig.edge_count;
  rig_find_origin(&rig);
  rig_script(&rig, "burst +0.05 low 40 900\nburst +0.05 high 40 1100");
  rig_run(&rig, 400);
  wire_send(&rig.bench.wire, (const unsigned char *)"\n", 1); /* ends whatever the noise left open */
  rig_settle(&rig, 2000);
  told = told && rig_counters(&rig, &after);
  tap_figure("%zu bytes of noise at full line speed: %llu bad lines, %llu long lines, %llu bytes had to wait", sizeof noise,
             (unsigned long long)(after.bad_lines - before.bad_lines),
             (unsigned long long)(after.long_lines - before.long_lines), (unsigned long long)rig.bench.wire.held);
  tap_check(told && after.bad_lines > before.bad_lines, "noise on the line is counted, and the board answers after it");
  tap_check(rig.bench.wire.held == 0 && after.bytes_lost == before.bytes_lost,
            "the board takes bytes as fast as the line brings them");
  struct comparison low = rig_compare(&rig, PIN_LOW, edge, line), high = rig_compare(&rig, PIN_HIGH, edge, line);
  tap_check(low.reported == 40 && high.reported == 40 && low.wrong_levels + high.wrong_levels == 0 &&
                labs(low.least) <= 1 && labs(low.most) <= 1,
            "edges during the noise are whole");
  tap_check(rig_lines_whole(&rig, line) && rig_count(&rig, "H", line) == 0, "no line broken, no restart");
  rig_off(&rig);
}

static void overrun(const char *elf) {
  start(elf);
  struct counters before, after;
  bool told = rig_counters(&rig, &before);
  size_t line = rig.line_count;
  rig_script(&rig, "overrun +0.01 303132333435363738390A");
  rig_run(&rig, 100);
  const struct line *l = rig_find(&rig, "L", line);
  tap_check(l != NULL, "a receiver overrun brings an L line unasked");
  rig_script(&rig, "raw +0 0A");
  rig_settle(&rig, 1000);
  told = told && rig_counters(&rig, &after);
  tap_check(told && after.bytes_lost > before.bytes_lost, "a receiver overrun is counted as bytes lost");
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  vectors(elf, count > 2 ? words[2] : "vectors.tsv");
  answers_to_questions(elf);
  garbage(elf);
  overrun(elf);
  return tap_done();
}
