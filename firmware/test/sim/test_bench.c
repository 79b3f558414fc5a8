/* The bench itself: light, lag, noise, ripple and comparators against closed forms, and what it says about wrong scenarios.
   The thresholds are those of the firmware after its start, codes 2B and A1, settled. */

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "noise.h"
#include "rig.h"
#include "tap.h"

#define LOW_MV (5000.0 * 0x2C / 256)
#define HIGH_MV (5000.0 * 0xA2 / 256)
#define MIDDLE_MV ((LOW_MV + HIGH_MV) / 2)

static struct rig rig;
static size_t first_edge;

static void start(const char *elf, const char *script) {
  rig_power(&rig, elf, NULL);
  rig_script(&rig, "%s", script);
  rig_run(&rig, 300);
  first_edge = rig.edge_count;
}

/* The n-th edge of a pin since the start, NULL when there is none. */
static const struct injected *edge(enum pin pin, int n) {
  for (size_t i = first_edge; i < rig.edge_count; i++) {
    if (rig.edges[i].pin == pin && n-- == 0) {
      return &rig.edges[i];
    }
  }
  return NULL;
}

static bool due_at(enum pin pin, int n, bool level, double cycle) {
  const struct injected *e = edge(pin, n);
  bool good = e && e->level == level && fabs((double)e->due - cycle) <= 1 && e->cycle - e->due <= 8;
  if (!good) {
    tap_note("%s: wanted %.1f, was %llu, landed %llu", pin_wiring[pin].name, cycle, (unsigned long long)(e ? e->due : 0),
             (unsigned long long)(e ? e->cycle : 0));
  }
  return good;
}

/* A trapezium of 1 ms up, 2 ms open, 3 ms down, in 50 to 4050 mV, so that 4 mV are a thousandth of the way. */
static void straight_lines(const char *elf) {
  start(elf, "light all 50 4050\ncurve c\n0 0\n1000 1\n3000 1\n6000 0\nend-curve\nfire 0.4 c\nfire 0.4 c outerB 250.5");
  rig_run(&rig, 200);
  double begin = 0.4 * CYCLES_PER_SECOND;
  double low = (LOW_MV - 50) / 4000, high = (HIGH_MV - 50) / 4000, middle = (MIDDLE_MV - 50) / 4000;
  tap_check(due_at(PIN_LOW, 0, 1, begin + 16000 * low) && due_at(PIN_LOW, 1, 0, begin + 96000 - 48000 * low),
            "low comparator: straight lines are crossed within a cycle");
  tap_check(due_at(PIN_HIGH, 0, 1, begin + 16000 * high) && due_at(PIN_HIGH, 1, 0, begin + 96000 - 48000 * high),
            "high comparator: the same");
  tap_check(due_at(PIN_OUTER_A, 0, 1, begin + 16000 * middle), "outer A: at the middle of the two levels");
  double delayed = begin + 250.5 * 16;
  tap_check(due_at(PIN_OUTER_B, 0, 1, delayed + 16000 * middle) &&
                due_at(PIN_OUTER_B, 1, 0, delayed + 96000 - 48000 * middle) && !edge(PIN_OUTER_B, 2),
            "outer B: with its delay, and no other edge");
  rig_off(&rig);
}

/* A step of light through a one-pole lag: the level is reached after lag * ln(span / (full - level)). */
static void lag(const char *elf) {
  start(elf, "light centre 0 4000\nlag centre 30\ncurve flash\n0 1\n500 1\n500 0\nend-curve\nfire 0.4 flash");
  rig_run(&rig, 200);
  double begin = 0.4 * CYCLES_PER_SECOND, tau = 30 * 16;
  tap_check(due_at(PIN_LOW, 0, 1, begin + tau * log(4000 / (4000 - LOW_MV))) &&
                due_at(PIN_HIGH, 0, 1, begin + tau * log(4000 / (4000 - HIGH_MV))),
            "light on through a lag of 30 us: both levels after lag ln(full / (full - level))");
  double end = begin + 8000;
  tap_check(due_at(PIN_HIGH, 1, 0, end + tau * log(4000 / HIGH_MV)) && due_at(PIN_LOW, 1, 0, end + tau * log(4000 / LOW_MV)),
            "light off: both after lag ln(full / level)");
  rig_off(&rig);
}

