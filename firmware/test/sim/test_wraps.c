/* Ticks across the wraps of the 16-bit timer, of its half period, and of the 32 bits on the wire. */

#include <stdio.h>
#include <stdlib.h>

#include "rig.h"
#include "tap.h"

#define TIMER_TICKS 65536u
#define AROUND 48 /* cycles on either side of a wrap */
#define LONG_FIRING_MS 270000.0

static struct rig rig;
static struct dice dice = {4711};

static void start(const char *elf) {
  rig_power(&rig, elf, NULL);
  rig_run(&rig, 200);
  rig_settle(&rig, 1000);
  rig_find_origin(&rig);
}

static bool right(struct comparison c, long allowed) {
  return c.injected > 0 && c.injected == c.reported && c.wrong_levels == 0 && labs(c.least) <= allowed &&
         labs(c.most) <= allowed;
}

/* One edge per trial on one channel, stepped cycle by cycle over the place where the low bits of the timer are `place`. */
static void around(const char *elf, enum pin pin, unsigned place, long allowed) {
  start(elf);
  size_t edge = rig.edge_count, line = rig.line_count;
  int level = 0;
  for (int trial = 0; trial < 4 * AROUND; trial++) {
    cycles_t now = bench_now(&rig.bench);
    uint64_t ticks = rig_ticks_at(&rig, now + 200);
    cycles_t to_place = (place - ticks) % TIMER_TICKS;
    cycles_t at = now + 200 + to_place + trial / 2;
    at = at > now + 200 + AROUND ? at - AROUND : at;
    rig_script(&rig, "pin @%llu %s %d", (unsigned long long)at, pin_wiring[pin].name, level ^= 1);
    bench_run_until(&rig.bench, at + 40);
    rig_run(&rig, 1.5 + dice_below(&dice, 100) / 100.0);
  }
  rig_settle(&rig, 2000);
  struct comparison c = rig_compare(&rig, pin, edge, line);
  tap_figure("channel %d, %zu edges within %d cycles of timer value %04X: %+ld to %+ld ticks", pin, c.reported, AROUND,
             place, c.least, c.most);
  tap_check(right(c, allowed), "channel %d: right across timer value %04X, within %ld ticks", pin, place, allowed);
  rig_off(&rig);
}

/* Many edges on one channel, one every few cycles more than the firmware needs, right through the wrap. */
static void through(const char *elf, enum pin pin, long allowed) {
  start(elf);
  size_t edge = rig.edge_count, line = rig.line_count;
  for (int trial = 0; trial < 24; trial++) {
    cycles_t now = bench_now(&rig.bench);
    cycles_t wrap = now + TIMER_TICKS - rig_ticks_at(&rig, now) % TIMER_TICKS;
    if (wrap < now + 8000) {
      wrap += TIMER_TICKS;
    }
    rig_script(&rig, "burst @%llu %s 20 %g", (unsigned long long)wrap - 3000 - dice_below(&dice, 300),
               pin_wiring[pin].name, 20 + dice_below(&dice, 16) / 16.0);
    bench_run_until(&rig.bench, wrap + 8000);
    rig_settle(&rig, 500);
  }
  struct comparison c = rig_compare(&rig, pin, edge, line);
  tap_figure("channel %d, %zu edges 20 us apart through 24 wraps: %+ld to %+ld ticks", pin, c.reported, c.least, c.most);
  tap_check(right(c, allowed), "channel %d: bursts through the 16-bit wrap are right", pin);
  rig_off(&rig);
}

