/* Light blocks: 16 readings of the ADC gathered to a sum and its extremes, and the queue of those that wait for the serial
   line. The queue shares its memory with the light curve (light_memory.h). No AVR header: also compiled by the native tests. Main loop only. */
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

/* As it waits in the queue. Seven bytes instead of eight: the extremes share a byte for their upper two bits. */
struct packed_block {
  uint16_t index;
  uint16_t sum;
  uint8_t least;
  uint8_t most;
  uint8_t upper; /* most bits 9:8 in bits 5:4, least bits 9:8 in bits 1:0 */
} __attribute__((packed));

/* Sum and extremes of 16 ten-bit readings; the index stays. */
void block_gather(struct block *block, const uint16_t *readings);

/* Queue. A block that finds it full is dropped: its index is the gap that the host sees. */
void block_queue_clear(void);
void block_queue_put(const struct block *block);
bool block_queue_waiting(void);
/* The oldest block; only when one is waiting. */
void block_queue_take(struct block *block);

#endif