/* A ramp through a lag comes out as the ramp, one lag later, once the beginning has died away. */
static void lagged_ramp(const char *elf) {
  start(elf, "light centre 0 5000\nlag centre 40\ncurve ramp\n0 0\n8000 1\nend-curve\nfire 0.4 ramp");
  rig_run(&rig, 200);
  double begin = 0.4 * CYCLES_PER_SECOND;
  tap_check(due_at(PIN_LOW, 0, 1, begin + 640 + 128000 * LOW_MV / 5000), "a slow ramp through a lag is late by the lag");
  rig_off(&rig);
}

static void lamp_and_ripple(const char *elf) {
  start(elf, "light centre 0 2000\nhold 0.35 1\nlamp 0.4 1.5\nlamp 0.5 0.2");
  rig_run(&rig, 300);
  tap_check(edge(PIN_LOW, 0) && !edge(PIN_HIGH, 0) &&
                due_at(PIN_LOW, 1, 0, 0.5 * CYCLES_PER_SECOND),
            "lamp steps switch at once, and not at a level they do not reach");
  rig_off(&rig);
  start(elf, "light centre 0 3000\nripple 100 0.5\nhold 0.4 1");
  rig_run(&rig, 300);
  /* 3000 (1 + 0.5 sin) crosses the high level where sin = (high / 3000 - 1) / 0.5; t counts from the bench's beginning */
  double rise = asin((HIGH_MV / 3000 - 1) / 0.5) / (2 * 3.14159265358979323846 * 100) * CYCLES_PER_SECOND;
  double period = CYCLES_PER_SECOND / 100;
  const struct injected *at_first = edge(PIN_HIGH, 0);
  int n = at_first && at_first->level ? 0 : 1;
  const struct injected *up = edge(PIN_HIGH, n + 2), *next = edge(PIN_HIGH, n + 4);
  bool good = up && next && up->level && fabs(fmod((double)up->due - rise, period)) < 20 &&
              fabs((double)(next->due - up->due) - period) < 20;
  tap_check(good, "ripple of 100 Hz crosses the high level where its sine does, each period");
  rig_off(&rig);
}

/* A dimmer of 1 kHz, a quarter on: the comparator follows it cycle by cycle, and of 16 readings a millisecond four see light. */
static void dimmer(const char *elf) {
  start(elf, "light centre 0 4000\nhold 0.4 1\ndimmer 1000 0.25");
  rig_run(&rig, 200);
  bool good = true;
  for (int n = 0; n < 40; n++) {
    double begin = 0.4 * CYCLES_PER_SECOND + 16000.0 * n;
    good = good && due_at(PIN_LOW, 2 * n, 1, begin) && due_at(PIN_LOW, 2 * n + 1, 0, begin + 4000);
  }
  tap_check(good, "a dimmer of 1 kHz switches the light on and off to the cycle");
  rig_off(&rig);
  start(elf, "light all 0 800\nhold 0.4 1\ndimmer 1000 0.25"); /* below the low threshold: no edges beside the light */
  rig_run(&rig, 200);
  size_t line = rig.line_count;
  bool asked = rig_command(&rig, 'm', "0 0008") == 0;
  rig_settle(&rig, 500);
  const struct line *block = rig_find(&rig, "M", line);
  unsigned reading = 800 * 1024 / 5000;
  tap_check(asked && block && rig_hex(block, 4) == 4 * reading && rig_hex(block, 5) == 0 && rig_hex(block, 6) == reading,
            "its light blocks hold four bright and twelve dark readings");
  rig_off(&rig);
  /* a blade that opens while the lamp is on is crossed within a cycle, as without a dimmer */
  start(elf, "light centre 0 4000\ncurve c\n0 0\n200 1\nend-curve\ndimmer 1000 0.25\nfire 0.4 c");
  rig_run(&rig, 200);
  tap_check(due_at(PIN_HIGH, 0, 1, 0.4 * CYCLES_PER_SECOND + 3200 * HIGH_MV / 4000) &&
                due_at(PIN_HIGH, 1, 0, 0.4 * CYCLES_PER_SECOND + 4000),
            "a blade that opens under a dimmed lamp is crossed within a cycle");
  rig_off(&rig);
}

