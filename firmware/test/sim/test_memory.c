/* How deep the stack goes: RAM behind the variables is filled with a pattern before the start and looked at after hard work. */

#include <stdio.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

#define RAM_FIRST 0x0100
#define RAM_LAST 0x08FF
#define PATTERN 0x5C
#define LEAST_FREE 128 /* bytes that must have stayed untouched */

static struct rig rig;

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  struct dice dice = {99};
  tap_note("seed %llu", (unsigned long long)dice.state);
  rig_power(&rig, elf, NULL);
  avr_t *avr = rig.bench.chip.avr;
  uint16_t variables_end = chip_variable(&rig.bench.chip, "_end");
  tap_check(variables_end > RAM_FIRST, "the ELF says where its variables end");
  if (!variables_end) {
    return tap_done();
  }
  memset(avr->data + variables_end, PATTERN, RAM_LAST + 1 - variables_end);
  rig_script(&rig, "curve opening\n0 0\n1000 1\n40000 1\n41000 0\nend-curve");
  rig_run(&rig, 300);
  static const char *const commands[] = {"h %04X#",         "s %04X#",       "p %04X BEEF#",   "t %04X 30 B0#",
                                         "v %04X#",         "m %04X 0 0040#", "c %04X 2#", "i %04X R-%d#",
                                         "r %04X 1 00000640 0002#", "r %04X 2 00010000 0001#",
                                         "w %04X 0 0100 0102#",
                                         "z %04X 00 11 22#"};
  for (int i = 0; i < 400; i++) {
    char text[64];
    snprintf(text, sizeof text, commands[i % (sizeof commands / sizeof *commands)], i, i);
    rig_script(&rig, "tx +0 %s", text);
    for (enum pin pin = 0; pin < PINS; pin++) { /* handlers inside handlers */
      rig_script(&rig, "burst @%llu %s %u %g", (unsigned long long)bench_now(&rig.bench) + dice_below(&dice, 16000),
                 pin_wiring[pin].name, dice_below(&dice, 8), 4 + dice_below(&dice, 400) / 10.0);
    }
    if (i == 200) {
      rig_script(&rig, "burst +0.001 low 3000 2.1\nburst +0.001 high 3000 2.3\nburst +0.001 click 3000 2.7");
    }
    if (i % 9 == 5) {
      rig_run(&rig, 200); /* the rest that a light curve wants, after the blocks */
      rig_script(&rig, "fire +0 opening centre");
    }
    rig_run(&rig, 25);
  }
  rig_settle(&rig, 3000);
  size_t tails = 0;
  for (size_t i = 0; i < rig.line_count; i++) {
    const struct line *line = &rig.lines[i];
    tails += line->good && strcmp(line->field[0], "C") == 0 && strcmp(line->field[3], "3") == 0;
  }
  tap_check(tails > 5, "tails of long light curves (%zu) were among it", tails);
  tap_check(rig_count(&rig, "M", 0) > 500 && rig_count(&rig, "C", 0) > 50 && rig_count(&rig, "V", 0) > 10,
            "light blocks (%zu), parts of light curves (%zu) and thresholds (%zu) were among it", rig_count(&rig, "M", 0),
            rig_count(&rig, "C", 0), rig_count(&rig, "V", 0));
  uint16_t untouched = variables_end + 1; /* the firmware may keep a guard at the very end of its variables */
  while (untouched <= RAM_LAST && avr->data[untouched] == PATTERN) {
    untouched++;
  }
  int variables = variables_end - RAM_FIRST, stack = RAM_LAST + 1 - untouched, left = untouched - variables_end;
  tap_figure("RAM of 2048 bytes: %d variables, %d stack at its deepest, %d never touched", variables, stack, left);
  tap_check(left >= LEAST_FREE, "at least %d bytes of RAM are never touched", LEAST_FREE);
  tap_check(rig_count(&rig, "H", 1) > 0 && rig_command(&rig, 's', "") == 0, "the board still answers");
  bool restarted = false;
  for (size_t i = 1; i < rig.line_count; i++) {
    restarted = restarted || (rig.lines[i].good && strcmp(rig.lines[i].field[0], "H") == 0 &&
                              strcmp(rig.lines[i].field[1], "0000") == 0 && strcmp(rig.lines[i].field[8], "power") != 0);
  }
  tap_check(!restarted, "and has not restarted");
  rig_off(&rig);
  return tap_done();
}
