/* Trip points (docs/protocol.md, command `w` and line `W`): the fine threshold, injected offsets and hysteresis found again,
   and that everything else goes on meanwhile. */

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

#define STEP_MS 5
#define ALONE_TICKS 8 /* docs/protocol.md, software channels alone; as in test_edges */

static struct rig rig;
static struct dice dice = {20261127};

static double mv_of(unsigned fine_code) {
  return fine_code * SUPPLY_MV / 4096;
}

static unsigned code_of(double mv) {
  return (unsigned)(mv * 4096 / SUPPLY_MV + 0.5);
}

static void begin_sweep(unsigned channel, unsigned from, unsigned to) {
  rig_script(&rig, "tx +0 w %04X %X %04X %04X#", rig.command_seq++, channel, from, to);
}

static const struct line *answer_to_sweep(size_t from, double limit_milliseconds) {
  unsigned seq = (uint16_t)(rig.command_seq - 1);
  for (double gone = 0; gone < limit_milliseconds; gone += 5) {
    for (size_t i = from; i < rig.line_count; i++) {
      if (rig.lines[i].good && rig.lines[i].field[0][0] == 'A' && rig_hex(&rig.lines[i], 2) == seq) {
        return &rig.lines[i];
      }
    }
    rig_run(&rig, 5);
  }
  return NULL;
}

/* The voltage at the comparator itself, while the sweep still waits at its first code. */
static void fine_codes(const char *elf) {
  static const unsigned codes[] = {0x010, 0x2B0, 0x2B1, 0x2B5, 0x2B8, 0x2BF, 0xA21, 0xA2F, 0xFF7};
  rig_start(&rig, elf, "");
  double worst_mean = 0, worst_ripple = 0;
  for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
    for (unsigned channel = 0; channel < 2; channel++) {
      size_t line = rig.line_count;
      const struct threshold *t = channel ? &rig.bench.optics.high : &rig.bench.optics.low;
      begin_sweep(channel, codes[i], codes[i] + 1);
      rig_run(&rig, 22);
      double sum = 0, least = 1e9, most = -1e9;
      int readings = 0;
      for (cycles_t end = bench_now(&rig.bench) + 8 * CYCLES_PER_MILLISECOND; bench_now(&rig.bench) < end; readings++) {
        bench_run_until(&rig.bench, bench_now(&rig.bench) + 1);
        double mv = threshold_mv(t, bench_now(&rig.bench));
        sum += mv;
        least = fmin(least, mv);
        most = fmax(most, mv);
      }
      double off = fabs(sum / readings - mv_of(codes[i]));
      worst_mean = fmax(worst_mean, off);
      worst_ripple = fmax(worst_ripple, most - least);
      answer_to_sweep(line, 500);
    }
  }
  tap_figure("fine thresholds: mean off by %.4f mV at most, ripple of the dither %.3f mV peak to peak at most", worst_mean,
             worst_ripple);
  tap_check(worst_mean < 0.05, "a fine code gives code / 4096 of the supply");
  tap_check(worst_ripple < 0.2, "what the filters leave of the dither is within 0.1 mV to either side");
  rig_off(&rig);
}

struct found {
  bool whole; /* W rising, W falling, A done, in this order, and no more W */
  unsigned up, down;
  double level_up, level_down, light_up; /* mV */
};

static struct found sweep(unsigned channel, unsigned from, unsigned to) {
  struct found f = {0};
  size_t line = rig.line_count;
  begin_sweep(channel, from, to);
  const struct line *a = answer_to_sweep(line, 500 + 2.0 * STEP_MS * (to - from + 1));
  const struct line *up = rig_find(&rig, "W", line);
  const struct line *down = up ? rig_find(&rig, "W", (size_t)(up - rig.lines) + 1) : NULL;
  if (!a || !down || a < down || rig_hex(a, 3) != 0 || rig_count(&rig, "W", line) != 2) {
    tap_note("answer %s, %zu W lines", a ? a->text : "missing", rig_count(&rig, "W", line));
    return f;
  }
  f.whole = rig_hex(up, 2) == channel && rig_hex(up, 3) == 1 && rig_hex(down, 2) == channel && rig_hex(down, 3) == 0;
  f.up = (unsigned)rig_hex(up, 4);
  f.down = (unsigned)rig_hex(down, 4);
  f.level_up = (double)rig_hex(up, 5) / 64 * SUPPLY_MV / 1024;
  f.level_down = (double)rig_hex(down, 5) / 64 * SUPPLY_MV / 1024;
  f.light_up = (double)rig_hex(up, 6) / 16 * SUPPLY_MV / 1024;
  return f;
}