/* A clock 5000 ppm fast that gains 600 ppm more each minute has made 16e6 (t + 0.005 t + 0.00001 t^2 / 2) cycles after t
   seconds; a triangle of light of true 100 ms is as many more cycles long. */
static void board_clock(const char *elf) {
  start(elf, "clock 5000 600\nlight centre 0 4000\ncurve c\n0 0\n50000 1\n100000 0\nend-curve\nfire 0.5 c\nfire 4 c");
  rig_run(&rig, 5000);
  static const double times[] = {0.5, 4};
  bool good = true;
  for (int i = 0; i < 2; i++) {
    double t = times[i], begin = 16e6 * (t + 0.005 * t + 0.00001 * t * t / 2);
    double width = 0.1 * 16e6 * (1.005 + 0.00001 * t), part = LOW_MV / 4000 / 2;
    good = good && due_at(PIN_LOW, 2 * i, 1, begin + width * part) &&
           due_at(PIN_LOW, 2 * i + 1, 0, begin + width * (1 - part));
  }
  tap_check(good && !edge(PIN_LOW, 4), "a clock that is off and drifts: firings come and last as many cycles as it makes meanwhile");
  cycles_t at = bench_now(&rig.bench);
  rig_script(&rig, "burst +0.25 click 2 1000");
  rig_run(&rig, 400);
  double seconds = board_clock_seconds(&rig.bench.clock, at);
  tap_check(due_at(PIN_CLICK, 0, 1, (double)board_clock_cycles(&rig.bench.clock, seconds + 0.25)) &&
                due_at(PIN_CLICK, 1, 0, (double)board_clock_cycles(&rig.bench.clock, seconds + 0.251)),
            "times counted from now and bursts are true time too");
  rig_off(&rig);
  double worst = 0;
  for (double ppm = -5000; ppm <= 5000; ppm += 2500) {
    for (double drift = -100; drift <= 100; drift += 50) {
      struct board_clock clock = {ppm / 1e6, drift / 60e6};
      for (double t = 0.001; t < 2000; t *= 3) {
        worst = fmax(worst, fabs(board_clock_seconds(&clock, board_clock_cycles(&clock, t)) - t));
      }
    }
  }
  tap_check(worst < 1.0 / CYCLES_PER_SECOND, "seconds and cycles are each other's inverse within a cycle");
}

static void noise(const char *elf) {
  double sum = 0, squares = 0;
  for (int i = 0; i < 100000; i++) {
    double x = noise_at(5, (uint64_t)i);
    sum += x;
    squares += x * x;
  }
  /* the mean of 100000 is within 4 / sqrt(100000), the variance within 4 sqrt(2 / 100000) of theirs */
  tap_check(fabs(sum / 1e5) < 0.0127 && fabs(squares / 1e5 - 1) < 0.018, "noise has mean 0 and variance 1");
  size_t counts[2];
  cycles_t last[2] = {0};
  for (int run = 0; run < 2; run++) {
    start(elf, "light centre 0 5000\nnoise centre 20 42\ncurve ramp\n0 0\n4000 1\nend-curve\nfire 0.4 ramp");
    rig_run(&rig, 200);
    counts[run] = rig.edge_count - first_edge;
    for (int n = 0; edge(PIN_LOW, n); n++) {
      last[run] = edge(PIN_LOW, n)->due;
    }
    rig_off(&rig);
  }
  tap_check(counts[0] > 4 && counts[0] == counts[1] && last[0] == last[1],
            "noise makes a slow ramp chatter, the same way in each run");
  start(elf, "light centre 0 5000\nnoise centre 20 42\nhysteresis 300\ncurve ramp\n0 0\n4000 1\nend-curve\nfire 0.4 ramp");
  rig_run(&rig, 200);
  tap_check(edge(PIN_LOW, 0) && !edge(PIN_LOW, 1) && edge(PIN_HIGH, 0) && !edge(PIN_HIGH, 1),
            "hysteresis well above the noise stops the chatter");
  rig_off(&rig);
}

