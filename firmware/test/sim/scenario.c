#include "scenario.h"

#include <ctype.h>
#include <errno.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "crc16.h"

#define MOST_WORDS 6
/* A ringing begins this many time constants of its decay before it sinks below the threshold: 20 times above it. */
#define RING_DECAYS 3.0
/* Shorter than this a comparator does not pass. */
#define RING_LEAST_SECONDS 4e-6

struct words {
  char *word[MOST_WORDS];
  int count;
  const char *rest; /* of the line behind the second word, for `tx` */
};

static bool wrong(struct scenario *s, const char *format, ...) {
  va_list arguments;
  va_start(arguments, format);
  vsnprintf(s->trouble, sizeof s->trouble, format, arguments);
  va_end(arguments);
  return false;
}

static bool number(struct scenario *s, const char *text, const char *what, double least, double most, double *value) {
  char *end;
  *value = strtod(text, &end);
  if (end == text || *end || !isfinite(*value) || *value < least || *value > most) {
    return wrong(s, "'%s' is no %s: write a number from %g to %g", text, what, least, most);
  }
  return true;
}

static bool whole(struct scenario *s, const char *text, const char *what, double most, uint64_t *value) {
  double read;
  if (!number(s, text, what, 0, most, &read)) {
    return false;
  }
  if (read != floor(read)) {
    return wrong(s, "'%s' is no %s: write a whole number", text, what);
  }
  *value = (uint64_t)read;
  return true;
}

/* Seconds, @cycles, or +seconds from now. */
static bool moment(struct scenario *s, const char *text, cycles_t *at) {
  cycles_t now = bench_now(s->bench);
  if (*text == '@') {
    if (!whole(s, text + 1, "number of cycles", 0x1p53, at)) {
      return false;
    }
  } else {
    double seconds;
    if (!number(s, text + (*text == '+'), "time in seconds", 0, 1e8, &seconds)) {
      return false;
    }
    if (*text == '+') {
      seconds += board_clock_seconds(&s->bench->clock, now);
    }
    if (!board_clock_reaches(&s->bench->clock, seconds)) {
      return wrong(s, "the clock's drift would have led too far by then: write less of it");
    }
    *at = board_clock_cycles(&s->bench->clock, seconds);
    if (*text == '+' && *at < now) {
      *at = now; /* +0, rounded down */
    }
  }
  if (*at < now) {
    return wrong(s, "that time has passed: write +SECONDS to count from now");
  }
  return true;
}

static bool sensor(struct scenario *s, const char *text, int *sensor) {
  static const char *const names[] = {"centre", "outerA", "outerB"};
  if (strcmp(text, "all") == 0) {
    *sensor = SENSOR_ALL;
    return true;
  }
  for (int i = 0; i < SENSORS; i++) {
    if (strcmp(text, names[i]) == 0) {
      *sensor = i;
      return true;
    }
  }
  return wrong(s, "'%s' is no sensor: write centre, outerA, outerB or all", text);
}

static bool pin(struct scenario *s, const char *text, int *pin) {
  *pin = (int)pin_named(text);
  return *pin < PINS ||
         wrong(s, "'%s' is no pin: write low, high, outerA, outerB, contact, click, release or knob", text);
}

static const struct curve *curve_named(const struct bench *bench, const char *name) {
  for (size_t i = bench->curve_count; i-- > 0;) { /* the last one of that name */
    if (strcmp(bench->curves[i]->name, name) == 0) {
      return bench->curves[i];
    }
  }
  return NULL;
}

static bool add(struct scenario *s, struct event event) {
  if (event.deed == DEED_END) {
    s->has_end = true;
  }
  bench_add(s->bench, event);
  return true;
}

