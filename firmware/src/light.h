/* Light level, light blocks and thresholds read back: one ADC reading every 62.5 us, started by Timer0 in hardware, so its
   moment does not depend on the program. Main loop only. */
#ifndef LIGHT_H
#define LIGHT_H

#include <stdbool.h>
#include <stdint.h>

void light_start(void);
/* One slice of the main loop; must run at least every 50 us or the readings of that slot are given up. */
void light_tend(void);

/* Sum of 16 readings of the centre sensor: the last full millisecond that the ADC gave to it. */
uint16_t light_centre(void);

/* Starts sending `blocks` light blocks of a channel to the block queue; 0 stops. False while thresholds are read. */
bool light_ask_blocks(uint8_t channel, uint16_t blocks);
/* Channel of the blocks in the queue. */
uint8_t light_block_channel(void);

/* Starts reading the thresholds back. False while blocks are being made. */
bool light_ask_thresholds(void);
/* True when both sums are there: 64 readings each. */
bool light_thresholds_ready(void);
uint16_t light_low_threshold(void);
uint16_t light_high_threshold(void);

#endif
