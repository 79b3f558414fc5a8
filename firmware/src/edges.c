#include "edges.h"

#include "board.h"
#include "config.h"

static uint8_t told_levels; /* after the edges given so far */

static uint8_t snapshot_levels; /* of the newest snapshot taken */
static uint8_t snapshot_changed; /* channels of the one in hand still to be told; 0: hand empty */
static uint32_t snapshot_ticks32;
static uint32_t snapshot_floor;

static bool capture_held;
static uint8_t capture_level;
static uint32_t capture_ticks32;
static uint32_t capture_floor;

static bool knob_held;
static bool knob_touched; /* as told, or as held */
static bool knob_rests;
static bool knob_is_next; /* before all that is in the hands */
static uint8_t knob_halves; /* half count, low byte, of its last edge */
static uint32_t knob_ticks32;

void edges_start(uint8_t levels, uint32_t halves) {
  told_levels = levels;
  snapshot_levels = levels & SNAPSHOT_CHANNELS_MASK;
  snapshot_changed = 0;
  capture_level = levels & 1;
  capture_held = false;
  knob_touched = levels >> CHANNEL_KNOB & 1;
  knob_held = false;
  knob_rests = false;
  knob_is_next = false;
  snapshot_floor = halves;
  capture_floor = halves;
}

void edges_no_snapshot(uint32_t halves) { snapshot_floor = halves; }
void edges_no_capture(uint32_t halves) { capture_floor = halves; }
bool edges_wants_snapshot(void) { return snapshot_changed == 0; }
bool edges_wants_capture(void) { return !capture_held; }
bool edges_waiting(void) { return snapshot_changed != 0 || capture_held || knob_is_next; }
uint8_t edges_levels(void) { return told_levels; }

static uint16_t count_of(struct entry entry) { return (uint16_t)(entry.bytes[1] << 8 | entry.bytes[0]); }

void edges_take_snapshot(struct entry entry) {
  uint16_t count = (uint16_t)(entry.bytes[2] << 8 | entry.bytes[1]);
  bool release_pin = entry.bytes[3] & (1 << SNAPSHOT_RELEASE_BIT);
  uint8_t levels = board_levels(entry.bytes[0], release_pin);
  snapshot_floor = ticks_halves(entry.bytes[3] & 0x7F, count, snapshot_floor);
  snapshot_ticks32 = ticks_low32(ticks_less(ticks_of(snapshot_floor, count), CONFIG_SNAPSHOT_LATENCY_TICKS));
  snapshot_changed = levels ^ snapshot_levels;
  snapshot_levels = levels;
}

void edges_take_capture(struct entry entry) {
  uint16_t count = count_of(entry);
  capture_floor = ticks_halves(entry.bytes[2] & 0x7F, count, capture_floor);
  if (entry.bytes[3] == CAPTURE_MARK) {
    return;
  }
  uint8_t level = (entry.bytes[3] >> CAPTURE_RISING_BIT & 1) ^ BOARD_CAPTURE_TURNED;
  capture_held = level != capture_level;
  capture_level = level;
  capture_ticks32 = ticks_low32(ticks_of(capture_floor, count));
}

bool edges_wants_knob(bool touched, uint8_t halves) {
  if (knob_rests && (uint8_t)(halves - knob_halves) >= CONFIG_KNOB_REST_HALVES) {
    knob_rests = false;
  }
  return touched != knob_touched && !knob_held && !knob_rests;
}

void edges_take_knob(bool touched, uint32_t ticks32) {
  knob_touched = touched;
  knob_ticks32 = ticks32;
  knob_halves = (uint8_t)(ticks32 >> 15);
  knob_held = true;
  knob_rests = true;
}

static void next_snapshot_edge(struct edge *edge) {
  uint8_t channel = 0;
  uint8_t bit = 1;
  while (!(snapshot_changed & bit)) {
    channel++;
    bit <<= 1;
  }
  snapshot_changed &= (uint8_t)~bit;
  edge->channel = channel;
  edge->level = (snapshot_levels & bit) != 0;
  edge->ticks32 = snapshot_ticks32;
  told_levels ^= bit;
}

static void next_capture_edge(struct edge *edge) {
  capture_held = false;
  edge->channel = CHANNEL_CENTRE_LOW;
  edge->level = capture_level;
  edge->ticks32 = capture_ticks32;
  told_levels ^= 1 << CHANNEL_CENTRE_LOW;
}

static void next_knob_edge(struct edge *edge) {
  knob_held = false;
  knob_is_next = false;
  edge->channel = CHANNEL_KNOB;
  edge->level = knob_touched;
  edge->ticks32 = knob_ticks32;
  told_levels ^= 1 << CHANNEL_KNOB;
}

/* By the sign of the difference, which holds across the 32-bit wrap. */
static bool capture_is_next(void) {
  return snapshot_changed == 0 || (capture_held && (int32_t)(capture_ticks32 - snapshot_ticks32) <= 0);
}

static uint32_t ring_ticks32(void) { return capture_is_next() ? capture_ticks32 : snapshot_ticks32; }

void edges_place_knob(bool others_may_be_earlier) {
  knob_is_next = knob_held && !others_may_be_earlier &&
                 ((snapshot_changed == 0 && !capture_held) || (int32_t)(knob_ticks32 - ring_ticks32()) < 0);
}

uint32_t edges_next_ticks32(void) { return knob_is_next ? knob_ticks32 : ring_ticks32(); }

void edges_next(struct edge *edge) {
  if (knob_is_next) {
    next_knob_edge(edge);
  } else if (capture_is_next()) {
    next_capture_edge(edge);
  } else {
    next_snapshot_edge(edge);
  }
}
