/* The knob contact: each move of the foil is told at its time, and a foil that chatters costs no other channel an edge.
   Words: ELF of either rig. Foil and shutter are invented. */

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

#define MOVES 200
#define LATE_TICKS 2700        /* a round of the main loop, and a little */
#define REST_TICKS 98304       /* three half periods: for so long it is not looked at after an edge */
#define QUEUE_TICKS 480000     /* and not before that edge is told, behind those of other channels */
#define OUT_OF_ORDER_TICKS 320000 /* docs/protocol.md: lines come up to 20 ms out of order */
#define EXACT_TICKS 1
#define SOFTWARE_TICKS 24

static struct rig rig;
static struct dice dice = {1618};
static bool small;

static struct {
  size_t edges;
  bool alternate;
  int last;
  uint32_t first_ticks, last_ticks;
} told;

static void knob_told(size_t from) {
  memset(&told, 0, sizeof told);
  told.alternate = true;
  for (size_t i = from; i < rig.line_count; i++) {
    const struct line *line = &rig.lines[i];
    if (line->good && line->field[0][0] == 'E' && rig_hex(line, 2) == PIN_KNOB) {
      told.alternate = told.alternate && (told.edges == 0 || (int)rig_hex(line, 3) != told.last);
      told.last = (int)rig_hex(line, 3);
      told.last_ticks = (uint32_t)rig_hex(line, 4);
      told.first_ticks = told.edges++ == 0 ? told.last_ticks : told.first_ticks;
    }
  }
}

/* No edge comes behind a line that is later by more than a host takes. */
static bool in_order(size_t from) {
  uint32_t latest = 0;
  bool seen = false, good = true;
  for (size_t i = from; i < rig.line_count; i++) {
    const struct line *line = &rig.lines[i];
    if (line->good && (line->field[0][0] == 'E' || line->field[0][0] == 'B')) {
      uint32_t ticks = (uint32_t)rig_hex(line, line->field[0][0] == 'E' ? 4 : 2);
      good = good && (!seen || (int32_t)(ticks - latest) >= -OUT_OF_ORDER_TICKS);
      latest = !seen || (int32_t)(ticks - latest) > 0 ? ticks : latest;
      seen = true;
    }
  }
  return good;
}

static bool nothing_lost(void) {
  struct counters c = {0};
  return rig_counters(&rig, &c) && c.snapshots_lost + c.captures_lost + c.floods == 0 && rig_lines_whole(&rig, 0);
}

/* The levels in the next beat. */
static int levels(void) {
  const struct line *beat = rig_wait(&rig, "B", rig.line_count, 500);
  return beat ? (int)rig_hex(beat, 3) : -1;
}

static void at_the_start(const char *elf) {
  rig_power(&rig, elf, NULL);
  rig_script(&rig, "pin +0 knob 1");
  rig_run(&rig, 300);
  rig_settle(&rig, 1000);
  const struct line *greeting = rig_find(&rig, "H", 0);
  tap_check(greeting && rig_hex(greeting, 5) == (small ? 0xE1 : 0xFF), "the greeting names the knob contact");
  knob_told(0);
  tap_check(told.edges == 0 && levels() == 0x80, "a foil that touches at the start is no edge; the beat tells of it");
  rig_off(&rig);
}

static void alone(const char *elf) {
  rig_start(&rig, elf, "light all 60 4200");
  size_t edge = rig.edge_count, line = rig.line_count;
  for (int i = 0; i < MOVES; i++) {
    if (i % 10 == 0) {
      rig_script(&rig, "tx +0 m %04X 0 0010#", i);
    }
    rig_script(&rig, "pin @%llu knob %d", (unsigned long long)bench_now(&rig.bench) + dice_below(&dice, 16000), i % 2 == 0);
    rig_run(&rig, 8 + dice_below(&dice, 20));
  }
  rig_settle(&rig, 2000);
  struct comparison c = rig_compare(&rig, PIN_KNOB, edge, line);
  tap_figure("%d moves of the foil 8 ms and more apart: told %ld to %ld ticks late", MOVES, c.least, c.most);
  tap_check(c.injected == MOVES && c.reported == MOVES && c.wrong_levels == 0 && c.least >= 0 && c.most <= LATE_TICKS,
            "each move of the foil is told, at most %d us late", LATE_TICKS / 16);
  tap_check(nothing_lost() && levels() == 0, "nothing lost, no line broken, and the beat has the level as it was told");
  rig_off(&rig);
}

