/* Trip points: steps the fine threshold of one comparator through steady light, up and back down, and finds where the
   comparator switches. Main loop only. */
#ifndef SWEEP_H
#define SWEEP_H

#include <stdbool.h>
#include <stdint.h>

#define SWEEP_MOST_STEPS 0x0200

struct trip {
  uint8_t channel;
  uint8_t rising; /* 1: the threshold was rising, 0: falling */
  uint16_t code;  /* fine code at the switch; 0: it did not switch on this way */
  uint16_t level; /* that threshold read back, sum of 64 readings */
  uint16_t light; /* of the centre, sum of 16 */
};

/* Starts a sweep for the command of that sequence number. False while one is under way or the converter is wanted. */
bool sweep_ask(uint8_t channel, uint16_t from, uint16_t to, uint16_t command_seq);

extern uint8_t sweep_state; /* 0: nothing to do */
static inline bool sweep_running(void) { return sweep_state != 0; }
void sweep_go_on(void);
/* One slice of the main loop, 250 cycles at most. */
static inline void sweep_tend(void) {
  if (sweep_state != 0) {
    sweep_go_on();
  }
}

bool sweep_trip_waiting(void);
/* The trip point that waits; only when one does. */
const struct trip *sweep_trip(void);
/* It was told: the sweep goes on. */
void sweep_trip_told(void);

/* The sweep is over and its command waits for the answer. */
bool sweep_over(void);
uint16_t sweep_command_seq(void);
void sweep_answered(void);

#endif
