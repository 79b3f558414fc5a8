/* The starter rig: the chip's bandgap against AIN1 in the place of the capture pin, turned round; the bandgap read against the supply; one
   level that nobody sets. Words: ELF of the starter rig. */

#include <stdlib.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

#define PULSES 200
#define COUNTS_64 (64 * 1024 / SUPPLY_MV)

static struct rig rig;
static struct dice dice = {31415};

static void identity(void) {
  size_t from = rig.line_count;
  rig_command(&rig, 'h', "");
  const struct line *h = rig_find(&rig, "H", from);
  tap_check(h && strcmp(h->field[4], "starter") == 0 && rig_hex(h, 5) == 0xC1,
            "it calls itself starter: channels of light, release and knob contact only");
  tap_check(rig_command(&rig, 't', "2B A1") == 5 && rig_command(&rig, 'w', "0 0100 0110") == 5 &&
                rig_command(&rig, 'r', "1 00000640 0001") == 5 && rig_command(&rig, 'm', "2 0010") == 5,
            "thresholds, sweep, reference LED and other sensors are refused with 05");
  tap_check(rig_command(&rig, 't', "A1 2B") == 2, "and wrong fields with 02, as on every rig");
}

/* How far the bandgap reads from what it is, in counts of the converter. */
static double bandgap_off(double mv, double supply) {
  rig_script(&rig, "bandgap %.1f\nsupply %.4f", mv, supply);
  size_t from = rig.line_count;
  rig_command(&rig, 'v', "");
  const struct line *v = rig_find(&rig, "V", from);
  double read = v ? (double)rig_hex(v, 4) : 0;
  tap_note("%.0f mV at %.2f of 5 V: %s", mv, supply, v ? v->text : "no V");
  return v && rig_hex(v, 5) == rig_hex(v, 4) ? (read - COUNTS_64 * mv / supply) / 64 : 1000;
}

static void bandgap(void) {
  double worst = 0;
  for (int i = 0; i < 6; i++) {
    double off = bandgap_off(i % 3 == 0 ? 1000 : i % 3 == 1 ? 1100 : 1200, i < 3 ? 1 : 0.95);
    worst = abs((int)(off * 1000)) > abs((int)(worst * 1000)) ? off : worst;
  }
  tap_figure("bandgap of 1.0 to 1.2 V at 5 and 4.75 V: reads %+.2f counts at most beside what it is", worst);
  tap_check(worst >= -1 && worst <= 0.1, "the bandgap is read to a count, whatever the supply");
  bandgap_off(1100, 1);
}

static void exact(void) {
  size_t edge = rig.edge_count, line = rig.line_count;
  for (int i = 0; i < PULSES; i++) {
    rig_script(&rig, "burst +0.0002 low 2 %u", 100 + dice_below(&dice, 3000));
    rig_run(&rig, 5);
  }
  rig_settle(&rig, 1000);
  struct comparison c = rig_compare(&rig, PIN_LOW, edge, line);
  tap_figure("%zu edges of light, 100 us and longer, of %zu: %+ld to %+ld ticks", c.reported, c.injected, c.least, c.most);
  tap_check(c.injected == 2 * PULSES && c.reported == c.injected && c.wrong_levels == 0 && c.least >= -1 && c.most <= 1,
            "%d pulses of light: level 1 is light, both edges exact to one tick", PULSES);
  line = rig.line_count;
  rig_script(&rig, "burst +0.001 high 4 200\nburst +0.003 click 4 200\nburst +0.005 outerA 4 200\nburst +0.007 contact 4 200");
  rig_run(&rig, 20);
  rig_settle(&rig, 1000);
  tap_check(rig_count(&rig, "E", line) == 0, "pins that are analogue or unused bring no edges");
  line = rig.line_count;
  rig_script(&rig, "burst +0.001 release 2 3000");
  rig_run(&rig, 20);
  rig_settle(&rig, 1000);
  tap_check(rig_count(&rig, "E", line) == 2, "the release is told");
}

/* Width at the level of straight ramps of 1 ms, and a curve with dark at both ends. */
static void level(void) {
  rig_script(&rig, "curve ramp\n0 0\n1000 1\n3000 1\n4000 0\nend-curve");
  for (int mv = 1000; mv <= 1200; mv += 200) {
    rig_script(&rig, "bandgap %d", mv);
    rig_command(&rig, 'v', "");
    rig_run(&rig, 100);
    size_t from = rig.line_count;
    rig_script(&rig, "fire +0.002 ramp");
    rig_run(&rig, 20);
    rig_settle(&rig, 1000);
    const struct line *up = rig_find(&rig, "E", from), *down = up ? rig_find(&rig, "E", (size_t)(up - rig.lines) + 1) : NULL;
    double us = up && down ? ((uint32_t)rig_hex(down, 4) - (uint32_t)rig_hex(up, 4)) / 16.0 : 0;
    double wanted = 4000 - 2 * 1000 * (mv - 40) / 3960.0;
    const struct line *c = rig_find(&rig, "C", from);
    tap_figure("bandgap %d mV: open for %.1f us at its level, %.1f us by the light", mv, us, wanted);
    tap_check(us > wanted - 1 && us < wanted + 1 && c && rig_hex(c, 7) == 1, "the level is the bandgap, and a curve is told");
  }
  rig_script(&rig, "bandgap 1100");
}

/* A comparator without hysteresis, noise, and light that creeps past the level, as a shutter opened by hand does. */
static void chatter(void) {
  rig_script(&rig, "noise centre 3 5\nlag centre 47\ncurve creep\n0 0\n200000 1\n400000 1\n600000 0\nend-curve");
  size_t edge = rig.edge_count, from = rig.line_count;
  rig_script(&rig, "fire +0.01 creep");
  rig_run(&rig, 900);
  rig_settle(&rig, 2000);
  size_t told = rig_count(&rig, "E", from);
  struct counters c;
  bool whole = rig_counters(&rig, &c) && c.snapshots_lost + c.captures_lost + c.floods == 0;
  tap_figure("light that creeps past the level in 0.2 s, noise 3 mV: %zu edges at the comparator, %zu told",
             rig.edge_count - edge, told);
  tap_check(rig.edge_count - edge > 100 && whole && told >= 2 && told % 2 == 0,
            "a comparator that chatters loses nothing that counts: no flood, the last level is told");
  rig_script(&rig, "noise centre 0 5\nlag centre 0");
}

int main(int count, char **words) {
  rig_start(&rig, count > 1 ? words[1] : "rig.elf", "light all 40 4000");
  identity();
  bandgap();
  exact();
  level();
  chatter();
  struct counters c;
  tap_check(rig_counters(&rig, &c) && c.snapshots_lost + c.captures_lost + c.floods == 0 && rig_lines_whole(&rig, 0),
            "nothing lost, no line broken");
  rig_off(&rig);
  return tap_done();
}
