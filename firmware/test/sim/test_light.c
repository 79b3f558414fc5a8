/* Light blocks, thresholds and their readback, and that the board's own outputs are not taken for edges. */

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

#define READINGS 16

static struct rig rig;

static long code_of(double mv) {
  return (long)(mv * 1024 / SUPPLY_MV);
}

struct blocks {
  size_t count;
  bool steady_index;
  long least, most, least_mean, most_mean;
};

static struct blocks gather(size_t from, const char *channel) {
  struct blocks b = {.steady_index = true, .least = 0xFFFF, .least_mean = 0xFFFF};
  for (size_t i = from; i < rig.line_count; i++) {
    const struct line *m = &rig.lines[i];
    if (!m->good || strcmp(m->field[0], "M") != 0 || strcmp(m->field[2], channel) != 0) {
      continue;
    }
    b.steady_index = b.steady_index && rig_hex(m, 3) == b.count;
    b.count++;
    long mean = (long)rig_hex(m, 4), least = (long)rig_hex(m, 5), most = (long)rig_hex(m, 6);
    b.least = least < b.least ? least : b.least;
    b.most = most > b.most ? most : b.most;
    b.least_mean = mean < b.least_mean ? mean : b.least_mean;
    b.most_mean = mean > b.most_mean ? mean : b.most_mean;
  }
  return b;
}

static void steady(const char *elf) {
  static const struct {
    const char *channel;
    double mv;
  } sensors[] = {{"0", 3300}, {"2", 2500}, {"3", 1234}};
  rig_start(&rig, elf, "light centre 40 3300\nlight outerA 40 2500\nlight outerB 40 1234\nhold 0.01 1");
  for (size_t i = 0; i < sizeof sensors / sizeof *sensors; i++) {
    char fields[16];
    snprintf(fields, sizeof fields, "%s 0080", sensors[i].channel);
    size_t line = rig.line_count;
    tap_check(rig_command(&rig, 'm', fields) == 0, "128 light blocks of channel %s are promised", sensors[i].channel);
    rig_run(&rig, 400);
    struct blocks b = gather(line, sensors[i].channel);
    long code = code_of(sensors[i].mv);
    tap_check(b.count == 128 && b.steady_index, "channel %s: 128 blocks come, without a gap", sensors[i].channel);
    tap_check(b.least == code && b.most == code && b.least_mean == READINGS * code && b.most_mean == READINGS * code,
              "channel %s: mean, least and most are those of %g mV", sensors[i].channel, sensors[i].mv);
  }
  const struct line *beat = rig_wait(&rig, "B", rig.line_count, 500);
  tap_check(beat && (long)rig_hex(beat, 4) == READINGS * code_of(3300), "the beat carries the light of the centre");
  size_t line = rig.line_count;
  rig_command(&rig, 'm', "0 FFFF");
  rig_run(&rig, 50);
  tap_check(rig_command(&rig, 'm', "0 0000") == 0, "blocks under way can be stopped");
  rig_run(&rig, 200);
  size_t stopped = gather(line, "0").count;
  rig_run(&rig, 200);
  tap_check(stopped > 20 && gather(line, "0").count == stopped, "and then no more come");
  rig_off(&rig);
}

/* Lamp ripple of 100 Hz: the blocks follow it, extremes and mean. */
static void rippling(const char *elf) {
  rig_start(&rig, elf, "light centre 0 3000\nripple 100 0.2\nhold 0.01 1");
  size_t line = rig.line_count;
  rig_command(&rig, 'm', "0 0064");
  rig_run(&rig, 400);
  struct blocks b = gather(line, "0");
  double mean = 0;
  for (size_t i = line; i < rig.line_count; i++) {
    if (rig.lines[i].good && rig.lines[i].field[0][0] == 'M') {
      mean += (double)rig_hex(&rig.lines[i], 4) / READINGS / (double)b.count;
    }
  }
  tap_figure("light of 3000 mV with 20 %% ripple: mean %.2f, least %ld, most %ld of 1024", mean, b.least, b.most);
  /* 100 blocks are ten periods: the mean is that of the light, half a code less for the ADC's rounding down */
  tap_check(b.count == 100 && fabs(mean - (3000 * 1.024 / 5 - 0.5)) < 1, "the mean over whole periods is that of the light");
  tap_check(labs(b.least - code_of(2400)) <= 1 && labs(b.most - code_of(3600)) <= 1,
            "least and most are those of the ripple");
  rig_off(&rig);
}

