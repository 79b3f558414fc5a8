/* One threshold set more finely than its 8-bit PWM can: the PWM takes turns between two neighbouring codes. Main loop only.

   A fine code f stands for f / 4096 of the supply: 16 - n cycles of 16 with the code c, n with c + 1, where
   f = 16 (c + 1) + n. The main loop decides for each stretch of PWM cycles between two of its slices (one to three cycles of
   16 us) and carries on what a stretch got too much or too little, so the mean is exact however uneven the slices are. What
   is left of it behind two filters of 1 ms stays within 0.1 mV to either side (simulated: test_sweep). */
#ifndef FINE_H
#define FINE_H

#include <stdbool.h>
#include <stdint.h>

#define FINE_LEAST 0x0010
#define FINE_MOST 0x0FFF

/* Takes over one threshold; the whole codes of both are kept. */
void fine_start(bool high, uint16_t code);
void fine_set(uint16_t code);
/* One slice while a threshold is taken over. PWM cycles (256 ticks) since the last slice. */
uint8_t fine_tend(void);
/* Puts the codes of before in force again. */
void fine_stop(void);

#endif
