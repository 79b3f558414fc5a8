/* The small rig: the chip's own comparator, AIN0 against AIN1, in the place of the capture pin; one level, no other light.
   Words: ELF of the small rig. */

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

#define PULSES 400
#define EXACT_TICKS 1

static struct rig rig;
static struct dice dice = {27182};

static void identity(void) {
  size_t from = rig.line_count;
  rig_command(&rig, 'h', "");
  const struct line *h = rig_find(&rig, "H", from);
  tap_check(h && strcmp(h->field[4], "small") == 0 && rig_hex(h, 5) == 0xE1,
            "it calls itself small: channels of low level, click, release and knob contact only");
  tap_check(rig_command(&rig, 'm', "2 0010") == 5 && rig_command(&rig, 'm', "3 0010") == 5,
            "light of sensors that it does not have is refused with 05");
  tap_check(rig_command(&rig, 'w', "1 0100 0110") == 5, "so is a sweep of the level that it does not have");
  tap_check(rig_command(&rig, 'm', "0 0010") == 0, "light of its own sensor is measured");
  rig_settle(&rig, 1000);
}

static void exact(void) {
  size_t edge = rig.edge_count, line = rig.line_count;
  for (int i = 0; i < PULSES; i++) {
    rig_script(&rig, "burst +0.0002 low 2 %u", 10 + dice_below(&dice, 3000));
    rig_script(&rig, "burst +0.0004 click 2 %u", 100 + dice_below(&dice, 500));
    rig_run(&rig, 5);
  }
  rig_settle(&rig, 1000);
  struct comparison c = rig_compare(&rig, PIN_LOW, edge, line);
  tap_figure("%zu edges of light, 10 us and longer: %+ld to %+ld ticks", c.reported, c.least, c.most);
  tap_check(c.injected == 2 * PULSES && c.reported == c.injected && c.wrong_levels == 0 && c.least >= -EXACT_TICKS &&
                c.most <= EXACT_TICKS,
            "%d pulses of light: both edges captured, exact to one tick", PULSES);
  struct comparison click = rig_compare(&rig, PIN_CLICK, edge, line);
  tap_check(click.injected == 2 * PULSES && click.reported == click.injected && click.wrong_levels == 0,
            "clicks beside them are all told");
}

static void deaf_to_the_rest(void) {
  size_t line = rig.line_count;
  rig_script(&rig, "burst +0.001 high 4 200\nburst +0.003 outerA 4 200\nburst +0.005 outerB 4 200\nburst +0.007 contact 4 200");
  rig_run(&rig, 20);
  rig_settle(&rig, 1000);
  tap_check(rig_count(&rig, "E", line) == 0, "pins that are analogue or unused bring no edges");
}

static void levels(void) {
  rig_script(&rig, "curve ramp\n0 0\n1000 1\n3000 1\n4000 0\nend-curve");
  double width_us[2];
  static const char *codes[] = {"2B FF", "A1 FF"};
  for (int i = 0; i < 2; i++) {
    rig_command(&rig, 't', codes[i]);
    rig_run(&rig, 100);
    size_t from = rig.line_count;
    rig_command(&rig, 'v', "");
    const struct line *v = rig_find(&rig, "V", from);
    /* both are read one after the other while the filter still comes from just below a step of the ADC */
    tap_check(v && labs((long)rig_hex(v, 4) - (long)rig_hex(v, 5)) <= 64, "the one threshold is read back: %s", v ? v->text : "not at all");
    from = rig.line_count;
    rig_script(&rig, "fire +0.002 ramp");
    rig_run(&rig, 20);
    rig_settle(&rig, 1000);
    const struct line *up = rig_find(&rig, "E", from);
    const struct line *down = up ? rig_find(&rig, "E", (size_t)(up - rig.lines) + 1) : NULL;
    width_us[i] = up && down ? ((uint32_t)rig_hex(down, 4) - (uint32_t)rig_hex(up, 4)) / 16.0 : 0;
  }
  double mean = (width_us[0] + width_us[1]) / 2;
  tap_figure("area-linear blades of 3 ms: %.1f us at the low level, %.1f us at the high one, mean %.1f us", width_us[0],
             width_us[1], mean);
  tap_check(width_us[0] > 3400 && width_us[1] < 2600 && mean > 2980 && mean < 3020,
            "two firings at the two levels give the effective time within 20 us of 3 ms");
}

static void counters(void) {
  struct counters c;
  tap_check(rig_counters(&rig, &c) && c.snapshots_lost + c.captures_lost + c.floods == 0 && rig_lines_whole(&rig, 0),
            "nothing lost, no line broken");
}

int main(int count, char **words) {
  tap_note("seed %llu", (unsigned long long)dice.state);
  rig_start(&rig, count > 1 ? words[1] : "rig.elf", "light all 40 4000");
  identity();
  exact();
  deaf_to_the_rest();
  levels();
  counters();
  rig_off(&rig);
  return tap_done();
}
