/* Who the board is and why it started: greeting, reset causes, boot count, serial number, a damaged store. */

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

#define GREETING_MS 2500 /* docs/protocol.md, "Serial settings" */

static struct rig rig;
static unsigned char eeprom[STORE_BYTES];

static bool says(const struct line *greeting, const char *serial, const char *cause) {
  bool good = greeting && greeting->fields == 11 && strcmp(greeting->field[6], serial) == 0 &&
              strcmp(greeting->field[8], cause) == 0;
  if (!good) {
    tap_note("greeting was: %s", greeting ? greeting->text : "none");
  }
  return good;
}

static uint64_t boots(const struct line *greeting) {
  return greeting ? rig_hex(greeting, 7) : 0;
}

static const struct line *power(const char *elf, const unsigned char *store) {
  rig_power(&rig, elf, store);
  return rig_wait(&rig, "H", 0, GREETING_MS);
}

static void first_start(const char *elf) {
  const struct line *h = power(elf, NULL);
  tap_check(says(h, "none", "power"), "an erased store: serial `none`, cause `power`, within 2.5 s");
  tap_check(h && h == rig.lines && strcmp(h->field[1], "0000") == 0, "the greeting is line 0000, and the first");
  tap_check(h && rig_hex(h, 2) == 1 && rig_hex(h, 3) == 16000000 && strcmp(h->field[4], "full") == 0 &&
                rig_hex(h, 5) == 0xFF && strlen(h->field[10]) == 12,
            "protocol 1, 16 MHz, full rig, eight channels, 48-bit ticks");
  if (h) {
    tap_figure("greeting %.1f ms after power", (double)h->cycle / CYCLES_PER_MILLISECOND);
  }
  rig_run(&rig, 500);
  store_read(&rig.bench.chip, eeprom);
  rig_off(&rig);
}

static void later_starts(const char *elf) {
  const struct line *h = power(elf, eeprom);
  uint64_t count = boots(h);
  tap_check(says(h, "none", "power") && count == 2, "a second start by power counts as boot 2");
  rig_run(&rig, 500);
  size_t line = rig.line_count;
  rig_script(&rig, "reset +0.01");
  h = rig_wait(&rig, "H", line, GREETING_MS);
  tap_check(says(h, "none", "external") && boots(h) == count + 1, "the reset pin: cause `external`, one boot more");
  tap_check(h && strcmp(h->field[1], "0000") == 0, "lines are counted from 0000 again after a reset");
  rig_run(&rig, 500);
  line = rig.line_count;
  rig_script(&rig, "stall +0.01");
  h = rig_wait(&rig, "H", line, GREETING_MS + 2000);
  tap_check(says(h, "none", "watchdog") && boots(h) == count + 2,
            "Timer1 stands still: the watchdog bites, cause `watchdog`, one boot more");
  rig_run(&rig, 500);
  tap_check(rig_command(&rig, 's', "") == 0, "after a watchdog reset the board answers");
  size_t edge = rig.edge_count;
  line = rig.line_count;
  rig_find_origin(&rig);
  rig_script(&rig, "burst +0.01 low 6 300");
  rig_settle(&rig, 1000);
  struct comparison c = rig_compare(&rig, PIN_LOW, edge, line);
  tap_check(c.reported == 6 && c.wrong_levels == 0 && labs(c.least) <= 1 && labs(c.most) <= 1,
            "after a watchdog reset edges are right");
  store_read(&rig.bench.chip, eeprom);
  rig_off(&rig);
}

static void serial_number(const char *elf) {
  power(elf, eeprom);
  rig_run(&rig, 300);
  size_t line = rig.line_count;
  tap_check(rig_command(&rig, 'i', "R-0042") == 0, "`i` is answered with 00");
  tap_check(says(rig_wait(&rig, "H", line, 500), "R-0042", "power"), "and followed or led by a greeting with the number");
  rig_run(&rig, 500);
  tap_check(rig_command(&rig, 'i', "A") == 0 && rig_command(&rig, 'i', "Twelve_chars") == 0,
            "numbers of 1 and of 12 characters are taken");
  tap_check(rig_command(&rig, 'i', "Thirteen.char") == 2, "one of 13 characters is refused with 02");
  rig_run(&rig, 500);
  store_read(&rig.bench.chip, eeprom);
  rig_off(&rig);
  tap_check(says(power(elf, eeprom), "Twelve_chars", "power"), "the number is there after the power was off");
  rig_off(&rig);
}

static void damage(const char *elf) {
  unsigned char bad[STORE_BYTES];
  memcpy(bad, eeprom, sizeof bad);
  for (size_t i = 0; i < sizeof bad; i += 7) { /* every record, if there are several */
    bad[i] ^= 0x10;
  }
  tap_check(says(power(elf, bad), "damaged", "power"), "a store whose checksum fails: serial `damaged`");
  rig_run(&rig, 500);
  size_t edge = rig.edge_count, line = rig.line_count;
  rig_script(&rig, "burst +0.01 low 6 300");
  rig_settle(&rig, 1000);
  tap_check(rig_compare(&rig, PIN_LOW, edge, line).reported == 6, "it measures all the same");
  tap_check(rig_command(&rig, 'i', "R-0043") == 0, "a new number can be given");
  rig_run(&rig, 500);
  store_read(&rig.bench.chip, bad);
  rig_off(&rig);
  tap_check(says(power(elf, bad), "R-0043", "power"), "and is kept");
  rig_off(&rig);
}

/* The supply fails while the board writes its store, at many moments. */
static void torn_writes(const char *elf) {
  unsigned char torn[40][STORE_BYTES];
  power(elf, eeprom);
  rig_run(&rig, 500);
  rig_script(&rig, "tx +0 i 0001 R-0099#");
  for (size_t i = 0; i < 40; i++) {
    rig_run(&rig, 5);
    store_read(&rig.bench.chip, torn[i]);
  }
  rig_off(&rig);
  int damaged = 0, fresh = 0, old = 0;
  for (size_t i = 0; i < 40; i++) {
    const struct line *h = power(elf, torn[i]);
    damaged += !h || (strcmp(h->field[6], "R-0099") != 0 && strcmp(h->field[6], "Twelve_chars") != 0);
    fresh += h && strcmp(h->field[6], "R-0099") == 0;
    old += h && strcmp(h->field[6], "Twelve_chars") == 0;
    rig_off(&rig);
  }
  tap_figure("power lost at 40 moments around a write of the store: %d times the old number, %d times the new, %d damaged",
             old, fresh, damaged);
  tap_check(damaged == 0 && fresh > 0, "a write that is cut off leaves the old number or the new one");
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  first_start(elf);
  later_starts(elf);
  serial_number(elf);
  damage(elf);
  torn_writes(elf);
  return tap_done();
}
