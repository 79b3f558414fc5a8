/* The light curve of the centre sensor, taken in the same firing as the edges: every value against the light that the bench
   really had at its tick, what stands before and after, cut-off, quick succession, off and on, and the effective time that
   the lines add up to. docs/protocol.md, "C" and "D". */

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

#define MOST_PARTS 24
#define MOST_VALUES 512
#define READING_TICKS 256
#define BLOCK_READINGS 16
#define BLOCK_TICKS (READING_TICKS * BLOCK_READINGS)
#define ROUNDING_MV 0.001
/* Options of the build, in readings: src/config.h */
#define LEAST_BEFORE 64
#define LEAST_AFTER 32
#define REST_MS 66

enum { FLAG_LAST = 1, FLAG_MISSING = 2, FLAG_CUT_OFF = 4 };
enum { OPENING, PLATEAU, CLOSING, TAIL };

static struct rig rig;

struct part {
  int curve, kind, flags;
  uint32_t first, period;
  size_t count, received;
  long values[MOST_VALUES];
};

static struct part parts[MOST_PARTS];
static size_t part_count;

/* An opening as it is injected: microseconds and how far open, straight lines between. */
struct shape {
  const char *name;
  const double (*points)[2];
  size_t count;
};

static const double short_points[][2] = {{0, 0}, {1000, 1}, {2000, 1}, {3000, 0}};
static const double longest_points[][2] = {{0, 0}, {1000, 1}, {3700, 1}, {4700, 0}}; /* that fits into one window */
static const double middle_points[][2] = {{0, 0}, {1000, 1}, {16667, 1}, {17667, 0}};
static const double second_points[][2] = {{0, 0}, {1500, 1}, {1000000, 1}, {1001500, 0}};
static const double odd_points[][2] = {{0, 0},       {700, 0.45},  {1900, 0.4},  {3700, 0.93}, {9100, 0.3}, {14000, 0.31},
                                       {14400, 0.0}, {14450, 0.0}, {14900, 0.8}, {29000, 1},   {33300, 0}};
/* 1/250 and 1/125 whose blades rebound for 1.35 ms, up to 0.15: below the low level. */
static const double fast_points[][2] = {{0, 0}, {1000, 1}, {3906, 1}, {4906, 0}, {6400, 0}, {7075, 0.15}, {7750, 0}};
static const double slower_points[][2] = {{0, 0}, {1000, 1}, {7812, 1}, {8812, 0}, {10300, 0}, {10975, 0.15}, {11650, 0}};
static const struct shape shapes[] = {{"short", short_points, 4},
                                      {"longest", longest_points, 4},
                                      {"middle", middle_points, 4},
                                      {"second", second_points, 4},
                                      {"odd", odd_points, 11},
                                      {"rebound-at-250", fast_points, 7},
                                      {"rebound-at-125", slower_points, 7}};
enum { SHORT, LONGEST, MIDDLE, SECOND, ODD, FAST, SLOWER };
enum { ORDINARY_SHAPES = ODD + 1 };

static double dark_mv, full_mv;
static cycles_t fired; /* cycle at which the last shape began */

static void start(const char *elf, double full) {
  rig_power(&rig, elf, NULL);
  dark_mv = 40;
  full_mv = full;
  rig_script(&rig, "light all %g %g", dark_mv, full_mv);
  for (size_t s = 0; s < sizeof shapes / sizeof *shapes; s++) {
    rig_script(&rig, "curve %s", shapes[s].name);
    for (size_t i = 0; i < shapes[s].count; i++) {
      rig_script(&rig, "%g %g", shapes[s].points[i][0], shapes[s].points[i][1]);
    }
    rig_script(&rig, "end-curve");
  }
  rig_run(&rig, 300);
  rig_settle(&rig, 1000);
  rig_find_origin(&rig);
}

static double length_ms(const struct shape *shape) {
  return shape->points[shape->count - 1][0] / 1000;
}

static void fire(const struct shape *shape) {
  fired = bench_now(&rig.bench) + CYCLES_PER_MILLISECOND;
  rig_script(&rig, "fire @%llu %s", (unsigned long long)fired, shape->name);
}

