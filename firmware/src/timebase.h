/* The clock of everything: Timer1 at 16 MHz, widened by counting its half periods in the main loop. No overflow interrupt:
   it would delay edges every 4 ms. */
#ifndef TIMEBASE_H
#define TIMEBASE_H

#include <stdint.h>

#include "ticks.h"

/* Half periods of Timer1 (32768 ticks, 2.048 ms) since the start. Ticks are `timebase_halves << 15 | (TCNT1 & 0x7FFF)`,
   where one half may not be counted yet: then the lowest bit here differs from bit 15 of TCNT1.
   Written by the main loop; a debugger or a test bench may set it together with TCNT1. */
extern volatile uint32_t timebase_halves;

void timebase_start(void);
/* One slice of the main loop; must run at least once every half period. Kicks the watchdog when a half period is over, so
   that a clock that stands still ends in a restart. */
void timebase_tend(void);
/* Timer1, safe against the snapshot handler, which overwrites the timer's TEMP register. */
uint16_t timebase_count(void);
/* Now, 48 bits, never a half period behind. Main loop only. */
void timebase_now(struct ticks *now);
/* The same, low 32 bits. */
uint32_t timebase_now32(void);

#endif