/* light, lag, noise: a change of the sensors themselves, from now on. */
static bool set_sensors(struct scenario *s, const struct words *w) {
  int which;
  double first, second = 0;
  bool light = strcmp(w->word[0], "light") == 0, lag = strcmp(w->word[0], "lag") == 0;
  if (!sensor(s, w->word[1], &which) ||
      !number(s, w->word[2], lag ? "lag in microseconds" : "voltage in millivolts", 0, lag ? 1e6 : 5000, &first) ||
      (w->count > 3 && !number(s, w->word[3], light ? "voltage in millivolts" : "seed", 0, light ? 5000 : 0x1p53, &second))) {
    return false;
  }
  if (light && second <= first) {
    return wrong(s, "FULL_MV must be above DARK_MV");
  }
  for (int i = 0; i < SENSORS; i++) {
    struct sensor *changed = &s->bench->optics.sensors[i];
    if (which != SENSOR_ALL && which != i) {
      continue;
    }
    if (light) {
      changed->dark_mv = first;
      changed->full_mv = second;
    } else if (lag) {
      changed->lag_cycles = first * CYCLES_PER_MICROSECOND;
    } else {
      changed->noise_mv = first;
      changed->noise_seed = (uint64_t)second + (uint64_t)i * 0x100000000u; /* each sensor its own noise */
    }
  }
  bench_optics_changed(s->bench);
  return true;
}

static bool set_ripple(struct scenario *s, const struct words *w) {
  double hz, depth;
  if (!number(s, w->word[1], "frequency in hertz", 0, 100000, &hz) || !number(s, w->word[2], "depth", 0, 1, &depth)) {
    return false;
  }
  s->bench->optics.ripple_hz = hz;
  s->bench->optics.ripple_depth = hz > 0 ? depth : 0;
  bench_optics_changed(s->bench);
  return true;
}

/* At least two microseconds on and two off, the step at which a moving blade is looked at. */
static bool set_dimmer(struct scenario *s, const struct words *w) {
  double hz, duty;
  if (!number(s, w->word[1], "frequency in hertz", 0, 50000, &hz) || !number(s, w->word[2], "duty", 0, 1, &duty)) {
    return false;
  }
  if (hz > 0 && duty < 1 && fmin(duty, 1 - duty) / hz < 2e-6) {
    return wrong(s, "the lamp must be on and off for 2 us each: write a lower frequency or another duty");
  }
  s->bench->optics.dimmer_cycles = hz > 0 && duty < 1 ? CYCLES_PER_SECOND / hz : 0;
  s->bench->optics.dimmer_duty = duty;
  bench_optics_changed(s->bench);
  return true;
}

/* Before anything that has a time, as times are turned into cycles when they are read. */
static bool set_clock(struct scenario *s, const struct words *w) {
  double ppm, drift;
  if (!number(s, w->word[1], "error in parts per million", -10000, 10000, &ppm) ||
      !number(s, w->word[2], "drift in parts per million and minute", -1000, 1000, &drift)) {
    return false;
  }
  if (bench_now(s->bench) > 0 || s->bench->agenda.made > 0) {
    return wrong(s, "write it at the head of the scenario: times above it were taken for those of an exact clock");
  }
  s->bench->clock = (struct board_clock){.off = ppm / 1e6, .drift = drift / 1e6 / 60};
  return true;
}

/* The chip's own reference; and the supply of the board, which neither it nor the light follows. */
static bool set_bandgap(struct scenario *s, const struct words *w) {
  if (!number(s, w->word[1], "voltage in millivolts", 900, 1300, &s->bench->optics.bandgap_mv)) {
    return false;
  }
  bench_optics_changed(s->bench);
  return true;
}

static bool set_supply(struct scenario *s, const struct words *w) {
  if (!number(s, w->word[1], "part of 5 V", 0.85, 1.1, &s->bench->optics.supply)) {
    return false;
  }
  bench_optics_changed(s->bench);
  return true;
}