static double open_at(const struct shape *shape, double cycle) {
  double us = (cycle - (double)fired) / CYCLES_PER_MICROSECOND;
  if (us <= shape->points[0][0]) {
    return shape->points[0][1];
  }
  for (size_t i = 1; i < shape->count; i++) {
    const double *a = shape->points[i - 1], *b = shape->points[i];
    if (us < b[0]) {
      return a[1] + (b[1] - a[1]) * (us - a[0]) / (b[0] - a[0]);
    }
  }
  return shape->points[shape->count - 1][1];
}

/* What the sensor gave at a tick of the last firing. */
static double mv_at(const struct shape *shape, uint32_t tick) {
  uint32_t since = tick - (uint32_t)rig_ticks_at(&rig, fired);
  return dark_mv + (full_mv - dark_mv) * open_at(shape, (double)fired + (int32_t)since);
}

static bool of_means(const struct part *part) { return part->kind == PLATEAU || part->kind == TAIL; }

/* Reads the parts of all curves from a line on. False when a D line does not belong to the part before it. */
static bool gather(size_t from) {
  part_count = 0;
  for (size_t i = from; i < rig.line_count; i++) {
    const struct line *line = &rig.lines[i];
    if (!line->good || (strcmp(line->field[0], "C") != 0 && strcmp(line->field[0], "D") != 0)) {
      continue;
    }
    if (line->field[0][0] == 'C') {
      struct part *part = &parts[part_count++];
      *part = (struct part){.curve = (int)rig_hex(line, 2), .kind = (int)rig_hex(line, 3), .first = (uint32_t)rig_hex(line, 4),
                            .period = (uint32_t)rig_hex(line, 5), .count = rig_hex(line, 6), .flags = (int)rig_hex(line, 7)};
      if (part->count > MOST_VALUES || part_count == MOST_PARTS) {
        return false;
      }
      continue;
    }
    if (part_count == 0) {
      return false;
    }
    struct part *part = &parts[part_count - 1];
    size_t digits = of_means(part) ? 4 : 2, length = strlen(line->field[4]);
    if ((int)rig_hex(line, 2) != part->curve || rig_hex(line, 3) != part->received || length > 64 || length % digits != 0 ||
        part->received + length / digits > part->count) {
      return false;
    }
    for (size_t d = 0; d < length; d += digits) {
      char text[5] = "";
      memcpy(text, line->field[4] + d, digits);
      part->values[part->received++] = strtol(text, NULL, 16);
    }
  }
  for (size_t i = 0; i < part_count; i++) {
    if (parts[i].received != parts[i].count) {
      return false;
    }
  }
  return true;
}

/* Parts follow each other without a gap or an overlap; the last one says so. */
static bool contiguous(void) {
  for (size_t i = 0; i < part_count; i++) {
    const struct part *part = &parts[i];
    bool last = i + 1 == part_count;
    if (part->curve != parts[0].curve || (part->flags & FLAG_MISSING) || (bool)(part->flags & FLAG_LAST) != last ||
        (!last && part[1].first != part->first + (uint32_t)part->count * part->period) || (i > 0 && part->kind < part[-1].kind)) {
      return false;
    }
  }
  return part_count > 0 && parts[0].kind == OPENING;
}

static size_t wrong_readings(const struct shape *shape, const struct part *part) {
  size_t wrong = 0;
  for (size_t i = 0; i < part->count; i++) {
    double mv = mv_at(shape, part->first + (uint32_t)i * part->period);
    double least = (double)part->values[i] * SUPPLY_MV / 256 - ROUNDING_MV;
    if (part->period != READING_TICKS || mv < least || mv > least + SUPPLY_MV / 256 + 2 * ROUNDING_MV) {
      if (wrong++ == 0) {
        tap_note("value %zu of the window at %08lX is %ld, the light was %.2f mV", i, (unsigned long)part->first,
                 part->values[i], mv);
      }
    }
  }
  return wrong;
}

/* The greatest distance between a plateau value and the mean of its readings, in the plateau's unit. */
static double worst_span(const struct shape *shape, const struct part *part) {
  double worst = 0;
  for (size_t i = 0; i < part->count; i++) {
    uint32_t begin = part->first + (uint32_t)i * part->period, readings = part->period / READING_TICKS;
    double sum = 0;
    for (uint32_t r = 0; r < readings; r++) {
      sum += floor(mv_at(shape, begin + r * READING_TICKS) * 1024 / SUPPLY_MV + 1e-7);
    }
    worst = fmax(worst, fabs((double)part->values[i] - 16 * sum / readings));
  }
  return worst;
}