/* Light on before the counter's 32 bits wrap, off after. Beats tell the 48 bits on either side. */
static void wire_wrap(const char *elf, const char *ticks48) {
  start(elf);
  rig_script(&rig, "preset +0.001 %s", ticks48);
  rig_run(&rig, 5);
  rig_find_origin(&rig);
  rig_settle(&rig, 1000);
  uint64_t before = rig_ticks_at(&rig, bench_now(&rig.bench));
  uint64_t to_wrap = (0x100000000u - (before & 0xFFFFFFFF)) & 0xFFFFFFFF;
  cycles_t wrap = bench_now(&rig.bench) + to_wrap;
  size_t edge = rig.edge_count, line = rig.line_count;
  for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
    rig_script(&rig, "pin @%llu %s 1\npin @%llu %s 0", (unsigned long long)wrap - 40000 - 900 * pin,
               pin_wiring[pin].name, (unsigned long long)wrap + 40000 + 900 * pin, pin_wiring[pin].name);
  }
  bench_run_until(&rig.bench, wrap + 600 * CYCLES_PER_MILLISECOND);
  bool good = true;
  for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
    struct comparison c = rig_compare(&rig, pin, edge, line);
    good = good && c.injected == 2 && right(c, pin == PIN_LOW ? 1 : 24);
  }
  tap_check(good, "counter preset to %s: firings that begin before the 32-bit wrap and end after it are right", ticks48);
  bool rising = true;
  uint64_t last = 0;
  for (const struct line *beat = rig_find(&rig, "B", line); beat && beat < rig.lines + rig.line_count; beat++) {
    if (beat->good && beat->field[0][0] == 'B') {
      uint64_t ticks = rig_hex(beat, 2);
      long off = (long)((int64_t)(ticks - rig_ticks_at(&rig, beat->cycle)));
      rising = rising && ticks > last && off < 0 && off > -100000;
      last = ticks;
    }
  }
  tap_check(rising && last > (before | 0xFFFFFFFF), "counter preset to %s: beats carry on in 48 bits across the wrap",
            ticks48);
  rig_off(&rig);
}

/* T: light on, held for longer than the 32 bits last, off. Widened as docs/protocol.md tells a host to, by beats. */
static uint64_t widened(const struct line *edge, const struct line *first) {
  const struct line *beat = edge;
  while (beat > first && !(beat->good && beat->field[0][0] == 'B')) {
    beat--;
  }
  uint64_t base = rig_hex(beat, 2);
  return base + (uint64_t)(int64_t)(int32_t)((uint32_t)rig_hex(edge, 4) - (uint32_t)base);
}

static void long_firing(const char *elf) {
  start(elf);
  rig_wait(&rig, "B", rig.line_count, 500);
  size_t edge = rig.edge_count, line = rig.line_count;
  rig_script(&rig, "hold +0.05 1\nhold +%f 0", 0.05 + LONG_FIRING_MS / 1000);
  rig_run(&rig, LONG_FIRING_MS + 500);
  const struct line *open = NULL, *shut = NULL;
  for (size_t i = line; i < rig.line_count; i++) {
    const struct line *at = &rig.lines[i];
    if (at->good && at->field[0][0] == 'E' && rig_hex(at, 2) == PIN_LOW) {
      open = open ? open : at;
      shut = at;
    }
  }
  cycles_t opened = 0, closed = 0;
  for (size_t i = edge; i < rig.edge_count; i++) {
    if (rig.edges[i].pin == PIN_LOW) {
      opened = opened ? opened : rig.edges[i].cycle;
      closed = rig.edges[i].cycle;
    }
  }
  bool whole = open && shut && open != shut;
  int64_t off = whole ? (int64_t)(widened(shut, rig.lines) - widened(open, rig.lines) - (closed - opened)) : 0;
  tap_figure("a firing of %.3f s on T is off by %lld ticks", (double)(closed - opened) / CYCLES_PER_SECOND,
             (long long)off);
  tap_check(whole && closed - opened > 0x100000000u && llabs(off) <= 1,
            "a firing longer than the 32 bits last (268 s) has the right length");
  uint64_t farthest = 0, last = 0;
  for (size_t i = line; i < rig.line_count; i++) {
    if (rig.lines[i].good && rig.lines[i].field[0][0] == 'B') {
      uint64_t ticks = rig_hex(&rig.lines[i], 2);
      if (last && ticks - last > farthest) {
        farthest = ticks - last;
      }
      last = ticks;
    }
  }
  tap_figure("beats at most %llu ticks apart", (unsigned long long)farthest);
  tap_check(last && farthest <= 1u << 22, "beats come at least every 2^22 ticks");
  tap_check(rig_lines_whole(&rig, line), "no line broken or missing in all that time");
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  tap_note("seed %llu", (unsigned long long)dice.state);
  static const enum pin tried[] = {PIN_LOW, PIN_HIGH, PIN_RELEASE};
  for (size_t i = 0; i < sizeof tried / sizeof *tried; i++) {
    long allowed = tried[i] == PIN_LOW ? 1 : 8;
    around(elf, tried[i], 0x0000, allowed);
    around(elf, tried[i], 0x8000, allowed);
    through(elf, tried[i], allowed);
  }
  wire_wrap(elf, "0000FFE00000");
  wire_wrap(elf, "1234FFE08000");
  long_firing(elf);
  return tap_done();
}