static bool reads_back(const char *codes, int low, int high) {
  size_t line = rig.line_count;
  int result = rig_command(&rig, 'v', "");
  const struct line *v = rig_find(&rig, "V", line);
  if (result != 0 || !v) {
    return false;
  }
  /* 64 readings of (code + 1) / 256 of the supply, that is 4 (code + 1) of 1024; one of 1024 allowed for settling */
  long off_low = (long)rig_hex(v, 4) - 64 * 4 * (low + 1), off_high = (long)rig_hex(v, 5) - 64 * 4 * (high + 1);
  tap_figure("thresholds %s read back as %s %s", codes, v->field[4], v->field[5]);
  return (int)rig_hex(v, 2) == low && (int)rig_hex(v, 3) == high && labs(off_low) <= 64 && labs(off_high) <= 64;
}

static void thresholds(const char *elf) {
  rig_start(&rig, elf, "");
  tap_check(reads_back("2B A1 (after the start)", 0x2B, 0xA1), "after a start the thresholds are 2B and A1");
  tap_check(rig_command(&rig, 't', "36 CA") == 0, "new thresholds are taken");
  rig_run(&rig, 100);
  tap_check(reads_back("36 CA (100 ms after the command)", 0x36, 0xCA), "100 ms later they are in force and settled");
  tap_check(rig_command(&rig, 't', "CA 36") == 2 && rig_command(&rig, 't', "80 80") == 2,
            "low must be below high, else result 02");
  tap_check(reads_back("36 CA (after two refusals)", 0x36, 0xCA), "a refused command changes nothing");
  /* a ramp crosses the new levels where they are */
  rig_find_origin(&rig);
  rig_script(&rig, "light all 0 5000\ncurve ramp\n0 0\n10000 1\n20000 0\nend-curve\nfire +0.01 ramp");
  cycles_t begin = bench_now(&rig.bench) + CYCLES_PER_SECOND / 100;
  size_t line = rig.line_count;
  rig_run(&rig, 200);
  const struct line *e = rig_find(&rig, "E", line);
  double expected = 10e3 * CYCLES_PER_MICROSECOND * (0x36 + 1) / 256;
  tap_check(e && rig_hex(e, 2) == 0 && fabs((double)(int32_t)((uint32_t)rig_hex(e, 4) -
                                                               (uint32_t)rig_ticks_at(&rig, begin)) - expected) <= 40,
            "a ramp of light crosses the new low level at 55/256 of its way");
  rig_off(&rig);
}

/* The bench lets PWM and UART show on the port registers, as silicon does. */
static void own_outputs(const char *elf) {
  rig_start(&rig, elf, "");
  avr_t *avr = rig.bench.chip.avr;
  unsigned seen_high_d = 0, seen_low_d = 0, seen_high_b = 0, seen_low_b = 0;
  struct counters before, after;
  bool told = rig_counters(&rig, &before);
  rig_settle(&rig, 500);
  size_t line = rig.line_count, edge = rig.edge_count;
  rig_script(&rig, "tx +0 m 0001 0 FFFF#");
  for (int i = 0; i < 20000; i++) {
    if (i % 500 == 0) {
      rig_script(&rig, "tx +0 p %04X %04X#", i, i);
    }
    bench_run_until(&rig.bench, bench_now(&rig.bench) + 1601);
    avr_io_addr_t d = AVR_DATA_TO_IO(REG_PIND), b = AVR_DATA_TO_IO(REG_PINB);
    uint8_t pind = avr->io[d].r.c(avr, REG_PIND, avr->io[d].r.param);
    uint8_t pinb = avr->io[b].r.c(avr, REG_PINB, avr->io[b].r.param);
    seen_high_d |= pind;
    seen_low_d |= (uint8_t)~pind;
    seen_high_b |= pinb;
    seen_low_b |= (uint8_t)~pinb;
  }
  tap_check((seen_high_d & seen_low_d & 0x0B) == 0x0B && (seen_high_b & seen_low_b & 0x08) == 0x08,
            "the port registers show RXD, TXD and both PWM outputs moving");
  tap_check(rig.edge_count == edge && rig_count(&rig, "E", line) == 0,
            "2 s of PWM and serial traffic make no edge");
  tap_figure("%zu lines sent meanwhile", rig.line_count - line);
  rig_script(&rig, "tx +0 m 0002 0 0000#");
  rig_settle(&rig, 500);
  told = told && rig_counters(&rig, &after);
  tap_check(told && before.edges == after.edges, "and none is counted");
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  steady(elf);
  rippling(elf);
  thresholds(elf);
  own_outputs(elf);
  return tap_done();
}
