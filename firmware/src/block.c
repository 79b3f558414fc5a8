#include "block.h"

#include "config.h"

/* Seven bytes instead of eight: the extremes share a byte for their upper two bits. */
struct packed {
  uint16_t index;
  uint16_t sum;
  uint8_t least;
  uint8_t most;
  uint8_t upper; /* most bits 9:8 in bits 5:4, least bits 9:8 in bits 1:0 */
} __attribute__((packed));

static struct packed queue[CONFIG_BLOCK_QUEUE];
static uint8_t first;
static uint8_t waiting;

void block_clear(struct block *block) {
  block->sum = 0;
  block->least = 0x3FF;
  block->most = 0;
}

void block_add(struct block *block, uint16_t reading) {
  block->sum += reading;
  if (reading < block->least) block->least = reading;
  if (reading > block->most) block->most = reading;
}

static uint8_t place_after(uint8_t place, uint8_t steps) {
  place = (uint8_t)(place + steps);
  return place >= CONFIG_BLOCK_QUEUE ? (uint8_t)(place - CONFIG_BLOCK_QUEUE) : place;
}

void block_queue_clear(void) { waiting = 0; }

void block_queue_put(const struct block *block) {
  if (waiting == CONFIG_BLOCK_QUEUE) {
    return;
  }
  struct packed *packed = &queue[place_after(first, waiting)];
  packed->index = block->index;
  packed->sum = block->sum;
  packed->least = (uint8_t)block->least;
  packed->most = (uint8_t)block->most;
  packed->upper = (uint8_t)((block->least >> 8) | (block->most >> 8) << 4);
  waiting++;
}

bool block_queue_waiting(void) { return waiting != 0; }

void block_queue_take(struct block *block) {
  const struct packed *packed = &queue[first];
  block->index = packed->index;
  block->sum = packed->sum;
  block->least = (uint16_t)(packed->least | (packed->upper & 0x0F) << 8);
  block->most = (uint16_t)(packed->most | (packed->upper >> 4) << 8);
  first = place_after(first, 1);
  waiting--;
}
