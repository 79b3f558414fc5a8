#include "edges.h"

#include "board.h"
#include "config.h"
#include "tap.h"

/* Pins with nothing closed or pressed: contact and release are high. */
#define REST_D (1 << BOARD_CONTACT_BIT)
#define UART_AND_PWM_BITS 0x0B

static struct edge edge;

static void snapshot(uint8_t pind, bool released, uint64_t ticks) {
  ticks += CONFIG_SNAPSHOT_LATENCY_TICKS;
  struct entry entry = {{pind, (uint8_t)ticks, (uint8_t)(ticks >> 8),
                         (uint8_t)((ticks >> 15 & 0x7F) | (released ? 0x80 : 0))}};
  edges_take_snapshot(entry);
}

static void capture(bool level, uint64_t ticks) {
  struct entry entry = {{(uint8_t)ticks, (uint8_t)(ticks >> 8), ticks >> 15 & 0x7F, level ? 0x41 : 0x01}};
  edges_take_capture(entry);
}

static bool next_is(uint8_t channel, uint8_t level, uint32_t ticks32) {
  if (!edges_waiting()) return false;
  edges_next(&edge);
  return edge.channel == channel && edge.level == level && edge.ticks32 == ticks32;
}

static void each_pin(void) {
  static const struct {
    uint8_t channel, pind;
    bool released;
    const char *name;
  } pins[] = {{CHANNEL_CENTRE_HIGH, REST_D | 1 << 6, true, "D6 high: light at the high level"},
              {CHANNEL_OUTER_A, REST_D | 1 << 4, true, "D4 high: light at outer sensor A"},
              {CHANNEL_OUTER_B, REST_D | 1 << 5, true, "D5 high: light at outer sensor B"},
              {CHANNEL_CONTACT, 0, true, "D7 low: contact closed"},
              {CHANNEL_CLICK, REST_D | 1 << 2, true, "D2 high: sound"},
              {CHANNEL_RELEASE, REST_D, false, "D12 low: release pressed"}};
  uint64_t now = 100000;
  for (size_t i = 0; i < sizeof pins / sizeof *pins; i++) {
    edges_no_snapshot((uint32_t)(now >> 15));
    snapshot(pins[i].pind, pins[i].released, now);
    bool up = next_is(pins[i].channel, 1, (uint32_t)now) && edges_levels() == 1 << pins[i].channel;
    snapshot(REST_D, true, now + 500);
    bool down = next_is(pins[i].channel, 0, (uint32_t)now + 500) && edges_levels() == 0;
    tap_check(up && down && !edges_waiting(), "%s", pins[i].name);
    now += 40000;
  }
}

static void order(void) {
  edges_start(0, 0);
  snapshot(REST_D | 1 << 6, true, 2000);
  capture(true, 1990);
  bool right = next_is(CHANNEL_CENTRE_LOW, 1, 1990);
  right = right && !edges_wants_snapshot() && edges_wants_capture() && next_is(CHANNEL_CENTRE_HIGH, 1, 2000);
  tap_check(right, "a capture before a snapshot goes first");
  snapshot(REST_D, true, 3000);
  capture(false, 3010);
  tap_check(next_is(CHANNEL_CENTRE_HIGH, 0, 3000) && next_is(CHANNEL_CENTRE_LOW, 0, 3010),
            "a capture after a snapshot goes second");
  edges_start(0, 0x1FFFF);
  snapshot(REST_D | 1 << 6, true, 0xFFFFFFF0);
  capture(true, 0x100000010);
  tap_check(next_is(CHANNEL_CENTRE_HIGH, 1, 0xFFFFFFF0) && next_is(CHANNEL_CENTRE_LOW, 1, 0x10),
            "the order holds across the 32-bit wrap");
  edges_start(0, 0);
  snapshot(REST_D | 1 << 6 | 1 << 4 | 1 << 2, true, 5000);
  tap_check(next_is(1, 1, 5000) && next_is(2, 1, 5000) && next_is(5, 1, 5000) && !edges_waiting(),
            "channels of one snapshot share its time");
}

static void nothing_new(void) {
  edges_start(0, 0);
  snapshot(REST_D, true, 100);
  tap_check(!edges_waiting(), "a snapshot without a change is no edge");
  snapshot(REST_D | UART_AND_PWM_BITS, true, 200);
  tap_check(!edges_waiting(), "serial line and PWM are no edges");
  capture(false, 300);
  tap_check(!edges_waiting(), "a capture of the level that is known is no edge");
}

