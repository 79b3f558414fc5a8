#ifndef BENCH_RIG_H
#define BENCH_RIG_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "bench.h"
#include "scenario.h"
#include "store.h"

/* A rig under test: the bench, unpaced, what the board sent so far line by line, and the edges that were really injected. */

#define MOST_FIELDS 12
#define LINE_ROOM 256

struct line {
  char text[LINE_ROOM]; /* as sent, without its end */
  char cut[LINE_ROOM];  /* the same, cut at the spaces */
  cycles_t cycle;       /* when its line feed was handed to the sender */
  bool good;            /* form and CRC */
  int fields;           /* with KIND and SEQ */
  char *field[MOST_FIELDS];
};

struct injected {
  cycles_t cycle; /* when it landed, between two instructions */
  cycles_t due;   /* when it was meant to come, up to three cycles before */
  enum pin pin;
  bool level;
};

/* A switching of the reference LED by the board. */
struct led_switch {
  cycles_t cycle;  /* when the timer matched */
  cycles_t landed; /* when simavr moved the pin, behind the instruction under way */
  bool ramped;
  bool level;
};

struct rig {
  struct bench bench;
  struct scenario scenario;
  struct line *lines;
  size_t line_count, line_room;
  char pending[LINE_ROOM];
  size_t pending_length;
  struct injected *edges;
  size_t edge_count, edge_room;
  struct led_switch *leds;
  size_t led_count, led_room;
  uint16_t command_seq;
  uint64_t origin; /* ticks at cycle 0, modulo 2^48; see rig_find_origin */
};

/* Powers a board with the firmware of that ELF. `eeprom` may be NULL: erased. Ends the program when that fails. */
void rig_power(struct rig *rig, const char *elf, const unsigned char *eeprom);
/* The same with nothing stored, statements of a scenario, and time until the board is silent and its ticks are known. */
void rig_start(struct rig *rig, const char *elf, const char *script);
void rig_off(struct rig *rig);
/* Statements of a scenario, one a line. Ends the program on a wrong one: that is a mistake of the test. */
void rig_script(struct rig *rig, const char *format, ...) __attribute__((format(printf, 2, 3)));
void rig_run(struct rig *rig, double milliseconds);
/* Runs until the board has been silent, beats apart, for 30 ms; false when it is not within the limit. */
bool rig_settle(struct rig *rig, double limit_milliseconds);

/* First line of that kind at or after `from`, NULL when there is none. */
const struct line *rig_find(const struct rig *rig, const char *kind, size_t from);
size_t rig_count(const struct rig *rig, const char *kind, size_t from);
/* Waits for a line of that kind at or after `from`; NULL when none came within the limit. */
const struct line *rig_wait(struct rig *rig, const char *kind, size_t from, double limit_milliseconds);
/* A field as a number; ends the program when the line has no such hexadecimal field. */
uint64_t rig_hex(const struct line *line, int field);
/* Whether all lines from `from` on are well formed and their sequence has no gap. */
bool rig_lines_whole(const struct rig *rig, size_t from);

/* Sends a command under the next sequence number and waits for its answer: the RESULT, -1 when none came within a second.
   `fields` are those behind SEQ, "" for none. */
int rig_command(struct rig *rig, char kind, const char *fields);
/* Asks for the counters; false when no L line came. */
struct counters {
  uint64_t edges, snapshots_lost, captures_lost, floods, bad_lines, long_lines, bytes_lost;
};
bool rig_counters(struct rig *rig, struct counters *counters);

/* Finds which tick belongs to which cycle, from Timer1 and the firmware's counter in the simulator, not from any edge. */
void rig_find_origin(struct rig *rig);
uint64_t rig_ticks_at(const struct rig *rig, cycles_t cycle);

/* Compares the edges of one channel, in order: those injected from `first_edge` on with the E lines from `first_line` on. */
struct comparison {
  size_t injected, reported;
  size_t wrong_levels;
  long least, most; /* reported ticks less the tick at which the edge landed */
  long least_due, most_due; /* the same from when it was due: with the jitter of the instruction under way */
};
struct comparison rig_compare(const struct rig *rig, enum pin pin, size_t first_edge, size_t first_line);

/* Random numbers of a test, repeatable from the seed that it prints. */
struct dice {
  uint64_t state;
};
uint32_t dice_below(struct dice *dice, uint32_t limit);

#endif