static void figures(const char *name) {
  size_t values = 0;
  for (size_t i = 0; i < part_count; i++) {
    values += parts[i].count;
  }
  tap_figure("%s: %zu parts with %zu values, from %.2f ms before the shutter moved to %.2f ms after", name, part_count, values,
             -(double)(int32_t)(parts[0].first - (uint32_t)rig_ticks_at(&rig, fired)) / 16000,
             (double)(int32_t)(parts[part_count - 1].first + parts[part_count - 1].period * (uint32_t)parts[part_count - 1].count -
                               (uint32_t)rig_ticks_at(&rig, fired)) / 16000);
}

static void against_light(const char *elf, const struct shape *shape) {
  start(elf, 4000);
  size_t line = rig.line_count, edge = rig.edge_count;
  rig_run(&rig, REST_MS);
  fire(shape);
  rig_run(&rig, 2 + length_ms(shape));
  rig_settle(&rig, 2000);
  tap_check(rig_lines_whole(&rig, line) && gather(line) && contiguous(),
            "%s: one curve comes, its parts join, no line is broken or missing", shape->name);
  if (part_count == 0) {
    rig_off(&rig);
    return;
  }
  figures(shape->name);
  size_t wrong = 0;
  double worst = 0;
  for (size_t i = 0; i < part_count; i++) {
    if (parts[i].kind == PLATEAU) {
      worst = fmax(worst, worst_span(shape, &parts[i]));
    } else {
      wrong += wrong_readings(shape, &parts[i]);
    }
  }
  tap_check(wrong == 0, "%s: every reading of the windows is the light at its own tick", shape->name);
  tap_figure("%s: plateau at most %.2f sixteenths of a ten-bit step from the mean of its readings", shape->name, worst);
  tap_check(worst <= 1, "%s: every plateau value is the mean of the readings of its span", shape->name);

  const struct part *opening = &parts[0], *last = &parts[part_count - 1];
  size_t before = 0, after = 0;
  while (before < opening->count && opening->values[before] <= 0x2B) {
    before++;
  }
  while (after < last->count && last->values[last->count - 1 - after] <= 0x2B) {
    after++;
  }
  tap_figure("%s: %zu readings before the low threshold, %zu behind it", shape->name, before, after);
  tap_check(before >= LEAST_BEFORE && before < LEAST_BEFORE + BLOCK_READINGS && after >= LEAST_AFTER,
            "%s: the windows begin before the light and end behind it", shape->name);
  if (shape == &shapes[SHORT] || shape == &shapes[LONGEST]) {
    tap_check(part_count == 1 && opening->flags == FLAG_LAST, "%s: the whole opening is in one window", shape->name);
  }
  bool edges_first = true;
  const struct line *curve_line = rig_find(&rig, "C", line);
  for (enum pin pin = PIN_LOW; pin <= PIN_OUTER_B; pin++) {
    struct comparison c = rig_compare(&rig, pin, edge, line);
    edges_first = edges_first && c.injected > 0 && c.reported == c.injected && c.wrong_levels == 0 &&
                  labs(c.least) <= (pin == PIN_LOW ? 1 : 24) && labs(c.most) <= (pin == PIN_LOW ? 1 : 24);
  }
  tap_check(edges_first && rig_count(&rig, "E", (size_t)(curve_line - rig.lines)) == 0,
            "%s: the edges of the same firing are whole, and all before the curve", shape->name);
  rig_off(&rig);
}

/* The mean of the first readings of the window stands for the dark, the light in the beat, taken with the shutter open, for
   the full light; both on the scale of eight bits. */
static double effective_ms(double full_code) {
  double dark_code = 0, sum = 0;
  for (size_t i = 0; i < LEAST_BEFORE / 2; i++) {
    dark_code += ((double)parts[0].values[i] + 0.5) / (LEAST_BEFORE / 2);
  }
  for (size_t p = 0; p < part_count; p++) {
    if (parts[p].kind == TAIL) { /* eight bits are too coarse for the dark of 12 ms */
      dark_code = ((double)parts[p].values[parts[p].count - 1] / 16 + 0.5) / 4;
    }
    for (size_t i = 0; i < parts[p].count; i++) {
      double v = (double)parts[p].values[i];
      double code = of_means(&parts[p]) ? (v / 16 + 0.5) / 4 : v + 0.5;
      sum += (code - dark_code) / (full_code - dark_code) * parts[p].period;
    }
  }
  return sum / CYCLES_PER_MILLISECOND;
}

