/* How true the ticks of the edges are: each channel alone, all at once, and slightly apart, with the serial line and the
   ADC at work. docs/protocol.md, "Channels": channel 0 is exact to one tick; the others are software snapshots, allowed 8
   ticks alone and 24 ticks when edges coincide. */

#include <stdio.h>
#include <stdlib.h>

#include "rig.h"
#include "tap.h"

#define ALONE_EDGES 2000
#define TRIALS 300
#define EXACT_TICKS 1
#define ALONE_TICKS 8
#define COINCIDENT_TICKS 24

#define OPENING_SPACING_MS 120

static struct rig rig;
static struct dice dice = {20261125};
static cycles_t next_opening;

static long size_of(struct comparison c) {
  return labs(c.least) > labs(c.most) ? labs(c.least) : labs(c.most);
}

static long size_from_due(struct comparison c) {
  return labs(c.least_due) > labs(c.most_due) ? labs(c.least_due) : labs(c.most_due);
}

static bool complete(struct comparison c) {
  return c.injected > 0 && c.injected == c.reported && c.wrong_levels == 0;
}

static void start(const char *elf) {
  rig_power(&rig, elf, NULL);
  /* a hysteresis that no light overcomes: the pins are the test's own */
  rig_script(&rig, "light centre 40 3300\nhysteresis 5000\ncurve opening\n0 0\n1000 1\n2000 1\n3000 0\nend-curve");
  next_opening = 0;
  rig_run(&rig, 200);
  rig_settle(&rig, 1000);
  rig_find_origin(&rig);
}

/* A command now and then, and light all the time, so that handlers and loop have something else to do: in turn blocks, and
   openings whose light curves are taken and sent. */
static void keep_busy(int trial) {
  if (trial % 400 == 0) {
    rig_script(&rig, "tx +0 m %04X 0 FFFF#\ntx +0.002 p %04X BEEF#", trial, trial + 1);
  } else if (trial % 400 == 200) {
    rig_script(&rig, "tx +0 m %04X 0 0000#\ntx +0.002 p %04X BEEF#", trial, trial + 1);
  }
  if (trial % 400 >= 200 && bench_now(&rig.bench) >= next_opening) {
    rig_script(&rig, "fire +0 opening centre");
    next_opening = bench_now(&rig.bench) + OPENING_SPACING_MS * CYCLES_PER_MILLISECOND;
  }
}

static void alone(const char *elf, enum pin pin) {
  start(elf);
  size_t edge = rig.edge_count, line = rig.line_count;
  for (int i = 0; i < ALONE_EDGES; i++) {
    keep_busy(i);
    rig_script(&rig, "pin @%llu %s %d", (unsigned long long)bench_now(&rig.bench) + 10 + dice_below(&dice, 16000),
               pin_wiring[pin].name, i % 2 == 0);
    rig_run(&rig, 2);
  }
  rig_settle(&rig, 2000);
  struct comparison c = rig_compare(&rig, pin, edge, line);
  long allowed = pin == PIN_LOW ? EXACT_TICKS : ALONE_TICKS;
  tap_figure("channel %d (%s) alone, %zu edges at random phases: %+ld to %+ld ticks from where they landed, %+ld to %+ld "
             "from when they were due",
             pin, pin_wiring[pin].name, c.reported, c.least, c.most, c.least_due, c.most_due);
  /* simavr puts an edge between two instructions, silicon also within one: the due time has that jitter. The capture
     unit does not wait for the instruction on silicon, so channel 0 is judged from where the edge landed. */
  long worst = pin == PIN_LOW ? size_of(c) : size_from_due(c);
  tap_check(complete(c) && worst <= allowed, "channel %d alone: every edge reported, within %ld ticks", pin,
            allowed);
  tap_check(rig_lines_whole(&rig, line), "channel %d alone: no line broken or missing", pin);
  tap_figure("meanwhile %zu light blocks and %zu lines of light curves", rig_count(&rig, "M", line), rig_count(&rig, "D", line));
  tap_check(rig_count(&rig, "M", line) > 0 && rig_count(&rig, "D", line) > 0, "channel %d alone: blocks and curves went between", pin);
  rig_off(&rig);
}

/* All seven pins within `spread` cycles of each other. */
static void together(const char *elf, unsigned spread) {
  start(elf);
  size_t edge = rig.edge_count, line = rig.line_count;
  for (int i = 0; i < TRIALS; i++) {
    keep_busy(i);
    unsigned long long at = bench_now(&rig.bench) + 10 + dice_below(&dice, 16000);
    for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
      rig_script(&rig, "pin @%llu %s %d", at + (spread ? dice_below(&dice, spread + 1) : 0), pin_wiring[pin].name,
                 i % 2 == 0);
    }
    rig_run(&rig, 12);
  }
  rig_settle(&rig, 2000);
  for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
    struct comparison c = rig_compare(&rig, pin, edge, line);
    long allowed = pin == PIN_LOW ? EXACT_TICKS : COINCIDENT_TICKS;
    tap_figure("channel %d (%s), all channels within %u cycles, %zu edges: %+ld to %+ld ticks from where they landed, "
               "%+ld to %+ld from when they were due",
               pin, pin_wiring[pin].name, spread, c.reported, c.least, c.most, c.least_due, c.most_due);
    long worst = pin == PIN_LOW ? size_of(c) : size_from_due(c);
    if (spread == 0) {
      tap_check(complete(c) && worst <= allowed, "channel %d, edges on all channels at once: within %ld ticks", pin,
                allowed);
    } else {
      tap_check(complete(c), "channel %d, edges within %u cycles of each other: all reported", pin, spread);
    }
  }
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  tap_note("seed %llu", (unsigned long long)dice.state);
  for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
    alone(elf, pin);
  }
  together(elf, 0);
  together(elf, 60);
  return tap_done();
}