static bool set_hysteresis(struct scenario *s, const struct words *w) {
  double mv;
  if (!number(s, w->word[1], "voltage in millivolts", 0, 5000, &mv)) {
    return false;
  }
  s->bench->optics.hysteresis_mv = mv;
  bench_optics_changed(s->bench);
  return true;
}

static bool set_led(struct scenario *s, const struct words *w) {
  int which;
  double mv;
  if (!sensor(s, w->word[1], &which) || !number(s, w->word[2], "voltage in millivolts", -5000, 5000, &mv)) {
    return false;
  }
  for (int i = 0; i < SENSORS; i++) {
    if (which == SENSOR_ALL || which == i) {
      s->bench->optics.sensors[i].led.mv = mv;
    }
  }
  bench_optics_changed(s->bench);
  return true;
}

static bool set_led_filter(struct scenario *s, const struct words *w) {
  double microseconds;
  if (!number(s, w->word[1], "time constant in microseconds", 0, 1e6, &microseconds)) {
    return false;
  }
  s->bench->optics.led_filter_cycles = microseconds * CYCLES_PER_MICROSECOND;
  bench_optics_changed(s->bench);
  return true;
}

static bool comparator(struct scenario *s, const char *text, struct comparator **comparator) {
  enum pin named = pin_named(text);
  *comparator = named < PINS ? optics_comparator(&s->bench->optics, named) : NULL;
  return *comparator || wrong(s, "'%s' is no comparator: write low, high, outerA or outerB", text);
}

static bool set_offset(struct scenario *s, const struct words *w) {
  struct comparator *changed;
  double mv;
  if (!comparator(s, w->word[1], &changed) || !number(s, w->word[2], "voltage in millivolts", -1000, 1000, &mv)) {
    return false;
  }
  changed->offset_mv = mv;
  bench_optics_changed(s->bench);
  return true;
}

static bool set_delay(struct scenario *s, const struct words *w) {
  struct comparator *changed;
  double fixed, need;
  if (!comparator(s, w->word[1], &changed) || !number(s, w->word[2], "delay in microseconds", 0, 100, &fixed) ||
      !number(s, w->word[3], "overdrive in microseconds times millivolts", 0, 1e6, &need)) {
    return false;
  }
  changed->fixed_cycles = (cycles_t)(fixed * CYCLES_PER_MICROSECOND + 0.5);
  changed->need = need * CYCLES_PER_MICROSECOND;
  bench_optics_changed(s->bench);
  return true;
}

static bool open_curve(struct scenario *s, const struct words *w) {
  s->open_curve = curve_new(w->word[1]);
  return true;
}

static bool lamp(struct scenario *s, const struct words *w) {
  struct event event = {.deed = DEED_LAMP};
  return moment(s, w->word[1], &event.at) && number(s, w->word[2], "fraction of full light", 0, 10, &event.value) &&
         add(s, event);
}

static bool fire(struct scenario *s, const struct words *w) {
  struct event event = {.deed = DEED_FIRE, .subject = SENSOR_ALL};
  double delay = 0;
  if (!moment(s, w->word[1], &event.at)) {
    return false;
  }
  event.curve = curve_named(s->bench, w->word[2]);
  if (!event.curve) {
    return wrong(s, "there is no curve '%s': write it above, between curve and end-curve", w->word[2]);
  }
  if ((w->count > 3 && !sensor(s, w->word[3], &event.subject)) ||
      (w->count > 4 && !number(s, w->word[4], "delay in microseconds", 0, 1e9, &delay))) {
    return false;
  }
  event.at += (cycles_t)(delay * CYCLES_PER_MICROSECOND * board_clock_rate(&s->bench->clock, event.at) + 0.5);
  return add(s, event);
}

static bool hold(struct scenario *s, const struct words *w) {
  struct event event = {.deed = DEED_HOLD};
  return moment(s, w->word[1], &event.at) && number(s, w->word[2], "opening", 0, 1, &event.value) && add(s, event);
}