static double true_ms(const struct shape *shape) {
  double sum = 0;
  for (size_t i = 1; i < shape->count; i++) {
    sum += (shape->points[i][0] - shape->points[i - 1][0]) * (shape->points[i][1] + shape->points[i - 1][1]) / 2;
  }
  return sum / 1000;
}

/* Light of the centre with the shutter open, from a beat. */
static double full_code(void) {
  rig_script(&rig, "hold +0 1");
  rig_run(&rig, 20);
  size_t line = rig.line_count;
  rig_command(&rig, 's', "");
  const struct line *beat = rig_find(&rig, "B", line);
  double code = beat ? ((double)rig_hex(beat, 4) / 16 + 0.5) / 4 : 0;
  rig_script(&rig, "hold +0 0");
  rig_settle(&rig, 1000);
  rig_run(&rig, REST_MS);
  return code;
}

static bool measure(const struct shape *shape, double full, double *ms) {
  size_t line = rig.line_count;
  fire(shape);
  rig_run(&rig, 2 + length_ms(shape));
  rig_settle(&rig, 1000);
  rig_run(&rig, REST_MS);
  if (!gather(line) || !contiguous()) {
    return false;
  }
  *ms = effective_ms(full);
  return true;
}

static void effective(const char *elf, const struct shape *shape, double allowed_percent) {
  static const double levels[] = {2200, 3100, 3337, 3700, 4000, 4390};
  double worst = 0, truth = true_ms(shape);
  bool all = true;
  for (size_t i = 0; i < sizeof levels / sizeof *levels; i++) {
    start(elf, levels[i]);
    double full = full_code(), ms;
    for (int n = 0; n < 3 && all; n++) {
      rig_run(&rig, n * 0.3337);
      all = measure(shape, full, &ms);
      worst = all ? fmax(worst, fabs(ms / truth - 1) * 100) : worst;
    }
    rig_off(&rig);
  }
  tap_figure("%s: effective time %.4f ms, from the lines of 18 curves at six light levels without noise off by %.3f %% at most",
             shape->name, truth, worst);
  tap_check(all && worst <= allowed_percent, "%s: the lines add up to the effective time within %g %%", shape->name,
            allowed_percent);
}

static void spread(const char *elf, const struct shape *shape, double allowed_percent) {
  enum { TIMES = 12 };
  start(elf, 4000);
  double full = full_code(), sum = 0, squares = 0, truth = true_ms(shape);
  rig_script(&rig, "noise centre %g 4242\nhysteresis 200", SUPPLY_MV / 256.0);
  bool all = true;
  for (int n = 0; n < TIMES && all; n++) {
    double ms = 0;
    all = measure(shape, full, &ms);
    sum += ms;
    squares += (ms - truth) * (ms - truth);
  }
  double mean = sum / TIMES, deviation = sqrt(fmax(0, (squares - TIMES * (mean - truth) * (mean - truth)) / (TIMES - 1)));
  tap_figure("%s with noise of one eight-bit step rms (19.5 mV, seed 4242): %d curves, mean off by %+.3f %%, spread %.3f %% (one "
             "standard deviation)",
             shape->name, TIMES, (mean / truth - 1) * 100, deviation / truth * 100);
  tap_check(all && fabs(mean / truth - 1) * 100 <= allowed_percent && deviation / truth * 100 <= allowed_percent,
            "%s with noise: mean and spread within %g %%", shape->name, allowed_percent);
  rig_off(&rig);
}

