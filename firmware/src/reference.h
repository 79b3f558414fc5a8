/* The reference LED: light of exactly known duration. Timer1 itself switches the pin, so the ticks of both ends are known
   whatever the program does meanwhile; the program only arms each switching in the last wrap of the timer before it is due.
   Two drives: square (D9), and ramped (D10, through a low-pass filter outside the chip). Main loop only. */
#ifndef REFERENCE_H
#define REFERENCE_H

#include <stdbool.h>
#include <stdint.h>

/* KIND of the command `r`. */
enum reference_kind { REFERENCE_OFF = 0, REFERENCE_SQUARE = 1, REFERENCE_RAMPED = 2, REFERENCE_STEADY = 3 };

#define REFERENCE_LEAST_TICKS 0x00000640UL /* 100 us */
#define REFERENCE_MOST_TICKS 0x01E84800UL  /* 2 s */

/* A pulse that is over. `end - begin` is the width asked for; longer, and still exact, when a flood of edges kept the main
   loop from arming the end in time. */
struct reference_pulse {
  uint16_t index;
  uint8_t kind;
  uint32_t begin; /* low 32 bits of the tick at which the timer switched the pin on */
  uint32_t end;
};

/* Carries out the command `r`; what was under way before ends at once, without a pulse being told. */
void reference_ask(uint8_t kind, uint32_t width_ticks, uint16_t count);
/* LED off, both drives. */
void reference_off(void);

bool reference_pulse_waiting(void);
/* The pulse that waits; only when one does. */
const struct reference_pulse *reference_pulse(void);
/* It was told: plans the next one. */
void reference_told(void);

extern uint8_t reference_state; /* 0: nothing to do */
void reference_go_on(void);
/* One slice of the main loop. Must run at least every 1000 cycles, or the end of a pulse of 100 us comes late. */
static inline void reference_tend(void) {
  if (reference_state != 0) {
    reference_go_on();
  }
}

#endif