/* Six edges of each of 64 snapshots take half a second to send: marks keep neighbours less than 127 halves apart. */
static void old_entries(void) {
  edges_start(0, 0);
  snapshot(REST_D | 1 << 6, true, 1000);
  bool right = next_is(1, 1, 1000);
  uint64_t now = 1000;
  for (int i = 0; i < 10; i++) {
    now += 64ull << 15;
    snapshot(REST_D | 1 << 6, true, now);
    struct entry mark = {{(uint8_t)now, (uint8_t)(now >> 8), now >> 15 & 0x7F, CAPTURE_MARK}};
    edges_take_capture(mark);
    right = right && !edges_waiting();
  }
  snapshot(REST_D, true, now + 100000);
  capture(true, now + 100001);
  right = right && next_is(1, 0, (uint32_t)now + 100000) && next_is(0, 1, (uint32_t)now + 100001);
  tap_check(right, "marks carry the half count over long waits");
}

/* The knob contact comes by no ring: one edge in hand, which goes in order of time among the others. */
static void knob_in_order(void) {
  uint8_t halves = 10;
  uint32_t now = (uint32_t)halves << 15;
  edges_start(0, halves);
  tap_check(!edges_wants_knob(false, halves) && edges_wants_knob(true, halves), "knob contact: only another level is an edge");
  edges_take_knob(true, now + 1000);
  snapshot(REST_D | 1 << 6, true, now + 900);
  capture(true, now + 1100);
  edges_place_knob(false);
  bool right = !edges_wants_knob(false, halves) && edges_next_ticks32() == now + 900 &&
               next_is(CHANNEL_CENTRE_HIGH, 1, now + 900);
  edges_place_knob(false);
  right = right && edges_next_ticks32() == now + 1000 &&
               next_is(CHANNEL_KNOB, 1, now + 1000) && edges_levels() == 0x82 && next_is(CHANNEL_CENTRE_LOW, 1, now + 1100);
  tap_check(right && !edges_waiting() && edges_levels() == 0x83, "knob contact: its edge goes in order of time among the others");
}

/* A foil that chatters: after an edge the contact is not looked at for a while, whatever it does. */
static void knob_rests(void) {
  uint8_t halves = 254; /* the low byte of the half count wraps meanwhile */
  edges_start(0, halves);
  edges_take_knob(true, (uint32_t)halves << 15);
  edges_place_knob(false);
  bool right = next_is(CHANNEL_KNOB, 1, (uint32_t)halves << 15);
  for (uint8_t i = 0; i < CONFIG_KNOB_REST_HALVES; i++) {
    right = right && !edges_wants_knob(false, (uint8_t)(halves + i));
  }
  right = right && edges_wants_knob(false, (uint8_t)(halves + CONFIG_KNOB_REST_HALVES));
  tap_check(right, "knob contact: it rests for %d half periods after an edge", CONFIG_KNOB_REST_HALVES);
  /* rested once, it stays so, whatever the low byte of the half count goes through */
  right = edges_wants_knob(false, halves);
  tap_check(right, "knob contact: a rest that is over does not begin again by itself");
}

static void knob_stands_back(void) {
  edges_start(1 << CHANNEL_KNOB, 0);
  edges_take_knob(false, 5000);
  edges_place_knob(true);
  bool right = !edges_waiting();
  snapshot(REST_D | 1 << 6, true, 4000);
  right = right && next_is(CHANNEL_CENTRE_HIGH, 1, 4000) && !edges_waiting();
  edges_place_knob(false);
  right = right && next_is(CHANNEL_KNOB, 0, 5000) && edges_levels() == 1 << CHANNEL_CENTRE_HIGH;
  tap_check(right, "knob contact: its edge stands back while a ring may hold earlier ones");
}

int main(void) {
  edges_start(0, 100000 >> 15);
  each_pin();
  order();
  nothing_new();
  old_entries();
  knob_in_order();
  knob_rests();
  knob_stands_back();
  edges_start(0x7F, 0);
  capture(false, 700);
  tap_check(next_is(0, 0, 700) && edges_levels() == 0x7E, "levels at the start are taken as known");
  return tap_done();
}
