/* Reference pulses (docs/protocol.md, command `r` and line `R`): what the board tells of each against the pin in the
   simulator, what the sensors see, and that the LED is off when it must be. */

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rig.h"
#include "tap.h"

#define GAP_TICKS 320000u
#define MOST_LANDING 12 /* cycles that simavr moves a pin behind the match: the instruction under way, entering an interrupt */
#define ALONE_TICKS 8  /* docs/protocol.md, software channels alone; as in test_edges */

static struct rig rig;
static struct dice dice = {20261126};

static int ask(unsigned kind, unsigned width, unsigned count) {
  char fields[32];
  snprintf(fields, sizeof fields, "%X %08X %04X", kind, width, count);
  return rig_command(&rig, 'r', fields);
}

/* The n-th line of a kind at or after `from`. */
static const struct line *nth(const char *kind, size_t from, size_t n) {
  const struct line *line = rig_find(&rig, kind, from);
  while (line && n-- > 0) {
    line = rig_find(&rig, kind, (size_t)(line - rig.lines) + 1);
  }
  return line;
}

static uint32_t ticks_at(cycles_t cycle) {
  return (uint32_t)rig_ticks_at(&rig, cycle);
}

/* What R lines and pin say of `count` pulses of one request. */
struct account {
  size_t told;
  bool whole;      /* every R has its two switchings of the pin, in order, and there are no others */
  bool same_ticks; /* R and pin agree to the tick */
  uint32_t shortest, longest, least_gap;
  long least_landing, most_landing;
};

static struct account account_of(size_t first_line, size_t first_led, size_t count, unsigned kind) {
  struct account a = {.whole = true, .same_ticks = true, .shortest = UINT32_MAX, .least_gap = UINT32_MAX,
                      .least_landing = 0x7FFFFFFF, .most_landing = -0x7FFFFFFF};
  a.told = rig_count(&rig, "R", first_line);
  a.whole = rig.led_count - first_led == 2 * count && a.told == count;
  for (size_t n = 0; n < count && a.whole; n++) {
    const struct line *r = nth("R", first_line, n);
    const struct led_switch *on = &rig.leds[first_led + 2 * n], *off = on + 1;
    uint32_t begin = (uint32_t)rig_hex(r, 4), end = (uint32_t)rig_hex(r, 5);
    a.whole = rig_hex(r, 2) == n && rig_hex(r, 3) == kind && on->level && !off->level &&
              on->ramped == (kind == 2) && off->ramped == (kind == 2);
    a.same_ticks = a.same_ticks && begin == ticks_at(on->cycle) && end == ticks_at(off->cycle);
    uint32_t width = end - begin;
    a.shortest = width < a.shortest ? width : a.shortest;
    a.longest = width > a.longest ? width : a.longest;
    for (const struct led_switch *s = on; s <= off; s++) {
      long landing = (long)(s->landed - s->cycle);
      a.least_landing = landing < a.least_landing ? landing : a.least_landing;
      a.most_landing = landing > a.most_landing ? landing : a.most_landing;
    }
    if (n > 0) {
      uint32_t gap = (uint32_t)(on->cycle - on[-1].cycle);
      a.least_gap = gap < a.least_gap ? gap : a.least_gap;
    }
  }
  return a;
}

static bool wait_for_pulses(size_t first_line, size_t count, double limit_milliseconds) {
  for (double gone = 0; gone < limit_milliseconds && rig_count(&rig, "R", first_line) < count; gone += 10) {
    rig_run(&rig, 10);
  }
  return rig_count(&rig, "R", first_line) == count;
}

