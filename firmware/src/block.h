/* Light blocks: 16 readings of the ADC gathered to a sum and its extremes, and the queue of those that wait for the serial
   line. The queue is in light_memory.h. No AVR header: also compiled by the native tests. Main loop only. */
#ifndef BLOCK_H
#define BLOCK_H

#include <stdbool.h>
#include <stdint.h>

#define BLOCK_READINGS 16

struct block {
  uint16_t index;
  uint16_t sum; /* of 16 ten-bit readings, 0 to 3FF0 */
  uint16_t least;
  uint16_t most;
};

/* Sum and extremes of 16 ten-bit readings; the index stays. */
void block_gather(struct block *block, const uint16_t *readings);

/* Queue. A block that finds it full is dropped: its index is the gap that the host sees. */
void block_queue_clear(void);
void block_queue_put(const struct block *block);
bool block_queue_waiting(void);
/* The oldest block; only when one is waiting. */
void block_queue_take(struct block *block);

#endif
