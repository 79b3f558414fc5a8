#include "block.h"

#include "config.h"
#include "light_memory.h"

static uint8_t first;
static uint8_t waiting;

void block_gather(struct block *block, const uint16_t *readings) {
  uint16_t sum = 0;
  uint16_t least = 0x3FF;
  uint16_t most = 0;
  for (uint8_t i = BLOCK_READINGS; i > 0; i--) {
    uint16_t reading = *readings++;
    sum += reading;
    if (reading < least) least = reading;
    if (reading > most) most = reading;
  }
  block->sum = sum;
  block->least = least;
  block->most = most;
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
  struct packed_block *packed = &light_memory.blocks[place_after(first, waiting)];
  packed->index = block->index;
  packed->sum = block->sum;
  packed->least = (uint8_t)block->least;
  packed->most = (uint8_t)block->most;
  packed->upper = (uint8_t)((block->least >> 8) | (block->most >> 8) << 4);
  waiting++;
}

bool block_queue_waiting(void) { return waiting != 0; }

void block_queue_take(struct block *block) {
  const struct packed_block *packed = &light_memory.blocks[first];
  block->index = packed->index;
  block->sum = packed->sum;
  block->least = (uint16_t)(packed->least | (packed->upper & 0x0F) << 8);
  block->most = (uint16_t)(packed->most | (packed->upper >> 4) << 8);
  first = place_after(first, 1);
  waiting--;
}