/* Widths of the daily rig check, and those around the wraps and limits of the firmware. */
static void widths(const char *elf) {
  static const struct {
    unsigned ticks, count;
    const char *name;
  } widths[] = {{0x640, 5, "100 us"},        {16000, 5, "1 ms"},         {32000, 3, "2 ms"},
                {0xC000, 3, "C000 ticks"},   {0xC001, 3, "C001 ticks"},  {0xFFFF, 3, "one wrap less a tick"},
                {0x10000, 3, "one wrap"},    {0x10001, 3, "one wrap and a tick"},
                {256000, 3, "16 ms"},        {16000000, 2, "1 s"},       {0x1E84800, 1, "2 s"}};
  rig_start(&rig, elf, "light all 40 4000\nled all 3900");
  long least = 0x7FFFFFFF, most = -0x7FFFFFFF;
  for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
    size_t line = rig.line_count, led = rig.led_count;
    int result = ask(1, widths[i].ticks, widths[i].count);
    const struct line *answer = rig_find(&rig, "A", line);
    bool at_once = result == 0 && answer && rig_count(&rig, "R", line) == 0;
    bool all = wait_for_pulses(line, widths[i].count, 200 + widths[i].count * widths[i].ticks / 8000.0);
    rig_settle(&rig, 3000);
    struct account a = account_of(line, led, widths[i].count, 1);
    tap_check(at_once && all && a.whole, "%s: the answer comes at once, then an R for each of %u pulses", widths[i].name,
              widths[i].count);
    tap_check(a.same_ticks && a.shortest == widths[i].ticks && a.longest == widths[i].ticks,
              "%s: R and pin agree to the tick, and END - BEGIN is the width", widths[i].name);
    uint32_t gap = widths[i].ticks > GAP_TICKS ? widths[i].ticks : GAP_TICKS;
    tap_check(widths[i].count < 2 || a.least_gap >= gap, "%s: the LED stays off long enough between two", widths[i].name);
    least = a.least_landing < least ? a.least_landing : least;
    most = a.most_landing > most ? a.most_landing : most;
    /* the square light goes through no lag here: channel 0 sees the pulse itself, some cycles late at both ends */
    size_t seen = 0;
    long off_least = 0x7FFFFFFF, off_most = -0x7FFFFFFF;
    for (size_t n = 0; n < rig.line_count - line; n++) {
      const struct line *e = &rig.lines[line + n];
      if (e->good && strcmp(e->field[0], "E") == 0 && rig_hex(e, 2) == 0 && led + seen < rig.led_count) {
        const struct led_switch *s = &rig.leds[led + seen++];
        long off = (int32_t)((uint32_t)rig_hex(e, 4) - ticks_at(s->cycle));
        off_least = off < off_least ? off : off_least;
        off_most = off > off_most ? off : off_most;
      }
    }
    tap_check(seen == 2 * widths[i].count && off_least >= 0 && off_most <= 2 * MOST_LANDING,
              "%s: channel 0 sees the pulses", widths[i].name);
  }
  tap_figure("simavr moved the pin %ld to %ld cycles behind the match", least, most);
  tap_check(least == 0 && most <= MOST_LANDING, "the pin itself moved there, at most an instruction and an interrupt later");
  rig_off(&rig);
}

/* Pulses that lie across the wraps of the 32-bit ticks and of the half count's sixteen bits. */
static void across_wraps(const char *elf) {
  static const char *const presets[] = {"0000FFFA0000", "0000FFFAA000", "00007FFA0000", "FFFFFFFA0000"};
  static const unsigned widths[] = {0x640, 0xC000, 0x20000, 700000};
  rig_start(&rig, elf, "light all 40 4000\nled all 3900");
  bool all = true;
  int across = 0;
  for (size_t p = 0; p < sizeof presets / sizeof *presets; p++) {
    for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
      rig_script(&rig, "preset +0 %s", presets[p]);
      rig_run(&rig, 1);
      rig_find_origin(&rig);
      size_t line = rig.line_count, led = rig.led_count;
      bool good = ask(1, widths[i], 2) == 0 && wait_for_pulses(line, 2, 500);
      struct account a = account_of(line, led, 2, 1);
      good = good && a.whole && a.same_ticks && a.shortest == widths[i] && a.longest == widths[i];
      if (!good) {
        tap_note("from %s, width %u: %zu told, %u to %u", presets[p], widths[i], a.told, a.shortest, a.longest);
      }
      all = all && good;
      for (size_t n = 0; n < a.told; n++) {
        const struct line *r = nth("R", line, n);
        across += rig_hex(r, 4) > rig_hex(r, 5);
      }
      rig_settle(&rig, 500);
    }
  }
  tap_check(all && across >= 4, "pulses that begin before a wrap of the ticks are exact, too (%d end behind it)", across);
  rig_off(&rig);
}

