#include "optics.h"

#include <math.h>

#include "noise.h"

#define SETTLED_MV 0.01
#define FINE_STEP CYCLES_PER_MICROSECOND
#define THRESHOLD_STEP (16 * CYCLES_PER_MICROSECOND)
#define LED_FILTER_CYCLES (10e3 * 100e-9 * CYCLES_PER_SECOND) /* 10 kilohm, 100 nF */
#define NOISE_REACH 6 /* standard deviations beyond which a crossing is not looked for */

static cycles_t earlier(cycles_t a, cycles_t b) {
  return a < b ? a : b;
}

static double z_at(const struct sensor *s, cycles_t now) {
  double gone = (double)(int64_t)(now - s->begun); /* a sample may lie a few cycles before a step that has just begun */
  double z = s->straight;
  if (s->slope != 0) {
    z += s->slope * gone;
  }
  if (s->transient != 0) {
    z += s->transient * exp(-gone / s->lag_cycles);
  }
  return z;
}

/* A dimmer switches the lamp on for the first part of each period. */
static bool lamp_is_on(const struct optics *o, cycles_t now) {
  return o->dimmer_cycles == 0 || fmod((double)now, o->dimmer_cycles) < o->dimmer_duty * o->dimmer_cycles;
}

/* First cycle after `now` at which the dimmer has switched. */
static cycles_t dimmer_switches(const struct optics *o, cycles_t now) {
  double begun = floor((double)now / o->dimmer_cycles) * o->dimmer_cycles;
  cycles_t at = (cycles_t)ceil(begun + (lamp_is_on(o, now) ? o->dimmer_duty : 1) * o->dimmer_cycles);
  return at > now ? at : now + 1;
}

static double signal_mv(const struct optics *o, const struct sensor *s, cycles_t now) {
  double light = z_at(s, now);
  if (o->ripple_depth != 0) {
    double turns = fmod(o->ripple_hz * (double)now / CYCLES_PER_SECOND, 1);
    light *= 1 + o->ripple_depth * sin(2 * 3.14159265358979323846 * turns);
  }
  if (!lamp_is_on(o, now)) {
    light = 0;
  }
  double mv = s->dark_mv + (s->full_mv - s->dark_mv) * light + led_mv(&s->led, (double)(now - s->begun));
  if (s->noise_mv != 0) {
    mv += s->noise_mv * noise_at(s->noise_seed, now / FINE_STEP);
  }
  return mv < 0 ? 0 : mv > SUPPLY_MV * o->supply ? SUPPLY_MV * o->supply : mv;
}

/* The outer sensors are compared with the middle of the two thresholds, as a divider between them gives it. */
static double threshold_of(const struct optics *o, enum pin pin, cycles_t now) {
  switch (pin) {
    case PIN_LOW:
      return o->level_is_bandgap ? o->bandgap_mv : o->supply * threshold_mv(&o->low, now);
    case PIN_HIGH:
      return o->supply * threshold_mv(&o->high, now);
    default:
      return o->supply * (threshold_mv(&o->low, now) + threshold_mv(&o->high, now)) / 2;
  }
}

/* How far the input is beyond the point at which the comparator begins to turn over; negative on its own side. */
static double overdrive(const struct optics *o, const struct sensor *s, const struct comparator *c, cycles_t now) {
  double over = signal_mv(o, s, now) - threshold_of(o, c->pin, now) - c->offset_mv;
  return (c->level ? -over : over) - o->hysteresis_mv / 2;
}

static bool level_at(const struct optics *o, const struct sensor *s, const struct comparator *c, cycles_t now) {
  return overdrive(o, s, c, now) > 0 ? !c->level : c->level;
}

/* Whether ripple, dimmer or noise could carry the signal over a threshold during the step. */
static bool may_cross(const struct optics *o, const struct sensor *s, cycles_t now, cycles_t end) {
  double from = z_at(s, now);
  double to = end == NEVER ? from : z_at(s, end);
  double span = s->full_mv - s->dark_mv;
  double reach = NOISE_REACH * s->noise_mv + o->hysteresis_mv;
  double led = led_mv(&s->led, 0), led_to = led_mv(&s->led, end == NEVER ? 0 : (double)(end - now));
  double least_light = o->dimmer_cycles != 0 ? 0 : fmin(from, to) * (1 - o->ripple_depth);
  double least = s->dark_mv + span * least_light + fmin(led, led_to) - reach;
  double most = s->dark_mv + span * fmax(from, to) * (1 + o->ripple_depth) + fmax(led, led_to) + reach;
  for (int i = 0; i < s->comparator_count; i++) {
    double threshold = threshold_of(o, s->comparators[i].pin, now) + s->comparators[i].offset_mv;
    if (least <= threshold && threshold <= most) {
      return true;
    }
  }
  return false;
}