/* Steady LED light; a comparator with offset o and hysteresis h switches off at light - o + h / 2 as its threshold rises, and
   on again at light - o - h / 2. */
static void offsets(const char *elf) {
  static const struct {
    unsigned channel;
    const char *name;
    double led_mv, offset_mv, hysteresis_mv;
  } cases[] = {{0, "low", 800, 40, 30}, {1, "high", 3000, 40, 30}, {0, "low", 1500, -25, 5}, {1, "high", 2200, -40, 30}};
  for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
    char script[160];
    snprintf(script, sizeof script, "light all 40 4000\nled centre %g\noffset %s %g\nhysteresis %g", cases[i].led_mv,
             cases[i].name, cases[i].offset_mv, cases[i].hysteresis_mv);
    rig_start(&rig, elf, script);
    rig_command(&rig, 'r', "3 00000000 0000");
    rig_run(&rig, 50);
    double light = 40 + cases[i].led_mv, middle = light - cases[i].offset_mv;
    size_t line = rig.line_count;
    struct found f = sweep(cases[i].channel, code_of(middle) - 60, code_of(middle) + 60);
    double offset = light - (mv_of(f.up) + mv_of(f.down)) / 2, hysteresis = mv_of(f.up) - mv_of(f.down);
    tap_figure("%s comparator, offset %g mV, hysteresis %g mV: found %.1f and %.1f mV by code, %.1f and %.1f mV by readback",
               cases[i].name, cases[i].offset_mv, cases[i].hysteresis_mv, offset, hysteresis,
               f.light_up - (f.level_up + f.level_down) / 2, f.level_up - f.level_down);
    tap_check(f.whole, "%s: one W for either way, then the answer", cases[i].name);
    tap_check(fabs(offset - cases[i].offset_mv) < 2 && fabs(hysteresis - cases[i].hysteresis_mv) < 3,
              "%s: offset and hysteresis are found again", cases[i].name);
    /* without noise a readback is a whole step of the converter, 4.9 mV, and so is the light */
    tap_check(fabs(f.level_up - mv_of(f.up)) < 5.5 && fabs(f.level_down - mv_of(f.down)) < 5.5 && fabs(f.light_up - light) < 5.5,
              "%s: threshold and light are read straight after the switch", cases[i].name);
    size_t edges = 0;
    for (size_t n = line; n < rig.line_count; n++) {
      edges += rig.lines[n].good && rig.lines[n].field[0][0] == 'E' && rig_hex(&rig.lines[n], 2) == cases[i].channel;
    }
    /* off and on in the sweep; from and to the place of the threshold before it may add some */
    tap_check(edges >= 2, "%s: the comparator's edges are reported, too", cases[i].name);
    rig_off(&rig);
  }
}

static void nothing_found(const char *elf) {
  rig_start(&rig, elf, "light all 40 4000\nled centre 1000");
  rig_command(&rig, 'r', "3 00000000 0000");
  rig_run(&rig, 50);
  struct found above = sweep(0, code_of(1200), code_of(1200) + 20), below = sweep(0, code_of(800), code_of(800) + 20);
  tap_check(above.whole && above.up == 0 && above.down == 0, "thresholds above the light: code 0000 for either way");
  tap_check(below.whole && below.up == 0 && below.down == 0, "thresholds below the light: the same");
  tap_check(fabs(above.level_up - mv_of(code_of(1200) + 20)) < 5.5 && fabs(below.level_down - mv_of(code_of(800))) < 5.5,
            "the level told is that of the end of the way");
  rig_off(&rig);
}