/* The thresholds after a change: two equal poles answer a step with 1 - (1 + t) exp(-t). */
static void settling(void) {
  struct threshold t = {0};
  threshold_drive(&t, 1000, 2000);
  bool good = true;
  for (int ms = 1; ms <= 12; ms++) {
    double expected = 2000 * (1 - (1 + ms) * exp(-ms));
    good = good && fabs(threshold_mv(&t, 1000 + (cycles_t)ms * CYCLES_PER_MILLISECOND) - expected) < 1e-6;
  }
  threshold_drive(&t, 1000 + 2 * CYCLES_PER_MILLISECOND, 2000); /* the same again must change nothing */
  good = good && fabs(threshold_mv(&t, 1000 + 5 * CYCLES_PER_MILLISECOND) - 2000 * (1 - 6 * exp(-5))) < 1e-6;
  tap_check(good, "a threshold settles as 1 - (1 + t) exp(-t) behind two filters of 1 ms");
}

/* Offset and hysteresis move the level; a delay comes on top: the sum of the overdrive over time decides (optics.h). */
static void comparators(const char *elf) {
  static const char ramp[] = "light all 50 4050\ncurve c\n0 0\n1000 1\n3000 1\n6000 0\nend-curve\n%s\nfire 0.4 c";
  char script[256];
  double begin = 0.4 * CYCLES_PER_SECOND;
  snprintf(script, sizeof script, ramp, "offset low 40\noffset high -25\nhysteresis 30");
  start(elf, script);
  rig_run(&rig, 200);
  tap_check(due_at(PIN_LOW, 0, 1, begin + 4 * (LOW_MV + 40 + 15 - 50)) &&
                due_at(PIN_LOW, 1, 0, begin + 96000 - 12 * (LOW_MV + 40 - 15 - 50)) &&
                due_at(PIN_HIGH, 0, 1, begin + 4 * (HIGH_MV - 25 + 15 - 50)) &&
                due_at(PIN_HIGH, 1, 0, begin + 96000 - 12 * (HIGH_MV - 25 - 15 - 50)) &&
                due_at(PIN_OUTER_A, 0, 1, begin + 4 * (MIDDLE_MV + 15 - 50)),
            "offset and half the hysteresis move the level of their comparator, and of no other");
  rig_off(&rig);

  /* 4 mV/us up, 4/3 mV/us down: sqrt(2 k / slope) behind the level, and the fixed part */
  snprintf(script, sizeof script, ramp, "delay low 2 50\ndelay high 3.5 200\ndelay outerB 7.25 0");
  start(elf, script);
  rig_run(&rig, 200);
  double low_up = 16 * (2 + sqrt(2 * 50 / 4.0)), low_down = 16 * (2 + sqrt(2 * 50 * 3 / 4.0));
  double high_up = 16 * (3.5 + sqrt(2 * 200 / 4.0)), high_down = 16 * (3.5 + sqrt(2 * 200 * 3 / 4.0));
  tap_figure("delay of a comparator with 50 us mV and 2 us: %.2f us at 4 mV/us, %.2f us at 1.33 mV/us", low_up / 16, low_down / 16);
  tap_check(due_at(PIN_LOW, 0, 1, begin + 4 * (LOW_MV - 50) + low_up) &&
                due_at(PIN_LOW, 1, 0, begin + 96000 - 12 * (LOW_MV - 50) + low_down) &&
                due_at(PIN_HIGH, 0, 1, begin + 4 * (HIGH_MV - 50) + high_up) &&
                due_at(PIN_HIGH, 1, 0, begin + 96000 - 12 * (HIGH_MV - 50) + high_down),
            "ramps: fixed + sqrt(2 k / slope), the slower the later");
  tap_check(due_at(PIN_OUTER_B, 0, 1, begin + 4 * (MIDDLE_MV - 50) + 116) && due_at(PIN_OUTER_A, 0, 1, begin + 4 * (MIDDLE_MV - 50)),
            "a fixed delay alone, and none beside it");
  rig_off(&rig);

  /* jumps: k / overdrive; 100 us of light is 100 us later at either end if both overdrives are alike */
  start(elf, "light all 0 4000\ndelay low 1 4000\ndelay high 1 4000\ncurve flash\n0 1\n100 1\n100 0\nend-curve\n"
             "curve glint\n0 1\n1 1\n1 0\nend-curve\nfire 0.4 flash\nfire 0.45 glint");
  rig_run(&rig, 200);
  tap_check(due_at(PIN_LOW, 0, 1, begin + 16 * (1 + 4000 / (4000 - LOW_MV))) &&
                due_at(PIN_LOW, 1, 0, begin + 16 * (100 + 1 + 4000 / LOW_MV)) &&
                due_at(PIN_HIGH, 0, 1, begin + 16 * (1 + 4000 / (4000 - HIGH_MV))) &&
                due_at(PIN_HIGH, 1, 0, begin + 16 * (100 + 1 + 4000 / HIGH_MV)),
            "jumps: fixed + k / overdrive");
  tap_check(!edge(PIN_LOW, 2) && !edge(PIN_HIGH, 2), "light that goes before the sum is reached is not seen");
  rig_off(&rig);

  /* a decision on its way out does not hold up the next one: pulses of 3 us come out 20 us later, as they went in */
  start(elf, "light all 0 4000\ndelay low 20 0\ncurve comb\n0 1\n3 1\n3 0\n6 0\n6 1\n9 1\n9 0\nend-curve\nfire 0.4 comb");
  rig_run(&rig, 200);
  bool as_they_came = true;
  for (int n = 0; n < 4; n++) {
    as_they_came = as_they_came && due_at(PIN_LOW, n, n % 2 == 0, begin + 16 * (20 + 3 * n));
  }
  tap_check(as_they_came && !edge(PIN_LOW, 4), "a long fixed delay keeps pulses that are shorter");
  rig_off(&rig);
}

