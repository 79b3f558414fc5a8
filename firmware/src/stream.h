/* The ADC as a stream of readings: Timer0 starts each conversion in hardware, so its moment does not depend on the program;
   a handler stores the results, the main loop takes them in batches of 16. Main loop only. */
#ifndef STREAM_H
#define STREAM_H

#include <stdbool.h>
#include <stdint.h>

#include "stream_ring.h"

enum stream_rate {
  STREAM_FAST, /* a reading every 256 ticks (62.5 kS/s), ADC clock 1 MHz: eight bits are sure, ten are given */
  STREAM_SLOW  /* a reading every 1000 ticks (16 kS/s), ADC clock 250 kHz: ten bits */
};

/* Ticks from the start of a conversion to its sample at the fast rate: two clocks of the ADC and three of the chip (data
   sheet, ADC timing of an auto-triggered conversion). */
#define STREAM_FAST_SAMPLE_DELAY 35
#define STREAM_FAST_BATCH_TICKS 4096

/* From now on that input of the multiplexer. The first readings are dropped. */
void stream_start(uint8_t channel, enum stream_rate rate);
/* No readings until the next start. */
void stream_stop(void);
/* True when a batch is there. It must be taken within 16 readings. */
bool stream_ready(void);
/* Only when ready: false when readings of this batch were lost, because edges kept the handler from running. */
bool stream_whole(void);
/* The batch: 16 ten-bit readings. */
const uint16_t *stream_batch(void);
/* Timer1 when the first conversion of the batch was started. */
uint16_t stream_begin(void);
/* Done with the batch. */
void stream_next(void);

#endif