static void cut_off(const char *elf) {
  start(elf, 4000);
  size_t line = rig.line_count;
  rig_run(&rig, REST_MS);
  fire(&shapes[SECOND]);
  rig_run(&rig, 100);
  tap_check(rig_count(&rig, "C", line) == 0, "while it is light no curve is sent");
  tap_check(rig_command(&rig, 'v', "") == 0, "thresholds are read back while a curve is taken");
  rig_settle(&rig, 1000);
  bool good = gather(line) && contiguous();
  for (size_t i = 0; i < part_count; i++) {
    good = good && (parts[i].flags & FLAG_CUT_OFF);
  }
  tap_check(good && part_count >= 3, "the curve was cut off for it, says so, and is whole up to there");
  size_t wrong = 0;
  for (size_t i = 0; i < part_count; i++) {
    wrong += parts[i].kind == PLATEAU ? worst_span(&shapes[SECOND], &parts[i]) > 1 : wrong_readings(&shapes[SECOND], &parts[i]);
  }
  tap_check(wrong == 0, "its values are those of the light");
  line = rig.line_count;
  rig_run(&rig, 400);
  tap_check(rig_count(&rig, "C", line) == 0, "no other curve is taken while it stays light");
  rig_run(&rig, 600); /* until it is dark */
  rig_run(&rig, REST_MS);
  line = rig.line_count;
  fire(&shapes[SHORT]);
  rig_settle(&rig, 1000);
  tap_check(gather(line) && contiguous() && part_count == 1 && !(parts[0].flags & FLAG_CUT_OFF),
            "the next opening has its curve again");

  line = rig.line_count;
  rig_run(&rig, REST_MS);
  fire(&shapes[MIDDLE]);
  rig_run(&rig, 4);
  tap_check(rig_command(&rig, 'm', "0 0040") == 0, "light blocks are promised while a curve is taken");
  rig_settle(&rig, 1000);
  good = gather(line) && contiguous();
  tap_check(good && (parts[0].flags & FLAG_CUT_OFF) && rig_count(&rig, "M", line) == 64 && wrong_readings(&shapes[MIDDLE], parts) == 0,
            "the curve is cut off and sent, and all blocks come behind it");
  rig_off(&rig);
}

static size_t fire_again_after(double ms) {
  rig_run(&rig, 2 * REST_MS);
  size_t line = rig.line_count, edge = rig.edge_count;
  fire(&shapes[SHORT]);
  rig_run(&rig, ms);
  fire(&shapes[SHORT]);
  rig_settle(&rig, 1000);
  struct comparison low = rig_compare(&rig, PIN_LOW, edge, line), high = rig_compare(&rig, PIN_HIGH, edge, line);
  tap_check(low.injected == 4 && low.reported == 4 && low.least == 0 && low.most == 0 && high.reported == 4 &&
                rig_lines_whole(&rig, line),
            "two firings %g ms apart: all edges of both", ms);
  return gather(line) ? part_count : 99;
}

static void succession(const char *elf) {
  start(elf, 4000);
  tap_check(fire_again_after(100) == 2 && parts[1].curve == ((parts[0].curve + 1) & 0xFF) &&
                wrong_readings(&shapes[SHORT], &parts[1]) == 0,
            "two firings 100 ms apart: a curve of each, numbered one after the other");
  tap_check(fire_again_after(30) == 1, "two firings 30 ms apart: only the first has a curve, the line is still busy with it");
  tap_check(fire_again_after(100) == 2, "and then both again");
  rig_off(&rig);
}

/* A curve that looks for a rebound: once for each time that it is asked for. */
static void long_window(const char *elf, const struct shape *shape, uint32_t period) {
  start(elf, 4000);
  double full = full_code();
  tap_check(rig_command(&rig, 'c', "2") == 0, "%s: a long curve is asked for", shape->name);
  rig_run(&rig, REST_MS);
  size_t line = rig.line_count, edge = rig.edge_count;
  fire(shape);
  rig_run(&rig, 2 + length_ms(shape));
  rig_settle(&rig, 1000);
  tap_check(rig_lines_whole(&rig, line) && gather(line) && contiguous() && part_count == 2 && parts[1].kind == TAIL &&
                parts[1].period == period && parts[1].flags == FLAG_LAST,
            "%s: one curve comes, a window and a tail of %lu ticks a value", shape->name, (unsigned long)period);
  figures(shape->name);
  double worst = worst_span(shape, &parts[1]);
  tap_check(wrong_readings(shape, &parts[0]) == 0 && worst <= 1, "%s: every value is the light of its own span (%.2f off at most)",
            shape->name, worst);
  double closed_us = shape->points[3][0];
  double seen_ms = (double)(int32_t)(parts[1].first + period * (uint32_t)parts[1].count - (uint32_t)rig_ticks_at(&rig, fired)) / 16000;
  tap_check(seen_ms - closed_us / 1000 >= 12, "%s: it goes on for %.2f ms after closing", shape->name, seen_ms - closed_us / 1000);
  double off = (effective_ms(full) / true_ms(shape) - 1) * 100;
  tap_check(fabs(off) <= 0.5, "%s: its lines add up to the effective time within %.2f %%", shape->name, off);
  bool exact = true;
  for (enum pin pin = PIN_LOW; pin <= PIN_OUTER_B; pin++) {
    struct comparison c = rig_compare(&rig, pin, edge, line);
    exact = exact && c.injected > 0 && c.reported == c.injected && c.wrong_levels == 0 &&
            labs(c.least) <= (pin == PIN_LOW ? 0 : 8) && labs(c.most) <= (pin == PIN_LOW ? 0 : 8);
  }
  tap_check(exact, "%s: the edges of the same firing are as exact as ever", shape->name);
  rig_run(&rig, REST_MS);
  line = rig.line_count;
  fire(shape);
  rig_run(&rig, 2 + length_ms(shape));
  rig_settle(&rig, 1000);
  tap_check(gather(line) && contiguous() && parts[part_count - 1].kind != TAIL, "%s: the next curve is an ordinary one", shape->name);
  rig_off(&rig);
}