static bool set_pin(struct scenario *s, const struct words *w) {
  struct event event = {.deed = DEED_PIN};
  uint64_t level;
  if (!moment(s, w->word[1], &event.at) || !pin(s, w->word[2], &event.subject) ||
      !whole(s, w->word[3], "level", 1, &level)) {
    return false;
  }
  event.level = (int)level;
  return add(s, event);
}

static bool burst(struct scenario *s, const struct words *w) {
  struct event event = {.deed = DEED_BURST};
  uint64_t count;
  if (!moment(s, w->word[1], &event.at) || !pin(s, w->word[2], &event.subject) ||
      !whole(s, w->word[3], "count", 1e9, &count) ||
      !number(s, w->word[4], "spacing in microseconds", 0.0625, 1e9, &event.value)) {
    return false;
  }
  event.size = count;
  event.begun = event.at;
  event.value *= CYCLES_PER_MICROSECOND * board_clock_rate(&s->bench->clock, event.at);
  return count == 0 || add(s, event);
}

/* A ringing that decays exponentially and is over the threshold of its comparator for that long: in each period the pin is
   at 1 while the swing is above the threshold, so pulses get narrower and the gaps between them wider. */
static bool ring(struct scenario *s, const struct words *w) {
  struct event event = {.deed = DEED_RING};
  double hz, milliseconds;
  if (!moment(s, w->word[1], &event.at) || !pin(s, w->word[2], &event.subject) ||
      !number(s, w->word[3], "frequency in hertz", 50, 20000, &hz) ||
      !number(s, w->word[4], "length in milliseconds", 0.1, 10000, &milliseconds)) {
    return false;
  }
  double length = milliseconds / 1000, decay = length / RING_DECAYS;
  double cycles_a_second = CYCLES_PER_SECOND * board_clock_rate(&s->bench->clock, event.at);
  cycles_t begin = event.at;
  double first = 0;
  for (unsigned k = 0;; k++) {
    double height = exp((length - (k + 0.25) / hz) / decay); /* of this swing, the threshold is 1 */
    double passes = height > 1 ? asin(1 / height) / (2 * M_PI) : 0.25;
    double rise = (k + passes) / hz, fall = (k + 0.5 - passes) / hz;
    if (fall - rise < RING_LEAST_SECONDS) {
      return k > 0 || wrong(s, "no swing of that ringing passes the threshold: write a longer one or a higher frequency");
    }
    first = k == 0 ? rise : first;
    event.at = begin + (cycles_t)((rise - first) * cycles_a_second + 0.5);
    event.level = 1;
    add(s, event);
    event.at = begin + (cycles_t)((fall - first) * cycles_a_second + 0.5);
    event.level = -1;
    add(s, event);
  }
}

static bool transmit(struct scenario *s, const struct words *w) {
  struct event event = {.deed = DEED_SEND};
  if (!moment(s, w->word[1], &event.at)) {
    return false;
  }
  size_t length = strlen(w->rest);
  event.bytes = malloc(length + 6);
  memcpy(event.bytes, w->rest, length);
  if (length > 0 && w->rest[length - 1] == '#') {
    char crc[5];
    snprintf(crc, sizeof crc, "%04X", bench_crc16(w->rest, length - 1));
    memcpy(event.bytes + length, crc, 4);
    length += 4;
  }
  event.bytes[length++] = '\n';
  event.size = length;
  return add(s, event);
}

static int hex_digit(char c) {
  return isdigit((unsigned char)c) ? c - '0' : isxdigit((unsigned char)c) ? toupper((unsigned char)c) - 'A' + 10 : -1;
}