/* A foil that leaves its wire with 200 edges in 50 ms while the shutter fires, on a rig that also hears a click and sees its contact
   bounce: as many edges as all of them make at once. */
static void chatter(const char *elf) {
  rig_start(&rig, elf, "light all 60 4200\nlag all 4\ncurve c\n0 0\n300 1\n8000 1\n8300 0\nend-curve\npin +0.01 knob 1");
  rig_run(&rig, 50);
  bool others = true, knob = true, end = true;
  size_t most = 0;
  long off = 0;
  for (int i = 0; i < 30; i++) {
    size_t edge = rig.edge_count, line = rig.line_count;
    unsigned long long at = bench_now(&rig.bench) + 16000 + dice_below(&dice, 16000);
    rig_script(&rig, "burst @%llu knob 201 250", at);
    rig_script(&rig, "burst @%llu release 2 40000\nring @%llu click %u 3", at, at + dice_below(&dice, 400000),
               2000 + dice_below(&dice, 7000));
    rig_script(&rig, "fire @%llu c", at + dice_below(&dice, 800000));
    if (!small) {
      rig_script(&rig, "burst @%llu contact 10 150\nburst @%llu outerA 40 300", at + dice_below(&dice, 800000),
                 at + 1600000);
    }
    rig_run(&rig, 250);
    rig_settle(&rig, 1000);
    for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
      struct comparison c = rig_compare(&rig, pin, edge, line);
      bool exists = !small || pin == PIN_LOW || pin == PIN_CLICK || pin == PIN_RELEASE;
      long allowed = pin == PIN_LOW ? EXACT_TICKS : SOFTWARE_TICKS;
      others = others && (pin == PIN_CLICK || !exists ||
                          (c.injected > 0 && c.injected == c.reported && c.wrong_levels == 0 && c.least >= -allowed &&
                           c.most <= allowed));
    }
    /* `burst` begins with 1, so what leaves the wire is its second edge, and it ends as it began */
    knob_told(line);
    long begin = (int32_t)(told.first_ticks - (uint32_t)rig_ticks_at(&rig, at + 4000));
    off = labs(begin) > off ? labs(begin) : off;
    knob = knob && told.edges >= 1 && told.edges <= 16 && told.alternate && begin >= -SOFTWARE_TICKS && begin <= 4000 + LATE_TICKS;
    long over = (int32_t)(told.last_ticks - (uint32_t)rig_ticks_at(&rig, at + 200 * 4000));
    end = end && over <= QUEUE_TICKS + REST_TICKS + LATE_TICKS && (levels() & 0x80 ? 1 : 0) == (told.edges ? told.last : 1);
    most = told.edges > most ? told.edges : most;
    rig_script(&rig, "pin +0 knob 1");
    rig_run(&rig, 50);
  }
  tap_figure("a foil that chatters, 200 edges in 50 ms: at most %zu told, the first within %ld us", most, off / 16);
  tap_check(others, "firings while the foil chatters: every edge of every other channel is told, at its time");
  tap_check(knob, "and of the foil its first move at its time, levels in turn, 16 edges at most");
  tap_check(end, "and its last level, once it has rested");
  tap_check(in_order(0), "no line is further out of order than a host takes");
  tap_check(nothing_lost(), "nothing is lost");
  rig_off(&rig);
}

/* A foil that never comes to rest. */
static void without_end(const char *elf) {
  rig_start(&rig, elf, "light all 60 4200\ncurve c\n0 0\n300 1\n8000 1\n8300 0\nend-curve");
  size_t line = rig.line_count;
  rig_script(&rig, "burst +0.001 knob 20000 250\nfire +2 c centre");
  rig_run(&rig, 1000);
  tap_check(rig_command(&rig, 'v', "") == 0, "a command is answered while the foil chatters without end");
  rig_run(&rig, 4000);
  size_t beats = rig_count(&rig, "B", line), edges = rig_count(&rig, "E", line);
  rig_settle(&rig, 2000);
  tap_figure("a foil that chatters for 5 s: %zu of 20000 edges told, %zu beats", edges, beats);
  tap_check(beats >= 19 && edges <= 5 * 170 + 20, "beats come as ever, and a quarter of the line is taken at most");
  tap_check(rig_count(&rig, "C", line) > 0, "and the light curve of a firing meanwhile");
  tap_check(in_order(0) && nothing_lost(), "nothing is lost or out of order");
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  small = strstr(elf, "small") != NULL;
  tap_note("seed %llu", (unsigned long long)dice.state);
  at_the_start(elf);
  alone(elf);
  chatter(elf);
  without_end(elf);
  return tap_done();
}
