#include "curve.h"
#include "curve_send.h"

#include <stdlib.h>
#include <string.h>

#include "tap.h"

#define LOW 43
#define BEFORE CONFIG_CURVE_BEFORE_BLOCKS
#define OPENING_BLOCKS CONFIG_CURVE_OPENING_BLOCKS
#define AFTER CONFIG_CURVE_AFTER_BLOCKS
#define REST CONFIG_CURVE_REST_BLOCKS
#define MOST_BLOCKS (CURVE_LONGEST_BLOCKS + 2000)
#define READINGS CURVE_BLOCK_READINGS

/* Everything that was fed: block b began at tick b * 4096. */
static uint8_t fed[MOST_BLOCKS][READINGS];
static uint16_t sums[MOST_BLOCKS];
static uint16_t quarters[MOST_BLOCKS][4]; /* sums of four readings */
static uint8_t sensor; /* the centre's, unless a test says otherwise */
static uint32_t blocks;
static uint32_t begun_at; /* block in which a curve began, 0: none */
static uint64_t dice = 20261125;

static uint32_t random_below(uint32_t limit) {
  uint64_t x = dice += 0x9E3779B97F4A7C15u; /* splitmix64, from memory */
  x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9u;
  x = (x ^ (x >> 27)) * 0x94D049BB133111EBu;
  return (uint32_t)((x ^ (x >> 31)) % limit);
}

/* Ten-bit readings between `least` and `most`. */
static void feed(uint16_t least, uint16_t most) {
  uint8_t *room = curve_room();
  uint8_t greatest = 0;
  uint16_t sum = 0;
  uint8_t span = curve_span();
  uint16_t span_sum = 0;
  memset(quarters[blocks], 0, sizeof quarters[blocks]);
  for (int i = 0; i < READINGS; i++) {
    uint16_t reading = (uint16_t)(least + random_below((uint32_t)(most - least) + 1));
    fed[blocks][i] = (uint8_t)(reading >> 2);
    sum = (uint16_t)(sum + reading);
    quarters[blocks][i / 4] = (uint16_t)(quarters[blocks][i / 4] + reading);
    span_sum = (uint16_t)(span_sum + reading);
    if (span != 0 && i % span == span - 1) {
      curve_take_span(span_sum);
      span_sum = 0;
    }
    if (fed[blocks][i] > greatest) greatest = fed[blocks][i];
  }
  if (room) memcpy(room, fed[blocks], READINGS);
  sums[blocks] = sum;
  if (curve_take(greatest, sum, LOW)) {
    begun_at = blocks;
    curve_begun(blocks * CURVE_BLOCK_TICKS, sensor);
  }
  while (curve_halve()) {
  }
  blocks++;
}

static void feed_dark(uint32_t count) {
  for (; count > 0; count--) feed(0, 4 * LOW + 3);
}

/* Dim by turns, but never dark. */
static void feed_light(uint32_t count) {
  for (; count > 0; count--) feed((uint16_t)(4 * LOW + 4 + random_below(400)), 1023);
}

static void begin(void) {
  curve_start();
  blocks = 0;
  begun_at = 0;
}

struct result {
  int lines;
  int parts;
  int flags;       /* of the last part */
  int curve;
  uint32_t first;  /* block */
  uint32_t end;    /* block behind the last */
  bool joined;     /* parts follow each other, indices have no gap */
  bool right;      /* every value */
};

/* Takes all lines of the curve and holds each value against what was fed. */
static struct result take(void) {
  struct result r = {.joined = true, .right = true};
  struct curve_line line;
  uint32_t place = 0, per_value = 0, expected = 0, left = 0;
  int part = 0;
  while (curve_send_next_line(&line)) {
    r.lines++;
    r.curve = line.curve;
    if (line.byte_count == 0) {
      uint32_t block = line.first / CURVE_BLOCK_TICKS;
      r.joined = r.joined && left == 0 && line.part >= part && line.first % CURVE_BLOCK_TICKS == 0;
      if (r.parts++ == 0) {
        r.first = block;
        place = block;
      }
      r.joined = r.joined && block == place && !(r.flags & 1);
      r.flags = line.flags;
      part = line.part;
      per_value = part == 1 ? line.period / CURVE_BLOCK_TICKS : 1;
      r.joined = r.joined && line.period == (part == 1 ? per_value * CURVE_BLOCK_TICKS : CURVE_READING_TICKS);
      left = line.number;
      expected = 0;
      continue;
    }
    r.joined = r.joined && line.number == expected && line.byte_count <= 32;
    if (part == 1) {
      for (int i = 0; i < line.byte_count; i += 2, place += per_value) {
        double sum = 0;
        for (uint32_t b = 0; b < per_value; b++) sum += sums[place + b];
        double off = line.bytes[i] * 256 + line.bytes[i + 1] - sum / per_value;
        if (off > 3 || off < -3) r.right = false;
      }
      expected += line.byte_count / 2;
      left -= line.byte_count / 2;
    } else {
      for (int i = 0; i < line.byte_count; i += READINGS, place++) {
        if (memcmp(line.bytes + i, fed[place], READINGS) != 0) r.right = false;
      }
      expected += line.byte_count;
      left -= line.byte_count;
    }
  }
  r.joined = r.joined && left == 0 && (r.flags & 1);
  r.end = place;
  return r;
}