static void switched_off(const char *elf) {
  start(elf, 4000);
  tap_check(rig_command(&rig, 'c', "5") == 2 && rig_command(&rig, 'c', "0") == 0, "curves can be switched off, other modes not");
  rig_run(&rig, REST_MS);
  size_t line = rig.line_count;
  fire(&shapes[SHORT]);
  rig_settle(&rig, 1000);
  tap_check(rig_count(&rig, "E", line) == 8 && rig_count(&rig, "C", line) + rig_count(&rig, "D", line) == 0,
            "then a firing has edges and no curve");
  tap_check(rig_command(&rig, 'c', "1") == 0, "and on again");
  rig_run(&rig, REST_MS);
  line = rig.line_count;
  fire(&shapes[SHORT]);
  rig_settle(&rig, 1000);
  tap_check(gather(line) && part_count == 1 && parts[0].curve == 0, "then the next firing has one, the first of this board");
  rig_off(&rig);
}

/* The outer sensors have light of their own, so that a curve of the wrong sensor is seen. */
static void of_outer_sensors(const char *elf) {
  start(elf, 4000);
  rig_script(&rig, "light outerA 90 3000\nlight outerB 20 3500");
  for (int sensor = 2; sensor <= 3; sensor++) {
    rig_run(&rig, REST_MS);
    size_t asked = rig.line_count;
    bool done = rig_command(&rig, 'c', sensor == 2 ? "3" : "4") == 0;
    rig_run(&rig, REST_MS);
    size_t line = rig.line_count, edge = rig.edge_count;
    dark_mv = sensor == 2 ? 90 : 20;
    full_mv = sensor == 2 ? 3000 : 3500;
    fire(&shapes[MIDDLE]);
    rig_run(&rig, 2 + length_ms(&shapes[MIDDLE]));
    rig_settle(&rig, 2000);
    bool whole = done && rig_lines_whole(&rig, asked) && gather(line) && contiguous();
    size_t wrong = 0;
    double worst = 0;
    for (size_t i = 0; i < part_count; i++) {
      whole = whole && parts[i].flags >> 4 == sensor;
      if (of_means(&parts[i])) {
        worst = fmax(worst, worst_span(&shapes[MIDDLE], &parts[i]));
      } else {
        wrong += wrong_readings(&shapes[MIDDLE], &parts[i]);
      }
    }
    tap_check(whole && part_count >= 3, "a curve of outer sensor %c comes whole, and every part says whose it is", 'A' + sensor - 2);
    tap_check(wrong == 0 && worst <= 1, "and shows its own light: %zu readings wrong, means off by %.2f at most", wrong, worst);
    bool exact = true;
    for (enum pin pin = PIN_LOW; pin <= PIN_OUTER_B; pin++) {
      struct comparison c = rig_compare(&rig, pin, edge, line);
      exact = exact && c.injected > 0 && c.reported == c.injected && c.wrong_levels == 0;
    }
    tap_check(exact, "no edge of that firing is missing");
    dark_mv = 40;
    full_mv = 4000;
    rig_run(&rig, REST_MS);
    line = rig.line_count;
    fire(&shapes[SHORT]);
    rig_settle(&rig, 1000);
    tap_check(gather(line) && part_count == 1 && parts[0].flags == 1 && wrong_readings(&shapes[SHORT], &parts[0]) == 0,
              "the next one is of the centre again");
  }
  rig_off(&rig);
}

