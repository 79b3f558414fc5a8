#include "capture.h"

#include <avr/interrupt.h>
#include <avr/io.h>

#include "board.h"
#include "config.h"
#include "edges.h"
#include "ring.h"
#include "ringing.h"
#include "status.h"
#include "timebase.h"

/* Halves after which an entry is put into a ring that is still not empty, so that no two neighbours in it are more than
   127 halves apart and ticks_halves can tell them (64 snapshots of six edges each take half a second to send). */
#define MARK_HALVES 64

/* Both in capture_isr.S, on 256-byte boundaries. Written by the handlers only (and by push_capture while the capture
   interrupt is off); slots from the read offset up to the write offset are the main loop's. */
extern struct entry snapshot_ring[RING_BYTES / RING_ENTRY];
extern struct entry capture_ring[RING_BYTES / RING_ENTRY];

volatile uint8_t capture_write;       /* written by the capture handler */
volatile uint8_t capture_read_offset; /* written by the main loop */
static uint8_t snapshot_mark; /* half count, low byte, when the ring was last empty or marked */
static uint8_t capture_mark;

static void enable_snapshots(void) {
  PCIFR = 1 << PCIF0 | 1 << PCIF2;
  PCICR = 1 << PCIE0 | 1 << PCIE2;
}

/* The state of the pins now, through the handler itself. Interrupts are off for its 40 cycles, as in any snapshot. */
static void snapshot_now(void) { __asm__ volatile("cli\n\tcall capture_snapshot_now" ::: "memory"); }

/* Only while the capture interrupt is off. False when the ring is full. */
static bool push_capture(uint8_t kind) {
  uint8_t write = capture_write;
  if (ring_full(write, capture_read_offset)) {
    return false;
  }
  uint16_t count = timebase_count();
  struct entry entry = {{(uint8_t)count, (uint8_t)(count >> 8), GPIOR1, kind}};
  capture_ring[write >> 2] = entry;
  capture_write = ring_after(write);
  return true;
}

/* Arms the edge away from the level that the pin has now, and gives that level. */
static bool arm_capture(void) {
  bool level;
  do {
    level = board_capture_pin();
    TCCR1B = level ? 1 << CS10 : 1 << ICES1 | 1 << CS10;
    TIFR1 = 1 << ICF1;
  } while (board_capture_pin() != level);
  return level;
}

/* As it stands in an entry. */
static uint8_t kind_of(bool level) { return level ? 1 << ICES1 | 1 << CS10 : 1 << CS10; }

/* Arms it, and puts the level into the ring; it is an edge only if the host has not heard of it. */
static void resume_captures(void) {
  push_capture(kind_of(arm_capture()));
  TIMSK1 = 1 << ICIE1;
}

/* The starter rig's comparator has no hysteresis: where light creeps past its level, it chatters for longer than the handler lets the
   main loop run. So the handler takes one edge and leaves the rest to this. Behind more entries than CONFIG_RINGING_WAITING no edge
   is armed; what the level has become meanwhile is told afterwards. */
static void rearm_captures(uint8_t read) {
  uint8_t write = capture_write;
  if ((TIMSK1 & (1 << ICIE1)) || ring_waiting(write, read) > CONFIG_RINGING_WAITING) {
    return;
  }
  uint8_t level = kind_of(arm_capture());
  if (level != capture_ring[(uint8_t)(write - RING_ENTRY) >> 2].bytes[3]) {
    push_capture(level); /* it does not stand where the last edge led to */
  }
  TIMSK1 = 1 << ICIE1;
}

void capture_start(void) {
  PCMSK0 = BOARD_PORTB_MASK;
  PCMSK2 = BOARD_PORTD_MASK;
  GPIOR0 = 0;
  GPIOR2 = 0;
  edges_start(board_knob_touched() ? board_all_levels() | 1 << CHANNEL_KNOB : board_all_levels(), timebase_halves);
  enable_snapshots();
  snapshot_now();
  resume_captures();
}

/* Takes the two middle ones of the last four entries out where they are ringing. The handler may store another one at any
   moment; only if it has not can the end of the ring be moved. */
