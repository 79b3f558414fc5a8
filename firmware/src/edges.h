/* Turns ring entries into edges in order of time: snapshots are compared with the one before, captures carry their own
   level. Holds one entry of each ring in hand, and one edge of the knob contact, which is in no ring. No AVR header: also compiled
   by the native tests. Main loop only. */
#ifndef EDGES_H
#define EDGES_H

#include <stdbool.h>
#include <stdint.h>

#include "ticks.h"

/* A ring entry as the handlers in capture_isr.S store it. */
struct entry {
  uint8_t bytes[4];
};
/* Snapshot: PIND, TCNT1L, TCNT1H, half count with the release pin in bit 7. */
#define SNAPSHOT_RELEASE_BIT 7
/* Capture: ICR1L, ICR1H, half count, TCCR1B (ICES1 tells the edge), or CAPTURE_MARK in its place. */
#define CAPTURE_RISING_BIT 6
#define CAPTURE_MARK 0x00 /* impossible for TCCR1B while the timer runs: time passed, no edge */

struct edge {
  uint8_t channel;
  uint8_t level;
  uint32_t ticks32;
};

/* `levels`: channel mask at the start, of which no edge will tell. `halves`: half count now. */
void edges_start(uint8_t levels, uint32_t halves);

/* A ring was seen empty at this half count: whatever is stored in it from now on is no earlier. */
void edges_no_snapshot(uint32_t halves);
void edges_no_capture(uint32_t halves);

bool edges_wants_snapshot(void);
bool edges_wants_capture(void);
/* Only when wanted. Entries without a change leave the hand empty. */
void edges_take_snapshot(struct entry entry);
void edges_take_capture(struct entry entry);

/* Whether an edge of the knob contact is to be taken: its level is another one than was told, none is in hand, and it has
   rested since the last one. `halves`: half count now, low byte. To be asked in every round, or a rest may seem not to end. */
bool edges_wants_knob(bool touched, uint8_t halves);
/* Only when wanted. */
void edges_take_knob(bool touched, uint32_t ticks32);
/* Puts the edge of the knob contact before or behind what is in the hands; to be called when these are filled, before the next
   edge is asked for. It waits where a ring holds entries that may be earlier while the hand for them is empty. */
void edges_place_knob(bool others_may_be_earlier);

bool edges_waiting(void);
/* The earliest edge in hand; only when one is waiting. */
void edges_next(struct edge *edge);
/* Its ticks, likewise. */
uint32_t edges_next_ticks32(void);
/* Levels after the last edge that edges_next gave. */
uint8_t edges_levels(void);

#endif