/* Any width at any moment, with light blocks, pings and light that switches four comparators at each end. */
static void random_widths(const char *elf) {
  rig_start(&rig, elf, "light all 40 4000\nled all 3900\nlag all 1");
  rig_script(&rig, "tx +0 m 0001 0 FFFF#");
  bool all = true;
  int made = 0;
  for (int i = 0; i < 80; i++) {
    unsigned width = 0x640 + dice_below(&dice, i % 2 ? 4000 : 90000);
    rig_script(&rig, "tx +0.02 p %04X BEEF#\ntx +0.0205 s %04X#", i, i);
    rig_run(&rig, dice_below(&dice, 1000) / 100.0);
    size_t line = rig.line_count, led = rig.led_count;
    bool good = ask(1, width, 2) == 0 && wait_for_pulses(line, 2, 200);
    struct account a = account_of(line, led, 2, 1);
    good = good && a.whole && a.same_ticks && a.shortest == width && a.longest == width;
    if (!good) {
      tap_note("width %u: %zu told, %u to %u, %s", width, a.told, a.shortest, a.longest, a.same_ticks ? "" : "R and pin differ");
    }
    all = all && good;
    made += 2;
  }
  tap_check(all, "%d pulses of random widths at random moments, board busy: all exact to the tick", made);
  rig_off(&rig);
}

/* The main loop stands still while handlers run. A pulse may then become longer, but what R says stays true. */
static void under_floods(const char *elf) {
  rig_start(&rig, elf, "");
  unsigned longest = 0;
  bool true_to_pin = true;
  int told = 0, longer = 0;
  for (int i = 0; i < 40; i++) {
    size_t line = rig.line_count, led = rig.led_count;
    ask(1, 0x640, 1);
    for (int steps = 0; steps < 4000 && rig.led_count == led; steps++) {
      bench_run_until(&rig.bench, bench_now(&rig.bench) + 160);
    }
    for (enum pin pin = 0; pin < HANDLED_PINS; pin++) {
      rig_script(&rig, "burst @%llu %s %u %g", (unsigned long long)bench_now(&rig.bench) + dice_below(&dice, 400),
                 pin_wiring[pin].name, 300u, 1 + dice_below(&dice, 20) / 10.0);
    }
    bool came = wait_for_pulses(line, 1, 3000);
    struct account a = account_of(line, led, 1, 1);
    true_to_pin = true_to_pin && came && a.whole && a.same_ticks && a.shortest >= 0x640;
    longest = a.whole && a.longest > longest ? a.longest : longest;
    longer += a.whole && a.longest > 0x640;
    told += came;
    rig_settle(&rig, 3000);
  }
  tap_figure("40 pulses of 1600 ticks, floods on all seven inputs from their begin on: %d became longer, up to %u ticks", longer,
             longest);
  tap_check(true_to_pin && told == 40, "amid floods R and pin still agree to the tick, and no pulse is shorter than asked");
  tap_check(longer > 0 && longest < 0x640 + 16000, "some became longer, none by more than 1 ms");
  rig_off(&rig);
}

static const struct injected *edge_of(enum pin pin, bool level, size_t from) {
  for (size_t i = from; i < rig.edge_count; i++) {
    if (rig.edges[i].pin == pin && rig.edges[i].level == level) {
      return &rig.edges[i];
    }
  }
  return NULL;
}

/* The ramped drive: exponential flanks of 1 ms. The light rises through q after RC ln(1 / (1 - q)) and falls through it after
   RC ln(1 / q), so the time above q is the width plus RC ln((1 - q) / q), and the mean over q and 1 - q is the width. */
