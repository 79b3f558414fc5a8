/* Whole firings as a shutter between two curtains makes them, through light, lag and comparators, with a contact that
   chatters, a click and the release: every edge that the bench put on a pin is told, at its time.
   The shutter, its speeds and its chatter are invented. */

#include <stdio.h>
#include <stdlib.h>

#include "rig.h"
#include "tap.h"

#define FIRINGS 12
#define EXACT_TICKS 1
#define SOFTWARE_TICKS 24 /* edges of several channels may fall together */

static struct rig rig;
static struct dice dice = {31415};

/* The slit uncovers a sensor in 40 us, stays for the exposure, covers it in 40 us; it passes outer A, centre, outer B. */
static void fire(double exposure_us) {
  cycles_t begin = bench_now(&rig.bench) + 16000 + dice_below(&dice, 16000);
  unsigned long long at = begin;
  unsigned travel_us = 1000 + dice_below(&dice, 6000);
  rig_script(&rig, "curve c\n0 0\n40 1\n%g 1\n%g 0\nend-curve", 40 + exposure_us, 80 + exposure_us);
  rig_script(&rig, "fire @%llu c outerA\nfire @%llu c centre %u\nfire @%llu c outerB %u", at + 64000, at + 64000,
             travel_us, at + 64000, 2 * travel_us);
  rig_script(&rig, "burst @%llu release 2 150000\nburst @%llu click %u %u", at, at + 16000, 2 * (1 + dice_below(&dice, 5)),
             100 + dice_below(&dice, 200));
  rig_script(&rig, "burst @%llu contact %u %u", at + 64000 + 16ull * travel_us * 2 / 3, 2 * (1 + dice_below(&dice, 4)),
             40 + dice_below(&dice, 100));
  rig_run(&rig, 160 + exposure_us / 1000 + travel_us / 500);
  rig_settle(&rig, 1000);
}

int main(int count, char **words) {
  static const double exposures_us[] = {125, 250, 1000, 4000, 16667, 250000};
  tap_note("seed %llu", (unsigned long long)dice.state);
  rig_power(&rig, count > 1 ? words[1] : "rig.elf", NULL);
  rig_script(&rig, "light all 60 4200\nlag all 4");
  rig_run(&rig, 200);
  rig_settle(&rig, 1000);
  rig_find_origin(&rig);
  for (size_t e = 0; e < sizeof exposures_us / sizeof *exposures_us; e++) {
    size_t edge = rig.edge_count, line = rig.line_count;
    for (int i = 0; i < FIRINGS; i++) {
      fire(exposures_us[e]);
    }
    bool good = true;
    size_t told = 0;
    long least = 0, most = 0;
    for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
      struct comparison c = rig_compare(&rig, pin, edge, line);
      long allowed = pin == PIN_LOW ? EXACT_TICKS : SOFTWARE_TICKS;
      good = good && c.injected > 0 && c.injected == c.reported && c.wrong_levels == 0 && c.least >= -allowed &&
             c.most <= allowed;
      told += c.reported;
      least = c.least < least ? c.least : least;
      most = c.most > most ? c.most : most;
    }
    tap_figure("%d firings of %g ms: %zu edges told, %+ld to %+ld ticks", FIRINGS, exposures_us[e] / 1000, told, least,
               most);
    tap_check(good, "%d firings of %g ms: every edge of every channel is told, at its time", FIRINGS,
              exposures_us[e] / 1000);
  }
  struct counters counters;
  tap_check(rig_counters(&rig, &counters) && counters.snapshots_lost + counters.captures_lost + counters.floods == 0 &&
                rig_lines_whole(&rig, 0),
            "nothing lost, no line broken");
  rig_off(&rig);
  return tap_done();
}