/* An opening whose contact, click and release chatter, with commands coming in: edges and curve are both whole. */
static void hard_work(const char *elf) {
  start(elf, 4000);
  size_t whole = 0, wrong = 0, times = 20, longs = 0, tails = 0;
  bool edges = true;
  struct dice dice = {4711};
  tap_note("seed %llu", (unsigned long long)dice.state);
  for (size_t n = 0; n < times; n++) {
    rig_run(&rig, REST_MS + 1e-3 * dice_below(&dice, 1000));
    size_t line = rig.line_count, edge = rig.edge_count;
    const struct shape *shape = &shapes[n % 4 == 3 ? SLOWER : ODD];
    if (n % 4 == 3) {
      rig_command(&rig, 'c', "2");
      line = rig.line_count;
      longs++;
    }
    fire(shape);
    rig_script(&rig, "burst +%g contact 20 %g\nburst +%g click 14 %g\nburst +%g release 10 %g\n", 2e-3, 20.0 + dice_below(&dice, 30),
               4e-3, 21.0 + dice_below(&dice, 30), 4e-3, 23.0 + dice_below(&dice, 30));
    for (int i = 0; i < 4; i++) {
      rig_script(&rig, "tx +%g p %04X BEEF#", i * 4e-3, i);
    }
    rig_run(&rig, 2 + length_ms(shape));
    rig_settle(&rig, 2000);
    for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
      struct comparison c = rig_compare(&rig, pin, edge, line);
      if (pin == PIN_CLICK) {
        /* Its ringing is thinned by pairs while edges wait; what is left has its own test. */
        edges = edges && c.reported >= 2 && c.reported <= c.injected && (c.injected - c.reported) % 2 == 0;
      } else {
        edges = edges && c.injected == c.reported && c.wrong_levels == 0 && (pin != PIN_LOW || (c.least == 0 && c.most == 0));
      }
    }
    whole += gather(line) && contiguous();
    tails += part_count == 2 && parts[1].kind == TAIL && parts[1].flags == FLAG_LAST;
    for (size_t i = 0; i < part_count; i++) {
      wrong += of_means(&parts[i]) ? worst_span(shape, &parts[i]) > 1 : wrong_readings(shape, &parts[i]);
    }
  }
  struct counters counters;
  bool told = rig_counters(&rig, &counters);
  tap_figure("%zu irregular openings with 44 more edges each and four pings: %zu whole curves", times, whole);
  tap_check(edges && told && counters.snapshots_lost + counters.captures_lost + counters.floods + counters.bytes_lost == 0,
            "hard work: no edge is lost but ringing of the click sensor, no byte is lost, channel 0 exact");
  tap_check(longs == tails, "hard work: every long curve that was asked for came (%zu)", longs);
  tap_check(whole == times && wrong == 0, "hard work: every curve is whole and right");
  rig_off(&rig);
}

/* While the light is set: it rests at and around the low threshold, in noise, rippling, and in steps. */
static void at_rest(const char *elf) {
  start(elf, 4000);
  rig_run(&rig, REST_MS);
  size_t line = rig.line_count;
  rig_script(&rig, "hysteresis 200\nnoise centre 20 7\nlamp +0 0.2\nhold +0 1\nlamp +0.5 0.205\nlamp +1 0.215\nlamp +1.5 0.225\n"
                   "ripple 100 0.2\nlamp +2 1");
  rig_run(&rig, 3000);
  size_t curves = rig_count(&rig, "C", line), values = rig_count(&rig, "D", line);
  tap_figure("3 s of light resting at the low threshold, with noise and ripple: %zu C lines, %zu D lines", curves, values);
  tap_check(gather(line) && curves <= 2, "light that is being set does not fill the line with curves");
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  for (size_t s = 0; s < ORDINARY_SHAPES; s++) {
    against_light(elf, &shapes[s]);
  }
  effective(elf, &shapes[SHORT], 0.5);
  effective(elf, &shapes[MIDDLE], 0.2);
  spread(elf, &shapes[SHORT], 0.5);
  spread(elf, &shapes[MIDDLE], 0.2);
  long_window(elf, &shapes[FAST], 1024);
  long_window(elf, &shapes[SLOWER], 2048);
  hard_work(elf);
  cut_off(elf);
  succession(elf);
  switched_off(elf);
  of_outer_sensors(elf);
  at_rest(elf);
  return tap_done();
}