static void ramped(const char *elf) {
  rig_start(&rig, elf, "light all 0 4000\nled all 5000");
  tap_check(rig_command(&rig, 't', "36 C8") == 0, "levels at 55 and 201 of 256, symmetric to the middle of the LED's light");
  rig_run(&rig, 100);
  static const unsigned widths[] = {256000, 480000};
  for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
    size_t line = rig.line_count, led = rig.led_count, edge = rig.edge_count;
    bool came = ask(2, widths[i], 1) == 0 && wait_for_pulses(line, 1, 500);
    rig_settle(&rig, 1000);
    struct account a = account_of(line, led, 1, 2);
    tap_check(came && a.whole && a.same_ticks && a.shortest == widths[i], "ramped drive, %u ticks: exact at its pin", widths[i]);
    const struct injected *low_up = edge_of(PIN_LOW, true, edge), *low_down = edge_of(PIN_LOW, false, edge);
    const struct injected *high_up = edge_of(PIN_HIGH, true, edge), *high_down = edge_of(PIN_HIGH, false, edge);
    bool seen = low_up && low_down && high_up && high_down;
    double q = 55.0 / 256, rc = 16000;
    double low = seen ? (double)(low_down->due - low_up->due) : 0, high = seen ? (double)(high_down->due - high_up->due) : 0;
    tap_check(seen && fabs(low - (widths[i] + rc * log((1 - q) / q))) <= 2 &&
                  fabs(high - (widths[i] + rc * log(q / (1 - q)))) <= 2,
              "the light is above each level as long as its closed form says");
    /* and from what the board tells */
    uint32_t up[2] = {0}, down[2] = {0};
    for (size_t n = line; n < rig.line_count; n++) {
      const struct line *e = &rig.lines[n];
      if (e->good && strcmp(e->field[0], "E") == 0 && rig_hex(e, 2) < 2) {
        (rig_hex(e, 3) ? up : down)[rig_hex(e, 2)] = (uint32_t)rig_hex(e, 4);
      }
    }
    double mean = ((double)(down[0] - up[0]) + (double)(down[1] - up[1])) / 2;
    tap_figure("ramped pulse of %u ticks: low level %.0f, high level %.0f, mean from the E lines %.1f", widths[i], low, high, mean);
    tap_check(fabs(mean - widths[i]) <= ALONE_TICKS, "the mean of both levels, as told, is the width within %d ticks",
              ALONE_TICKS);
  }
  rig_off(&rig);
}

static bool dark(void) {
  return !rig.bench.optics.led_square && !rig.bench.optics.led_ramped;
}

static void steady_and_stops(const char *elf) {
  rig_start(&rig, elf, "led all 3000");
  size_t led = rig.led_count;
  tap_check(ask(3, 0, 0) == 0 && rig.bench.optics.led_square, "steady: the LED is on when the answer comes");
  rig_run(&rig, 9000);
  tap_check(rig.bench.optics.led_square && rig.led_count == led + 1, "steady: still on after 9 s");
  rig_run(&rig, 2000);
  double lit = rig.led_count == led + 2 ? (double)(rig.leds[led + 1].cycle - rig.leds[led].cycle) / CYCLES_PER_SECOND : 0;
  tap_figure("steady light goes off after %.4f s", lit);
  tap_check(dark() && lit > 9.9 && lit <= 10, "steady: off after 10 s at most");
  ask(3, 0, 0);
  tap_check(ask(0, 0, 0) == 0 && dark(), "kind 0 switches it off");
  size_t line = rig.line_count;
  ask(1, 16000000, 4);
  rig_run(&rig, 200);
  bool lit_before = rig.bench.optics.led_square;
  tap_check(ask(0, 0, 0) == 0 && lit_before && dark(), "kind 0 ends a pulse under way");
  rig_run(&rig, 4000);
  tap_check(rig_count(&rig, "R", line) == 0 && dark(), "no R is told of it, and no other follows");
  line = rig.line_count;
  led = rig.led_count;
  ask(2, 16000000, 1);
  rig_run(&rig, 100);
  ask(1, 32000, 2);
  tap_check(wait_for_pulses(line, 2, 200) && rig.led_count == led + 6, "a new request takes the place of the old one");
  struct account a = account_of(line, led + 2, 2, 1);
  tap_check(a.whole && a.same_ticks && a.shortest == 32000 && a.longest == 32000, "and its pulses are exact");
  tap_check(ask(1, 0x63F, 1) == 2 && ask(2, 0x1E84801, 1) == 2 && ask(4, 0x640, 1) == 2 && ask(1, 0x640, 0) == 2,
            "too short, too long, no such drive, no pulse at all: result 02");
  rig_off(&rig);
}