static bool thresholds_move(const struct optics *o, cycles_t now) {
  return threshold_moves(&o->low, now) || threshold_moves(&o->high, now);
}

/* Begins a step at `now` with z as it is there. */
static void step(const struct optics *o, struct sensor *s, cycles_t now, double z) {
  struct stretch stretch = {s->resting, 0, NEVER};
  if (s->curve) {
    stretch = curve_from(s->curve, s->curve_start, s->curve_rate, s->resting, now, &s->cursor);
  }
  led_step(&s->led, (double)(now - s->begun), o->led_square, o->led_ramped, s->lag_cycles, o->led_filter_cycles);
  s->begun = now;
  s->slope = stretch.slope * o->lamp;
  s->straight = stretch.open * o->lamp - s->slope * s->lag_cycles;
  s->transient = s->lag_cycles > 0 ? z - s->straight : 0;
  s->ends = stretch.end;
  if (fabs(s->transient) * fabs(s->full_mv - s->dark_mv) < SETTLED_MV) {
    s->transient = 0;
  } else {
    s->ends = earlier(s->ends, now + FINE_STEP);
  }
  if (led_moves(&s->led, SETTLED_MV)) {
    s->ends = earlier(s->ends, now + FINE_STEP);
  }
  if (thresholds_move(o, now)) {
    s->ends = earlier(s->ends, now + THRESHOLD_STEP);
  }
  if (o->dimmer_cycles != 0 && may_cross(o, s, now, s->ends)) {
    s->ends = earlier(s->ends, dimmer_switches(o, now));
    if (s->slope != 0 || s->transient != 0) { /* it may cross by itself between two switchings */
      s->ends = earlier(s->ends, (now / FINE_STEP + 1) * FINE_STEP);
    }
  }
  if ((o->ripple_depth != 0 || s->noise_mv != 0) && may_cross(o, s, now, s->ends)) {
    s->ends = earlier(s->ends, (now / FINE_STEP + 1) * FINE_STEP);
  }
}

/* First cycle after `now` at which the comparator stands the other way, `ends` of the step at the latest; NEVER if at that
   end it stands as now. The signal is taken as crossing once within a step. */
static cycles_t crossing(const struct optics *o, const struct sensor *s, const struct comparator *c, cycles_t now) {
  if (s->ends == NEVER || level_at(o, s, c, s->ends) == c->level) {
    return NEVER;
  }
  cycles_t same = now, other = s->ends;
  while (other - same > 1) {
    cycles_t middle = same + (other - same) / 2;
    if (level_at(o, s, c, middle) == c->level) {
      same = middle;
    } else {
      other = middle;
    }
  }
  return other;
}

/* Sums the overdrive over whole cycles up to `until`, which no step may end before. */
static void charge_up(const struct optics *o, const struct sensor *s, struct comparator *c, cycles_t until) {
  if (!c->driven || until <= c->charged_until) {
    return;
  }
  double before = overdrive(o, s, c, c->charged_until);
  for (cycles_t at = c->charged_until + 1; at <= until; at++) {
    double after = overdrive(o, s, c, at);
    c->charge += (before + after) / 2;
    before = after;
  }
  c->charged_until = until;
}

/* While driven: the cycle at which the comparator decides or its input goes back, or how far was looked. */
static cycles_t decision(const struct optics *o, const struct sensor *s, const struct comparator *c, cycles_t now) {
  cycles_t end = earlier(s->ends, now + FINE_STEP);
  double charge = c->charge, before = overdrive(o, s, c, now);
  for (cycles_t at = now + 1; at < end; at++) {
    double after = overdrive(o, s, c, at);
    charge += (before + after) / 2;
    if (charge >= c->need || after <= 0) {
      return at;
    }
    before = after;
  }
  return end;
}

static void put_out(struct optics *o, struct comparator *c, cycles_t now) {
  while (c->count > 0 && c->under_way[c->first].at <= now) {
    bool level = c->under_way[c->first].level;
    cycles_t at = c->under_way[c->first].at;
    c->first = (c->first + 1) % MOST_UNDER_WAY;
    c->count--;
    o->switched(o->context, at, c->pin, level);
  }
}

static void decide(struct comparator *c, cycles_t at) {
  c->level = !c->level;
  c->driven = false;
  int last = (c->first + c->count++) % MOST_UNDER_WAY;
  c->under_way[last].at = at + c->fixed_cycles;
  c->under_way[last].level = c->level;
}

/* Looks at a comparator, at most a few cycles after it was expected to do something. */
static void judge(const struct optics *o, const struct sensor *s, struct comparator *c, cycles_t now) {
  cycles_t foreseen = earlier(c->expected, now);
  charge_up(o, s, c, now);
  if (level_at(o, s, c, now) == c->level) {
    c->driven = false;
  } else if (!c->driven) {
    c->driven = true;
    c->charge = 0;
    c->charged_until = foreseen > s->begun ? foreseen : s->begun;
    charge_up(o, s, c, now);
  }
  if (c->driven && c->charge >= c->need) {
    decide(c, foreseen);
  }
  c->expected = c->driven ? decision(o, s, c, now) : crossing(o, s, c, now);
}