static void others_meanwhile(const char *elf) {
  rig_start(&rig, elf, "light all 40 4000\nled centre 800\nhysteresis 30");
  tap_check(rig_command(&rig, 't', "30 B0") == 0, "thresholds of before");
  rig_command(&rig, 'r', "3 00000000 0000");
  rig_run(&rig, 100);
  size_t line = rig.line_count, edge = rig.edge_count;
  unsigned seq = rig.command_seq;
  cycles_t begun = bench_now(&rig.bench);
  begin_sweep(0, code_of(840) - 100, code_of(840) + 100);
  rig_run(&rig, 100);
  tap_check(rig_command(&rig, 't', "36 CA") == 3 && rig_command(&rig, 'v', "") == 3 && rig_command(&rig, 'm', "0 0010") == 3 &&
                rig_command(&rig, 'w', "1 0100 0110") == 3,
            "t, v, m and a second w are refused while a sweep is under way");
  for (int i = 0; i < 400; i++) {
    if (i % 20 == 0) {
      rig_script(&rig, "tx +0 p %04X BEEF#\ntx +0.0004 s %04X#", i, i);
    }
    rig_script(&rig, "pin @%llu contact %d", (unsigned long long)bench_now(&rig.bench) + 10 + dice_below(&dice, 16000),
               i % 2 == 0);
    rig_run(&rig, 2);
  }
  rig_run(&rig, 50);
  size_t answered = 0;
  for (size_t n = line; n < rig.line_count; n++) {
    answered += rig.lines[n].good && rig.lines[n].field[0][0] == 'Q';
  }
  tap_check(answered == 20, "pings are answered meanwhile (%zu of 20)", answered);
  rig.command_seq = (uint16_t)(seq + 1); /* the answer to the first one is awaited */
  const struct line *a = answer_to_sweep(line, 3000);
  rig.command_seq = (uint16_t)(seq + 100);
  double expected = 2 * 200 * STEP_MS;
  double took = a ? (double)(a->cycle - begun) / CYCLES_PER_MILLISECOND : 0;
  tap_figure("a sweep of 200 steps up and down takes %.0f ms, %.0f of them for the steps", took, expected);
  tap_check(a && rig_hex(a, 3) == 0 && took > expected && took < expected + 200, "steps of 5 ms, and little beside them");
  struct comparison c = rig_compare(&rig, PIN_CONTACT, edge, line);
  tap_figure("contact, %zu edges at random phases during a sweep: %+ld to %+ld ticks from when they were due", c.reported,
             c.least_due, c.most_due);
  tap_check(c.injected == 400 && c.reported == 400 && c.wrong_levels == 0 && labs(c.least_due) <= ALONE_TICKS &&
                labs(c.most_due) <= ALONE_TICKS,
            "edges of a software channel keep within %d ticks during a sweep", ALONE_TICKS);
  line = rig.line_count;
  int result = rig_command(&rig, 'v', "");
  const struct line *v = rig_find(&rig, "V", line);
  tap_check(result == 0 && v && strcmp(v->field[2], "30") == 0 && strcmp(v->field[3], "B0") == 0 &&
                labs((long)rig_hex(v, 4) - 64 * 4 * 0x31) <= 64 && labs((long)rig_hex(v, 5) - 64 * 4 * 0xB1) <= 64,
            "straight after its answer the codes of before are in force and settled");
  tap_check(rig_lines_whole(&rig, 0), "no line was broken or missing");
  begin_sweep(1, 0x800, 0x900);
  rig_script(&rig, "reset +0.5");
  rig_run(&rig, 900);
  tap_check(rig.bench.codes[0] == 0x2B && rig.bench.codes[1] == 0xA1, "after a reset in a sweep the codes are those of a start");
  tap_check(rig_command(&rig, 'w', "0 0100 0301") == 2 && rig_command(&rig, 'w', "0 0100 0100") == 2 &&
                rig_command(&rig, 'w', "2 0100 0110") == 2 && rig_command(&rig, 'w', "0 000F 0110") == 2 &&
                rig_command(&rig, 'w', "0 0F00 1000") == 2,
            "too many steps, no step, no such comparator, codes out of range: result 02");
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  tap_note("seed %llu", (unsigned long long)dice.state);
  fine_codes(elf);
  offsets(elf);
  nothing_found(elf);
  others_meanwhile(elf);
  return tap_done();
}