static void resets(const char *elf) {
  rig_start(&rig, elf, "led all 3000");
  ask(3, 0, 0);
  rig_script(&rig, "reset +0.01");
  rig_run(&rig, 11);
  tap_check(dark(), "a reset switches the LED off");
  rig_run(&rig, 300);
  tap_check(dark() && rig_command(&rig, 's', "") == 0, "and it stays off");
  rig_find_origin(&rig);
  size_t line = rig.line_count, led = rig.led_count;
  ask(1, 16000, 2);
  bool came = wait_for_pulses(line, 2, 300);
  struct account a = account_of(line, led, 2, 1);
  tap_check(came && a.whole && a.same_ticks && a.longest == 16000, "pulses after a reset are exact");
  ask(3, 0, 0);
  rig_settle(&rig, 1000); /* or the greeting would stand behind half a line */
  line = rig.line_count;
  rig_script(&rig, "stall +0.01");
  rig_run(&rig, 1500);
  const struct line *h = rig_find(&rig, "H", line);
  tap_check(h && strcmp(h->field[8], "watchdog") == 0 && dark(), "a clock that stands still: the watchdog switches the LED off");
  rig_off(&rig);
}

/* Pulses take nothing from the exactness of the other channels. */
static void edges_meanwhile(const char *elf) {
  rig_start(&rig, elf, "");
  size_t edge = rig.edge_count, line = rig.line_count;
  for (int i = 0; i < 1200; i++) {
    if (i % 100 == 0) {
      char request[48];
      snprintf(request, sizeof request, "1 %08X FFFF", i % 200 ? 0x640u : 70000u);
      rig_script(&rig, "tx +0 r %04X %s#", i, request);
    }
    rig_script(&rig, "pin @%llu contact %d", (unsigned long long)bench_now(&rig.bench) + 10 + dice_below(&dice, 16000),
               i % 2 == 0);
    rig_run(&rig, 2);
  }
  rig_settle(&rig, 100);
  struct comparison c = rig_compare(&rig, PIN_CONTACT, edge, line);
  tap_figure("contact, %zu edges at random phases while %zu pulses were made: %+ld to %+ld ticks from when they were due",
             c.reported, rig_count(&rig, "R", line), c.least_due, c.most_due);
  tap_check(c.injected == 1200 && c.reported == 1200 && c.wrong_levels == 0 && labs(c.least_due) <= ALONE_TICKS &&
                labs(c.most_due) <= ALONE_TICKS && rig_count(&rig, "R", line) > 50,
            "a software channel keeps within %d ticks while pulses are made", ALONE_TICKS);
  tap_check(rig_lines_whole(&rig, line), "and no line is broken or missing");
  rig_off(&rig);
}

int main(int count, char **words) {
  const char *elf = count > 1 ? words[1] : "rig.elf";
  tap_note("seed %llu", (unsigned long long)dice.state);
  widths(elf);
  across_wraps(elf);
  random_widths(elf);
  under_floods(elf);
  ramped(elf);
  steady_and_stops(elf);
  resets(elf);
  edges_meanwhile(elf);
  return tap_done();
}
