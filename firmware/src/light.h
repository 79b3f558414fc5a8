/* What the ADC's readings are for: the light curve and the light of the centre (62.5 kS/s, the rule), light blocks and
   thresholds read back (16 kS/s, on request). Main loop only. */
#ifndef LIGHT_H
#define LIGHT_H

#include <stdbool.h>
#include <stdint.h>

void light_start(void);
/* One slice of the main loop; must run at least every 200 us or readings are given up. */
void light_tend(void);

/* The next curve is of this sensor, the centre or an outer one; then the centre is watched again. A curve of another sensor that is
   under way is cut off. */
void light_watch(uint8_t channel);

/* Light of the centre sensor, mean of the last full millisecond that the ADC gave to it, as a sum of 16 readings. */
uint16_t light_centre(void);

/* Starts sending `blocks` light blocks of a channel to the block queue; 0 stops. False while thresholds are read.
   Only while no curve waits, after curve_suspend: the queue shares its memory. */
bool light_ask_blocks(uint8_t channel, uint16_t blocks);
/* Channel of the blocks in the queue. */
uint8_t light_block_channel(void);

/* From light_ask_thresholds until light_watch_on, while no blocks are asked for: one millisecond of the centre is read each time that
   the thresholds were, and nothing else. Leaves the main loop quick and the handlers rare. */
void light_watch_once(void);
void light_watch_on(void);

/* Starts reading the thresholds back; a curve under way is cut off. False while blocks are being made. */
bool light_ask_thresholds(void);
/* True when both sums are there: 64 readings each. */
bool light_thresholds_ready(void);
uint16_t light_low_threshold(void);
uint16_t light_high_threshold(void);

#endif