static void one_length(uint32_t light) {
  begin();
  feed_dark(REST + random_below(50));
  feed_light(light);
  uint32_t dark_from = blocks;
  for (int i = 0; i < 40 && !curve_waiting(); i++) feed_dark(1);
  bool waited = curve_waiting();
  uint32_t window_end = begun_at - BEFORE + OPENING_BLOCKS, dark_end = dark_from + AFTER;
  struct result r = take();
  tap_check(waited && begun_at == dark_from - light && r.joined && r.right && r.flags == 1 && r.first == begun_at - BEFORE &&
                r.end == (dark_end < window_end ? window_end : dark_end) && (dark_end <= window_end) == (r.parts == 1) &&
                !curve_waiting(),
            "%u blocks of light: %d parts in %d lines, from %d blocks before to %u behind", (unsigned)light, r.parts, r.lines,
            BEFORE, (unsigned)(r.end - dark_from));
}

static void lengths(void) {
  static const uint32_t lengths[] = {1, 8, 17, 18, 19, 20, 30, 35, 36, 37, 115, 116, 117, 200, 235, 1000, 3906, 60000};
  for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++) one_length(lengths[i]);
  bool right = true;
  for (int i = 0; i < 300 && right; i++) {
    uint32_t light = 1 + random_below(3000);
    begin();
    feed_dark(REST);
    feed_light(light);
    feed_dark(OPENING_BLOCKS);
    struct result r = take();
    right = r.joined && r.right && r.flags == 1 && r.first == begun_at - BEFORE;
  }
  tap_check(right, "300 random lengths: every value is what was fed, parts join");
}

static void too_long(void) {
  begin();
  feed_dark(REST);
  feed_light(CURVE_LONGEST_BLOCKS + OPENING_BLOCKS - BEFORE + 100);
  struct result r = take();
  tap_check(r.joined && r.right && r.flags == 5, "light without end is cut off after 117 s: %d parts, %u blocks", r.parts,
            (unsigned)(r.end - r.first));
  begun_at = 0;
  feed_light(500);
  tap_check(!begun_at && !curve_waiting(), "and begins no other curve before it was dark");
  feed_dark(REST);
  feed_light(10);
  tap_check(begun_at != 0, "then it does");
}

static void rest(void) {
  begin();
  feed_dark(REST - 1);
  feed_light(1);
  tap_check(!begun_at, "%d blocks of dark are no rest", REST - 1);
  feed_dark(REST);
  feed_light(1);
  tap_check(begun_at != 0, "%d are", REST);
  feed_dark(OPENING_BLOCKS);
  tap_check(curve_waiting() && !curve_room(), "while a curve waits no readings are kept");
  feed_dark(REST);
  struct result r = take();
  tap_check(r.joined && r.right && r.curve == 0, "and it is still what it was");
  begun_at = 0;
  feed_light(1);
  tap_check(!begun_at, "no curve before the window holds what came before");
  feed_dark(REST);
  feed_light(1);
  feed_dark(OPENING_BLOCKS);
  r = take();
  tap_check(r.joined && r.right && r.curve == 1, "the next curve has the next number");
  begun_at = 0;
  feed_dark(BEFORE);
  feed_light(1);
  tap_check(!begun_at, "%d blocks are not enough", BEFORE - 1);
}

struct tail {
  int curve;
  int flags;
  int parts;
  uint32_t window_end; /* block */
  uint32_t end;        /* block behind the last */
  uint32_t period;
  bool right;          /* joined, in order, and every value */
};

/* Takes a long curve: its opening window, then its tail. */
static struct tail take_long(void) {
  struct tail t = {.right = true};
  struct curve_line line;
  uint32_t place = 0, quarter = 0, per_value = 0, left = 0;
  while (curve_send_next_line(&line)) {
    if (line.byte_count == 0) {
      t.right = t.right && left == 0 && line.part == (t.parts++ == 0 ? 0 : 3) && !(t.flags & 1);
      if (line.part == 0) {
        place = line.first / CURVE_BLOCK_TICKS;
      } else {
        t.window_end = place;
        t.right = t.right && line.first == place * CURVE_BLOCK_TICKS;
        quarter = 4 * place;
        per_value = line.period / 1024;
        t.period = line.period;
      }
      t.curve = line.curve;
      t.flags = line.flags;
      left = line.number;
    } else if (t.parts == 1) {
      for (int i = 0; i < line.byte_count; i += READINGS, place++) {
        t.right = t.right && memcmp(line.bytes + i, fed[place], READINGS) == 0;
      }
      left -= line.byte_count;
    } else {
      for (int i = 0; i < line.byte_count; i += 2) {
        long sum = 0;
        for (uint32_t q = 0; q < per_value; q++, quarter++) sum += quarters[quarter / 4][quarter % 4];
        t.right = t.right && line.bytes[i] * 256 + line.bytes[i + 1] == sum * 4 / (long)per_value;
      }
      left -= line.byte_count / 2;
    }
  }
  t.right = t.right && left == 0;
  t.end = quarter / 4;
  return t;
}