static bool raw(struct scenario *s, const struct words *w) {
  struct event event = {.deed = strcmp(w->word[0], "raw") == 0 ? DEED_SEND : DEED_OVERRUN};
  if (!moment(s, w->word[1], &event.at)) {
    return false;
  }
  size_t digits = strlen(w->word[2]);
  unsigned char *bytes = malloc(digits / 2 + 1);
  bool good = digits % 2 == 0;
  for (size_t i = 0; good && i < digits; i += 2) {
    int high = hex_digit(w->word[2][i]), low = hex_digit(w->word[2][i + 1]);
    good = high >= 0 && low >= 0;
    bytes[i / 2] = (unsigned char)(high << 4 | low);
  }
  if (!good) {
    free(bytes);
    return wrong(s, "'%s' are no bytes: write two hexadecimal digits each, without spaces", w->word[2]);
  }
  event.bytes = bytes;
  event.size = digits / 2;
  return add(s, event);
}

static bool preset(struct scenario *s, const struct words *w) {
  struct event event = {.deed = DEED_PRESET};
  char *end;
  if (!moment(s, w->word[1], &event.at)) {
    return false;
  }
  errno = 0;
  event.number = strtoull(w->word[2], &end, 16);
  if (*end || errno || event.number >> 48 || strlen(w->word[2]) != 12) {
    return wrong(s, "'%s' are no ticks: write twelve hexadecimal digits", w->word[2]);
  }
  return add(s, event);
}

static bool corrupt(struct scenario *s, const struct words *w) {
  struct event event = {.deed = DEED_CORRUPT};
  return moment(s, w->word[1], &event.at) && whole(s, w->word[2], "number of lines", 1e9, &event.number) && add(s, event);
}

static bool plain(struct scenario *s, const struct words *w, enum deed deed) {
  struct event event = {.deed = deed};
  return moment(s, w->word[1], &event.at) && add(s, event);
}

static bool unplug(struct scenario *s, const struct words *w) {
  return plain(s, w, DEED_UNPLUG);
}

static bool plug(struct scenario *s, const struct words *w) {
  return plain(s, w, DEED_PLUG);
}

static bool reset(struct scenario *s, const struct words *w) {
  return plain(s, w, DEED_RESET);
}

static bool stall(struct scenario *s, const struct words *w) {
  return plain(s, w, DEED_STALL);
}

static bool end(struct scenario *s, const struct words *w) {
  return plain(s, w, DEED_END);
}

static const struct statement {
  const char *name;
  int least, most; /* words, with the name */
  bool (*read)(struct scenario *s, const struct words *w);
  const char *form;
} statements[] = {
    {"light", 4, 4, set_sensors, "light SENSOR DARK_MV FULL_MV"},
    {"lag", 3, 3, set_sensors, "lag SENSOR MICROSECONDS"},
    {"noise", 4, 4, set_sensors, "noise SENSOR MV_RMS SEED"},
    {"ripple", 3, 3, set_ripple, "ripple HZ DEPTH"},
    {"dimmer", 3, 3, set_dimmer, "dimmer HZ DUTY"},
    {"clock", 3, 3, set_clock, "clock PPM DRIFT_PPM_PER_MINUTE"},
    {"hysteresis", 2, 2, set_hysteresis, "hysteresis MILLIVOLTS"},
    {"bandgap", 2, 2, set_bandgap, "bandgap MILLIVOLTS"},
    {"supply", 2, 2, set_supply, "supply PART"},
    {"offset", 3, 3, set_offset, "offset COMPARATOR MILLIVOLTS"},
    {"delay", 4, 4, set_delay, "delay COMPARATOR FIXED_US OVERDRIVE_US_MV"},
    {"led", 3, 3, set_led, "led SENSOR MILLIVOLTS"},
    {"led-filter", 2, 2, set_led_filter, "led-filter MICROSECONDS"},
    {"curve", 2, 2, open_curve, "curve NAME"},
    {"lamp", 3, 3, lamp, "lamp TIME FRACTION"},
    {"fire", 3, 5, fire, "fire TIME CURVE [SENSOR [DELAY_US]]"},
    {"hold", 3, 3, hold, "hold TIME OPEN"},
    {"pin", 4, 4, set_pin, "pin TIME PIN LEVEL"},
    {"burst", 5, 5, burst, "burst TIME PIN COUNT SPACING_US"},
    {"ring", 5, 5, ring, "ring TIME PIN HZ MILLISECONDS"},
    {"tx", 2, MOST_WORDS, transmit, "tx TIME TEXT"},
    {"raw", 3, 3, raw, "raw TIME HEX"},
    {"overrun", 3, 3, raw, "overrun TIME HEX"},
    {"preset", 3, 3, preset, "preset TIME TICKS48"},
    {"stall", 2, 2, stall, "stall TIME"},
    {"unplug", 2, 2, unplug, "unplug TIME"},
    {"plug", 2, 2, plug, "plug TIME"},
    {"reset", 2, 2, reset, "reset TIME"},
    {"corrupt", 3, 3, corrupt, "corrupt TIME COUNT"},
    {"end", 2, 2, end, "end TIME"},
};

