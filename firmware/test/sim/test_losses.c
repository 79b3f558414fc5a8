/* Fast edges: as many as a shutter with bounce makes are all kept; a flood is counted and told, and passes. */

#include <stdio.h>
#include <stdlib.h>

#include "rig.h"
#include "tap.h"

#define BURST 64
#define SPACING_US 20
#define FLOOD 4000

static struct rig rig;

static void start(const char *elf) {
  rig_power(&rig, elf, NULL);
  rig_run(&rig, 200);
  rig_settle(&rig, 1000);
  rig_find_origin(&rig);
}

/* Of fast edges of the click sensor those in the middle are left out, as ringing: beginning, end and order must be right. */
static bool good_ringing(size_t edge, size_t line) {
  size_t told = 0;
  bool good = true;
  uint64_t last = 0;
  for (size_t i = line; i < rig.line_count; i++) {
    const struct line *seen = &rig.lines[i];
    if (seen->good && seen->field[0][0] == 'E' && rig_hex(seen, 2) == PIN_CLICK) {
      last = rig_hex(seen, 4);
      good = good && rig_hex(seen, 3) == (told % 2 == 0) &&
             (told > 0 || labs((long)(last - rig_ticks_at(&rig, rig.edges[edge].cycle))) <= 8);
      told++;
    }
  }
  return good && told >= 2 && told <= BURST && labs((long)(last - rig_ticks_at(&rig, rig.edges[rig.edge_count - 1].cycle))) <= 8;
}

/* 64 edges 20 us apart on one channel. */
static bool good_burst(enum pin pin, struct comparison *c) {
  size_t edge = rig.edge_count, line = rig.line_count;
  rig_script(&rig, "burst +0.001 %s %d %d", pin_wiring[pin].name, BURST, SPACING_US);
  rig_settle(&rig, 2000);
  *c = rig_compare(&rig, pin, edge, line);
  if (pin == PIN_CLICK) {
    return c->injected == BURST && good_ringing(edge, line) && rig_lines_whole(&rig, line);
  }
  return c->injected == BURST && c->reported == BURST && c->wrong_levels == 0 && rig_lines_whole(&rig, line);
}

static void bursts(const char *elf) {
  start(elf);
  for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
    struct comparison c;
    struct counters counters = {0};
    bool good = good_burst(pin, &c);
    bool told = rig_counters(&rig, &counters);
    if (pin == PIN_CLICK) {
      tap_figure("channel %d, %d edges %d us apart: %zu reported", pin, BURST, SPACING_US, c.reported);
      tap_check(good, "channel %d: of %d edges %d us apart begin and end are told", pin, BURST, SPACING_US);
    } else {
      tap_figure("channel %d, %d edges %d us apart: %zu reported, %+ld to %+ld ticks", pin, BURST, SPACING_US, c.reported,
                 c.least, c.most);
      tap_check(good, "channel %d: none of %d edges %d us apart is lost", pin, BURST, SPACING_US);
    }
    tap_check(told && counters.snapshots_lost + counters.captures_lost + counters.floods == 0,
              "channel %d: no loss is counted", pin);
  }
  rig_off(&rig);
}

/* How close edges may come: figures, and a check at what any shutter can do. */
static void resolution(const char *elf, enum pin pin) {
  static const double spacings_us[] = {10, 8, 6, 5, 4, 3, 2, 1.5, 1};
  double kept = 0, exact = 0;
  bool all_kept = true, all_exact = true;
  start(elf);
  for (size_t i = 0; i < sizeof spacings_us / sizeof *spacings_us; i++) {
    size_t edge = rig.edge_count, line = rig.line_count;
    rig_script(&rig, "burst +0.001 %s 30 %g", pin_wiring[pin].name, spacings_us[i]);
    rig_settle(&rig, 2000);
    struct comparison c = rig_compare(&rig, pin, edge, line);
    all_kept = all_kept && c.reported == 30;
    all_exact = all_exact && all_kept && labs(c.least) <= (pin == PIN_LOW ? 1 : 8) && labs(c.most) <= (pin == PIN_LOW ? 1 : 8);
    kept = all_kept ? spacings_us[i] : kept;
    exact = all_exact ? spacings_us[i] : exact;
  }
  tap_figure("channel %d alone: edges %g us apart are all kept, %g us apart also at their time", pin, kept, exact);
  /* the capture handler, which also reads twice what a snapshot may spoil, takes 6 us by itself */
  double wanted = pin == PIN_LOW ? 8 : 6;
  tap_check(kept > 0 && kept <= wanted && exact > 0 && exact <= 8,
            "channel %d: edges %g us apart are kept, 8 us apart at their time", pin, wanted);
  rig_off(&rig);
}

static void flood(const char *elf, enum pin pin, double spacing_us) {
  start(elf);
  size_t line = rig.line_count;
  rig_script(&rig, "burst +0.001 %s %d %g", pin_wiring[pin].name, FLOOD, spacing_us);
  const struct line *loss = rig_wait(&rig, "L", line, 3000);
  tap_check(loss && (rig_hex(loss, 3) || rig_hex(loss, 4)) && rig_hex(loss, 5),
            "channel %d, %d edges %g us apart: an L line tells of lost edges and a flood, unasked", pin, FLOOD,
            spacing_us);
  tap_check(rig_settle(&rig, 5000), "channel %d: the board comes to rest after the flood", pin);
  tap_check(rig_lines_whole(&rig, line), "channel %d: no line broken or missing in the flood", pin);
  tap_check(rig_count(&rig, "H", line) == 0, "channel %d: the board did not restart", pin);
  struct counters before, after;
  bool told = rig_counters(&rig, &before);
  size_t reported = rig_count(&rig, "E", line);
  tap_figure("channel %d, %d edges %g us apart: %zu reported, counters say %llu edges, %llu snapshots and %llu captures "
             "lost in %llu floods",
             pin, FLOOD, spacing_us, reported, (unsigned long long)before.edges,
             (unsigned long long)before.snapshots_lost, (unsigned long long)before.captures_lost,
             (unsigned long long)before.floods);
  const struct line *beat = rig_wait(&rig, "B", rig.line_count, 500);
  tap_check(beat && rig_hex(beat, 3) == 0, "channel %d: after the flood the levels in the beat are those of the pins", pin);
  struct comparison c;
  bool good = good_burst(pin, &c);
  told = told && rig_counters(&rig, &after);
  tap_check(good, "channel %d: the next firing after the flood is whole", pin);
  tap_check(told && before.snapshots_lost == after.snapshots_lost && before.captures_lost == after.captures_lost &&
                before.floods == after.floods,
            "channel %d: nothing more is counted as lost in the next firing", pin);
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  bursts(elf);
  resolution(elf, PIN_LOW);
  resolution(elf, PIN_HIGH);
  flood(elf, PIN_LOW, 3);
  flood(elf, PIN_HIGH, 3);
  flood(elf, PIN_OUTER_A, 8);
  flood(elf, PIN_CLICK, 20);
  return tap_done();
}