static void long_ones(void) {
  static const uint32_t lengths[] = {1, 8, 17, 18, 19, 20, 34, 40, 60};
  for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++) {
    begin();
    curve_ask_long();
    feed_dark(REST + random_below(50));
    feed_light(lengths[i]);
    uint32_t dark_from = blocks;
    for (int b = 0; b < 200 && !curve_waiting(); b++) feed_dark(1);
    struct tail t = take_long();
    bool fits = lengths[i] < OPENING_BLOCKS - BEFORE;
    tap_check(t.right && t.parts == 2 && t.flags == 1 && t.period == (fits ? 1024 : 2048) &&
                  t.window_end == begun_at - BEFORE + OPENING_BLOCKS && t.end == dark_from + CURVE_TAIL_DARK_BLOCKS,
              "long, %u blocks of light: values of %u ticks up to %u blocks behind", (unsigned)lengths[i], (unsigned)t.period,
              (unsigned)(t.end - dark_from));
    feed_dark(REST);
    feed_light(8);
    feed_dark(OPENING_BLOCKS);
    struct result r = take();
    tap_check(r.joined && r.right && r.flags == 1 && r.curve == 1, "the one behind it is an ordinary one");
  }
  begin();
  curve_ask_long();
  feed_dark(REST);
  feed_light(15);
  uint32_t dark_from = blocks;
  feed_dark(14);
  feed_light(5);
  for (int b = 0; b < 200 && !curve_waiting(); b++) feed_dark(1);
  struct tail t = take_long();
  tap_check(t.right && t.flags == 1 && t.end == t.window_end + 52 && t.end - dark_from > 47,
            "a bright rebound: up to %u blocks behind the closing", (unsigned)(t.end - dark_from));
  begin();
  curve_ask_long();
  feed_dark(REST);
  feed_light(500);
  t = take_long();
  tap_check(t.right && t.flags == 5 && t.end == t.window_end + 104, "light without end is cut off after %u blocks",
            (unsigned)(t.end - t.window_end));
  begin();
  curve_ask_long();
  feed_dark(REST);
  feed_light(15);
  feed_dark(20);
  curve_lost();
  feed_dark(REST);
  feed_light(15);
  feed_dark(OPENING_BLOCKS + CURVE_TAIL_DARK_BLOCKS);
  t = take_long();
  tap_check(t.right && t.parts == 2 && t.flags == 1 && t.curve == 1, "readings lost in a long one: the next is long again");
  begin();
  curve_ask_long();
  curve_enable(true);
  feed_dark(REST);
  feed_light(15);
  feed_dark(OPENING_BLOCKS);
  struct result r = take();
  tap_check(r.joined && r.right && r.flags == 1, "switched on anew: no long one is wanted any more");
  begin();
  curve_ask_long();
  feed_dark(REST);
  feed_light(15);
  feed_dark(20);
  curve_suspend();
  t = take_long();
  tap_check(t.right && t.flags == 5 && t.end == blocks, "suspended: cut off, sent, whole");
}

static void ended_early(void) {
  static const uint32_t lengths[] = {3, 40, 300};
  for (size_t i = 0; i < 3; i++) {
    begin();
    feed_dark(REST);
    feed_light(lengths[i]);
    curve_suspend();
    struct result r = take();
    tap_check(r.joined && r.right && (r.flags & 4) && r.end == blocks, "suspended after %u blocks of light: cut off, sent, whole",
              (unsigned)lengths[i]);
    begin();
    feed_dark(REST);
    feed_light(lengths[i]);
    curve_lost();
    tap_check(!curve_waiting(), "readings lost after %u blocks of light: given up", (unsigned)lengths[i]);
    feed_dark(REST);
    feed_light(1);
    feed_dark(OPENING_BLOCKS);
    r = take();
    tap_check(r.joined && r.right && r.flags == 1 && r.curve == 1, "its number is missing");
  }
  begin();
  curve_enable(false);
  feed_dark(REST);
  feed_light(100);
  tap_check(!begun_at && !curve_waiting(), "off: nothing begins");
  curve_enable(true);
  feed_dark(REST);
  feed_light(30);
  curve_enable(false);
  tap_check(begun_at && curve_waiting(), "switched off under way: cut off");
}

static void of_other_sensors(void) {
  for (sensor = 2; sensor <= 3; sensor++) {
    begin();
    feed_dark(REST);
    feed_light(60);
    feed_dark(OPENING_BLOCKS);
    struct result r = take();
    tap_check(r.joined && r.right && r.flags == (sensor << 4 | 1), "a curve of sensor %d says so in every part", sensor);
  }
  sensor = 0;
}

int main(void) {
  printf("# seed %llu\n", (unsigned long long)dice);
  lengths();
  too_long();
  rest();
  long_ones();
  ended_early();
  of_other_sensors();
  return tap_done();
}