static bool curve_line(struct scenario *s, const struct words *w) {
  struct curve *curve = s->open_curve;
  if (strcmp(w->word[0], "end-curve") == 0) {
    if (curve->count == 0) {
      return wrong(s, "the curve '%s' has no points: write lines MICROSECONDS OPEN before end-curve", curve->name);
    }
    s->open_curve = NULL;
    s->bench->curves = realloc(s->bench->curves, (s->bench->curve_count + 1) * sizeof *s->bench->curves);
    s->bench->curves[s->bench->curve_count++] = curve;
    return true;
  }
  double microseconds, open;
  if (w->count != 2) {
    return wrong(s, "a point of a curve is written MICROSECONDS OPEN; end-curve ends the curve");
  }
  if (!number(s, w->word[0], "time in microseconds", 0, 1e9, &microseconds) ||
      !number(s, w->word[1], "opening", 0, 1, &open)) {
    return false;
  }
  cycles_t after = (cycles_t)(microseconds * CYCLES_PER_MICROSECOND + 0.5);
  if (curve->count && after < curve->knots[curve->count - 1].after) {
    return wrong(s, "the points of a curve must be in the order of time");
  }
  curve_add(curve, after, open);
  return true;
}

/* Cuts the line at spaces. A `tx` line keeps its text as it is, spaces and # included. */
static struct words cut(char *line) {
  struct words w = {.rest = ""};
  char *at = line;
  at[strcspn(at, "\r\n")] = 0;
  for (;;) {
    at += strspn(at, " \t");
    bool text = w.count >= 2 && strcmp(w.word[0], "tx") == 0;
    if (text) {
      w.rest = at;
      return w;
    }
    if (*at == 0 || *at == '#') {
      return w;
    }
    if (w.count == MOST_WORDS) {
      w.count++; /* too many for any statement */
      return w;
    }
    w.word[w.count++] = at;
    at += strcspn(at, " \t#");
    bool comment = *at == '#';
    if (*at) {
      *at++ = 0;
    }
    if (comment) {
      return w;
    }
  }
}

bool scenario_line(struct scenario *s, char *line) {
  struct words w = cut(line);
  if (w.count == 0) {
    return true;
  }
  if (s->open_curve) {
    return curve_line(s, &w);
  }
  for (size_t i = 0; i < sizeof statements / sizeof *statements; i++) {
    const struct statement *statement = &statements[i];
    if (strcmp(statement->name, w.word[0]) == 0) {
      if (w.count < statement->least || w.count > statement->most) {
        return wrong(s, "write it as: %s", statement->form);
      }
      return statement->read(s, &w);
    }
  }
  return wrong(s, "there is no statement '%s': README.md lists those there are", w.word[0]);
}

bool scenario_finished(struct scenario *s) {
  return !s->open_curve || wrong(s, "the curve '%s' is not closed: add end-curve", s->open_curve->name);
}