/* The LED's two drives through filter and lag, against the differential equations solved by small steps. */
static void led(void) {
  static const struct {
    double lag, filter;
  } poles[] = {{0, 16000}, {16, 16000}, {480, 1600}, {1600, 1600}, {16000, 480}, {0, 0}};
  double worst = 0;
  for (size_t i = 0; i < sizeof poles / sizeof *poles; i++) {
    struct led_light light = {.mv = 1000};
    double filtered = 0, square = 0, ramped = 0;
    static const int square_on[] = {1, 0, 0, 0}, ramped_on[] = {0, 0, 1, 0}, stay[] = {4000, 700, 20000, 9000};
    for (int step = 0; step < 4; step++) {
      led_step(&light, step ? stay[step - 1] : 0, square_on[step], ramped_on[step], poles[i].lag, poles[i].filter);
      for (int cycle = 1; cycle <= stay[step]; cycle++) {
        for (int part = 0; part < 32; part++) { /* midpoint rule, 32 steps a cycle */
          double h = 1 / 32.0, middle = filtered;
          if (poles[i].filter > 0) {
            middle += h / 2 * (ramped_on[step] - filtered) / poles[i].filter;
            filtered += h * (ramped_on[step] - middle) / poles[i].filter;
          } else {
            middle = filtered = ramped_on[step];
          }
          if (poles[i].lag > 0) {
            double half = ramped + h / 2 * (middle - ramped) / poles[i].lag;
            ramped += h * (middle - half) / poles[i].lag;
            half = square + h / 2 * (square_on[step] - square) / poles[i].lag;
            square += h * (square_on[step] - half) / poles[i].lag;
          } else {
            ramped = filtered;
            square = square_on[step];
          }
        }
        worst = fmax(worst, fabs(led_mv(&light, cycle) - 1000 * (square + ramped)));
      }
    }
  }
  tap_figure("light of the LED, 1000 mV: closed form and small steps differ by %.4f mV at most", worst);
  tap_check(worst < 0.02, "the LED's light is that of its two drives behind filter and lag");
}

/* Ringing of 3 ms at 4 kHz: by hand, the first edge is where it was asked for, there is one pulse a period, and they get
   narrower; a swing passes the threshold as long as exp(-t / 1 ms) is above exp(-3). */