/* Ends the step under way at `at`, and looks there: what switches at once with the new step belongs to its beginning. */
static void next_step(struct optics *o, struct sensor *s, cycles_t at) {
  for (int i = 0; i < s->comparator_count; i++) {
    charge_up(o, s, &s->comparators[i], at);
  }
  step(o, s, at, z_at(s, at));
  for (int i = 0; i < s->comparator_count; i++) {
    judge(o, s, &s->comparators[i], at);
  }
}

static void advance(struct optics *o, struct sensor *s, cycles_t now) {
  while (s->ends <= now) {
    next_step(o, s, s->ends);
  }
  s->due = s->ends;
  for (int i = 0; i < s->comparator_count; i++) {
    struct comparator *c = &s->comparators[i];
    judge(o, s, c, now);
    put_out(o, c, now);
    s->due = earlier(s->due, c->expected);
    if (c->count > 0) {
      s->due = earlier(s->due, c->under_way[c->first].at);
    }
  }
}

void optics_begin(struct optics *o, void (*switched)(void *context, cycles_t at, enum pin pin, bool level), void *context) {
  static const enum pin wiring[SENSORS][2] = {
      {PIN_LOW, PIN_HIGH}, {PIN_OUTER_A, PIN_OUTER_A}, {PIN_OUTER_B, PIN_OUTER_B}};
  *o = (struct optics){
      .lamp = 1, .supply = 1, .bandgap_mv = 1100, .led_filter_cycles = LED_FILTER_CYCLES, .switched = switched, .context = context};
  for (int i = 0; i < SENSORS; i++) {
    struct sensor *s = &o->sensors[i];
    s->dark_mv = 40;
    s->full_mv = 4000;
    s->comparator_count = i == SENSOR_CENTRE ? 2 : 1;
    for (int c = 0; c < s->comparator_count; c++) {
      s->comparators[c].pin = wiring[i][c];
      s->comparators[c].expected = NEVER;
    }
    step(o, s, 0, 0);
    s->due = 0;
  }
}

void optics_changed(struct optics *o, cycles_t at) {
  for (int i = 0; i < SENSORS; i++) {
    struct sensor *s = &o->sensors[i];
    cycles_t from = at > s->begun ? at : s->begun;
    next_step(o, s, from);
    s->due = from;
  }
}

static double opening(const struct sensor *s, cycles_t now) {
  size_t cursor = 0;
  return s->curve ? curve_from(s->curve, s->curve_start, s->curve_rate, s->resting, now, &cursor).open : s->resting;
}

void optics_fire(struct optics *o, cycles_t start, int sensor, const struct curve *curve, double rate) {
  for (int i = 0; i < SENSORS; i++) {
    struct sensor *s = &o->sensors[i];
    if (sensor == SENSOR_ALL || sensor == i) {
      s->resting = opening(s, start);
      s->curve = curve;
      s->curve_start = start;
      s->curve_rate = rate;
      s->cursor = 0;
    }
  }
  optics_changed(o, start);
}

void optics_hold(struct optics *o, cycles_t at, double open) {
  for (int i = 0; i < SENSORS; i++) {
    o->sensors[i].curve = NULL;
    o->sensors[i].resting = open;
  }
  optics_changed(o, at);
}

void optics_lamp(struct optics *o, cycles_t at, double fraction) {
  o->lamp = fraction;
  optics_changed(o, at);
}

void optics_led(struct optics *o, cycles_t at, bool ramped, bool on) {
  *(ramped ? &o->led_ramped : &o->led_square) = on;
  optics_changed(o, at);
}

struct comparator *optics_comparator(struct optics *o, enum pin pin) {
  for (int i = 0; i < SENSORS; i++) {
    for (int c = 0; c < o->sensors[i].comparator_count; c++) {
      if (o->sensors[i].comparators[c].pin == pin) {
        return &o->sensors[i].comparators[c];
      }
    }
  }
  return NULL;
}

void optics_advance(struct optics *o, cycles_t now) {
  for (int i = 0; i < SENSORS; i++) {
    if (o->sensors[i].due <= now) {
      advance(o, &o->sensors[i], now);
    }
  }
}

cycles_t optics_due(const struct optics *o) {
  cycles_t due = NEVER;
  for (int i = 0; i < SENSORS; i++) {
    due = earlier(due, o->sensors[i].due);
  }
  return due;
}

double optics_sensor_mv(const struct optics *o, int sensor, cycles_t now) {
  return signal_mv(o, &o->sensors[sensor], now);
}