static void thin_ringing(uint8_t read) {
  uint8_t write = GPIOR0;
  if (ring_waiting(write, read) < CONFIG_RINGING_WAITING) {
    return;
  }
  uint8_t slot = write >> 2;
  struct entry *second = &snapshot_ring[(uint8_t)(slot - 3) & RING_CAPACITY];
  const struct entry *last = &snapshot_ring[(uint8_t)(slot - 1) & RING_CAPACITY];
  if (!ringing_covers(&snapshot_ring[(uint8_t)(slot - 4) & RING_CAPACITY], second,
                      &snapshot_ring[(uint8_t)(slot - 2) & RING_CAPACITY], last)) {
    return;
  }
  struct entry kept = *last;
  uint8_t end = (uint8_t)(write - 2 * RING_ENTRY);
  bool moved;
  cli();
  moved = GPIOR0 == write;
  if (moved) {
    GPIOR0 = end;
  }
  sei();
  if (moved) {
    *second = kept;
  }
}

static void tend_snapshots(uint8_t halves) {
  static bool flooded;
  uint8_t read = GPIOR2;
  uint8_t write = GPIOR0;
  if (!ring_sound(write, read)) {
    status_stop(STOP_RING_DAMAGED);
  }
  if (PCICR == 0 && !flooded) {
    flooded = true;
    status_count_snapshot_flood();
  }
  if (write == read) {
    if (halves != snapshot_mark) {
      snapshot_mark = halves;
      edges_no_snapshot(timebase_halves);
    }
    if (flooded) {
      flooded = false;
      enable_snapshots();
      snapshot_now();
    }
    return;
  }
  if (!flooded) {
    /* twice, as edges 50 us apart come faster than the rounds of the main loop */
    thin_ringing(read);
    thin_ringing(read);
  }
  if (edges_wants_snapshot()) {
    struct entry entry = snapshot_ring[read >> 2];
    GPIOR2 = ring_after(read);
    edges_take_snapshot(entry);
  }
  if ((uint8_t)(halves - snapshot_mark) >= MARK_HALVES && !flooded) {
    snapshot_mark = halves;
    snapshot_now();
  }
}

static void tend_captures(uint8_t halves) {
  static bool flooded;
  uint8_t read = capture_read_offset;
  uint8_t write = capture_write;
  if (!ring_sound(write, read)) {
    status_stop(STOP_RING_DAMAGED);
  }
  if (CONFIG_STARTER_RIG) {
    rearm_captures(read);
    write = capture_write;
  } else if (!(TIMSK1 & (1 << ICIE1)) && !flooded) {
    flooded = true;
    status_count_capture_flood();
  }
  if (write == read) {
    if (halves != capture_mark) {
      capture_mark = halves;
      edges_no_capture(timebase_halves);
    }
    if (flooded) {
      flooded = false;
      resume_captures();
    }
    return;
  }
  if (edges_wants_capture()) {
    struct entry entry = capture_ring[read >> 2];
    capture_read_offset = ring_after(read);
    edges_take_capture(entry);
  }
  if ((uint8_t)(halves - capture_mark) >= MARK_HALVES && !flooded) {
    uint8_t on = CONFIG_STARTER_RIG ? TIMSK1 : 1 << ICIE1;
    capture_mark = halves;
    TIMSK1 = 0;
    push_capture(CAPTURE_MARK);
    TIMSK1 = on;
  }
}

void capture_tend(void) {
  uint8_t halves = (uint8_t)timebase_halves;
  tend_snapshots(halves);
  tend_captures(halves);
}

void capture_tend_knob(void) {
  bool touched = board_knob_touched();
  if (edges_wants_knob(touched, (uint8_t)timebase_halves)) {
    edges_take_knob(touched, timebase_now32());
  }
  edges_place_knob((GPIOR0 != GPIOR2 && edges_wants_snapshot()) ||
                   (capture_write != capture_read_offset && edges_wants_capture()));
}

bool capture_quiet(void) {
  bool armed = !CONFIG_STARTER_RIG || (TIMSK1 & (1 << ICIE1)); /* or the level may have changed unseen */
  return armed && GPIOR0 == GPIOR2 && capture_write == capture_read_offset && !edges_waiting();
}
