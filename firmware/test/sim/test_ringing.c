/* Two clicks with 3 ms of ringing each around a firing: none of their edges makes another one be lost, and onset and end of
   each are told at their time, also where the edges between them are left out. Shutter and sounds are invented. */

#include <stdio.h>
#include <stdlib.h>

#include "rig.h"
#include "tap.h"

#define RINGING_MS 3
#define RINGING_US 3000
#define SOFTWARE_TICKS 24     /* edges of several channels may fall together */
#define QUIET_TICKS 16000     /* a host takes an edge after a millisecond of quiet for a click */

static struct rig rig;

/* What was told of the click channel from a line on. */
struct told {
  size_t edges;
  bool alternate;
  uint32_t ticks[600];
};

static struct told told_clicks(size_t from) {
  struct told told = {.alternate = true};
  for (size_t i = from; i < rig.line_count && told.edges < 600; i++) {
    const struct line *line = &rig.lines[i];
    if (line->good && line->field[0][0] == 'E' && rig_hex(line, 2) == PIN_CLICK) {
      told.alternate = told.alternate && rig_hex(line, 3) == (told.edges % 2 == 0);
      told.ticks[told.edges++] = (uint32_t)rig_hex(line, 4);
    }
  }
  return told;
}

static bool near_tick(uint32_t told, cycles_t cycle, long *worst) {
  long off = (int32_t)(told - (uint32_t)rig_ticks_at(&rig, cycle));
  *worst = labs(off) > *worst ? labs(off) : *worst;
  return labs(off) <= SOFTWARE_TICKS;
}

/* Each quiet in the injected edges is told with both its ends, and no other quiet is told. */
static bool quiets_are_told(const struct told *told, size_t first_edge, long *worst) {
  size_t at = 0, quiets = 0;
  bool good = told->edges > 0;
  const struct injected *before = NULL;
  for (size_t i = first_edge; i < rig.edge_count; i++) {
    const struct injected *edge = &rig.edges[i];
    if (edge->pin != PIN_CLICK) {
      continue;
    }
    if (!before) {
      good = good && near_tick(told->ticks[0], edge->cycle, worst);
    } else if (edge->cycle - before->cycle >= QUIET_TICKS) {
      quiets++;
      while (at + 1 < told->edges && told->ticks[at + 1] - told->ticks[at] < QUIET_TICKS - 2 * SOFTWARE_TICKS) {
        at++;
      }
      if (at + 1 >= told->edges) {
        return false;
      }
      good = good && near_tick(told->ticks[at], before->cycle, worst) && near_tick(told->ticks[at + 1], edge->cycle, worst);
      at++;
    }
    before = edge;
  }
  good = good && before && near_tick(told->ticks[told->edges - 1], before->cycle, worst);
  for (size_t i = at; i + 1 < told->edges; i++) {
    good = good && told->ticks[i + 1] - told->ticks[i] < QUIET_TICKS + 2 * SOFTWARE_TICKS;
  }
  return good && quiets <= 1;
}

/* Whether no edge is told behind a beat of a later time, which would put it out of order for a host. */
static bool beats_are_in_order(void) {
  uint32_t beat = 0;
  bool good = true, seen = false;
  for (size_t i = 0; i < rig.line_count; i++) {
    const struct line *line = &rig.lines[i];
    if (line->good && line->field[0][0] == 'B') {
      beat = (uint32_t)rig_hex(line, 2);
      seen = true;
    } else if (line->good && line->field[0][0] == 'E' && seen) {
      good = good && (int32_t)((uint32_t)rig_hex(line, 4) - beat) >= -SOFTWARE_TICKS;
    }
  }
  return good && seen;
}

/* More edges than the line can tell at once, so long and so often that beats fall due among them. */
static void beats_among_edges(const char *elf) {
  size_t among = 0;
  rig_start(&rig, elf, "light all 60 4200");
  size_t line = rig.line_count;
  for (int i = 0; i < 30; i++) {
    rig_script(&rig, "burst +0.001 contact 50 100\nburst +0.0101 outerA 34 2000");
    rig_run(&rig, 107);
  }
  rig_settle(&rig, 1000);
  for (size_t i = line + 1; i + 1 < rig.line_count; i++) {
    among += rig.lines[i].field[0][0] == 'B' && rig.lines[i - 1].field[0][0] == 'E' && rig.lines[i + 1].field[0][0] == 'E';
  }
  struct counters counters = {0};
  tap_check(rig_counters(&rig, &counters) && counters.snapshots_lost == 0 && among > 3,
            "beats fall due while edges wait (%zu), and no edge is lost", among);
  tap_check(beats_are_in_order(), "such a beat bears the time before the first of them");
  rig_off(&rig);
}

static void clicks(const char *elf, double hz) {
  static const double apart_ms[] = {1, 2, 3.5, 5, 8, 13, 21, 34, 50};
  bool good = true, lost = false;
  long worst = 0;
  size_t injected = 0, reported = 0;
  rig_start(&rig, elf, "light all 60 4200\ncurve c\n0 0\n500 1\n125000 1\n126000 0\nend-curve");
  for (size_t i = 0; i < sizeof apart_ms / sizeof *apart_ms; i++) {
    size_t edge = rig.edge_count, line = rig.line_count;
    cycles_t begin = bench_now(&rig.bench) + 16000;
    unsigned long long first = begin + 160000, second = first + (unsigned long long)(apart_ms[i] * 16000);
    rig_script(&rig, "burst @%llu release 2 90000\nring @%llu click %g %d\nring @%llu click %g %d", (unsigned long long)begin,
               first, hz, RINGING_MS, second, 0.93 * hz, RINGING_MS);
    rig_script(&rig, "fire @%llu c\nburst @%llu contact 6 150", second + 6400, second + 6400 + 9000);
    rig_run(&rig, 250);
    rig_settle(&rig, 1000);
    struct told told = told_clicks(line);
    for (size_t e = edge; e < rig.edge_count; e++) {
      injected += rig.edges[e].pin == PIN_CLICK;
    }
    reported += told.edges;
    good = good && told.alternate && quiets_are_told(&told, edge, &worst) && rig_lines_whole(&rig, line);
    for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
      struct comparison c = rig_compare(&rig, pin, edge, line);
      good = good && (pin == PIN_CLICK || (c.injected > 0 && c.injected == c.reported && c.wrong_levels == 0));
    }
  }
  struct counters counters = {0};
  lost = !rig_counters(&rig, &counters) || counters.snapshots_lost + counters.captures_lost + counters.floods != 0;
  tap_figure("clicks of %g kHz: %zu of %zu edges told, onsets and ends within %ld ticks", hz / 1000, reported, injected, worst);
  tap_check(!lost, "clicks of %g kHz, %d ms each, 1 to 50 ms apart, around a firing: nothing is lost", hz / 1000, RINGING_MS);
  tap_check(good, "clicks of %g kHz: onset, end and quiet of each are told at their time, and all other channels whole",
            hz / 1000);
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  static const double hertz[] = {2000, 4000, 6500, 9000};
  for (size_t i = 0; i < sizeof hertz / sizeof *hertz; i++) {
    clicks(elf, hertz[i]);
  }
  beats_among_edges(elf);
  return tap_done();
}