static void ringing(const char *elf) {
  start(elf, "");
  size_t first = rig.edge_count;
  rig_script(&rig, "ring @6400000 click 4000 3");
  rig_run(&rig, 500);
  size_t edges = rig.edge_count - first;
  const struct injected *edge = &rig.edges[first];
  bool narrower = edges > 4, periods = true;
  for (size_t i = 2; i + 1 < edges; i += 2) {
    narrower = narrower && edge[i + 1].cycle - edge[i].cycle < edge[i - 1].cycle - edge[i - 2].cycle;
    periods = periods && llabs((long long)(edge[i].cycle - edge[i - 2].cycle) - 4000) < 1000;
  }
  tap_figure("ringing of 3 ms at 4 kHz: %zu edges, the last after %.3f ms", edges,
             (double)(edge[edges - 1].cycle - edge[0].cycle) / 16000);
  tap_check(edge[0].due == 6400000 && edge[0].level && edge[0].pin == PIN_CLICK, "a ringing begins when it is asked for");
  tap_check(edges == 24 && narrower && periods, "it makes a pulse a period, each narrower than the one before");
  cycles_t length = edge[edges - 1].cycle - edge[0].cycle;
  tap_check(length > 42000 && length <= 48000, "and is over after its length, to a period");
  first = rig.edge_count;
  rig_script(&rig, "ring +0.001 click 4000 3\nring +0.002 click 4300 3");
  rig_run(&rig, 500);
  bool alternate = rig.edge_count > first + 24;
  for (size_t i = first; i < rig.edge_count; i++) {
    alternate = alternate && rig.edges[i].level == ((i - first) % 2 == 0);
  }
  tap_check(alternate, "two at once make one signal");
  rig_off(&rig);
}

static void wrong_statements(const char *elf) {
  static const struct {
    const char *line, *hint;
  } wrong[] = {
      {"fire 0.4 nosuch", "curve 'nosuch'"},      {"pin 0.4 d7 1", "'d7' is no pin"},
      {"pin 0.4 low 2", "'2' is no level"},       {"light all 4000 40", "above"},
      {"pin 0.4 low", "write it as: pin TIME"},   {"shoot 1", "no statement 'shoot'"},
      {"preset 0.4 12", "twelve hexadecimal"},    {"raw 0.4 4", "two hexadecimal digits"},
      {"hold 0.01 1", "time has passed"},         {"fire x c", "time in seconds"},
      {"burst 0.4 low 4 0", "spacing"},           {"light centre 1 2 3 4 5 6 7", "write it as: light"},
      {"offset contact 3", "'contact' is no comparator"}, {"delay low -1 0", "delay in microseconds"},
      {"led lamp 3", "'lamp' is no sensor"},      {"led-filter x", "time constant"},
      {"end-curve", "no statement 'end-curve'"},  {"dimmer 50000 0.01", "2 us each"},
      {"clock 100 0", "head of the scenario"},   {"ring 0.4 click 30 3", "frequency in hertz"},
      {"ring 0.4 click 100 1", "no swing of that ringing"},
  };
  start(elf, "");
  bool all = true;
  for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
    char line[80];
    strcpy(line, wrong[i].line);
    bool refused = !scenario_line(&rig.scenario, line) && strstr(rig.scenario.trouble, wrong[i].hint);
    if (!refused) {
      tap_note("`%s` gave: %s", wrong[i].line, rig.scenario.trouble);
    }
    all = all && refused;
  }
  tap_check(all, "wrong statements are refused, each with what to do");
  rig_script(&rig, "curve c\n0 0 # begins shut\n\n  10 1\nend-curve # and so on\n# nothing\nfire @6400000 c");
  char backwards[] = "5 0";
  rig_script(&rig, "curve d\n6 1");
  tap_check(!scenario_line(&rig.scenario, backwards) && !scenario_finished(&rig.scenario),
            "a curve that goes back in time or is never closed is refused");
  rig_script(&rig, "end-curve");
  rig_off(&rig);
}

/* A line turned over on its way breaks for the host and only for the host; counted lines only. */
static void corruption(const char *elf) {
  start(elf, "");
  rig_settle(&rig, 500);
  size_t line = rig.line_count;
  rig_script(&rig, "corrupt +0 3\ntx +0.001 p 0001 0001#\ntx +0.002 p 0002 0002#\ntx +0.003 p 0003 0003#");
  rig_run(&rig, 100);
  int broken = 0;
  for (size_t i = line; i < rig.line_count; i++) {
    broken += !rig.lines[i].good;
  }
  tap_check(broken == 3 && rig.line_count > line + 3 && !rig.lines[line].good && rig.lines[line + 3].good,
            "`corrupt` breaks as many lines as it says");
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  straight_lines(elf);
  lag(elf);
  lagged_ramp(elf);
  lamp_and_ripple(elf);
  dimmer(elf);
  board_clock(elf);
  noise(elf);
  comparators(elf);
  led();
  settling();
  ringing(elf);
  wrong_statements(elf);
  corruption(elf);
  return tap_done();
}
