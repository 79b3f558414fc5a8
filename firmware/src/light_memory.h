/* The largest piece of RAM, used by one of two at a time: light blocks that wait for the serial line (block.c), or the light curve
   (curve.c). light.c sees to it that the one is empty before the other begins. */
#ifndef LIGHT_MEMORY_H
#define LIGHT_MEMORY_H

#include <stdint.h>

#include "config.h"

/* A block as it waits in the queue. Seven bytes instead of eight: the extremes share a byte for their upper two bits. */
struct packed_block {
  uint16_t index;
  uint16_t sum;
  uint8_t least;
  uint8_t most;
  uint8_t upper; /* most bits 9:8 in bits 5:4, least bits 9:8 in bits 1:0 */
} __attribute__((packed));

#define CURVE_BLOCK_READINGS 16
#define CURVE_CLOSING_BLOCKS 16
#define CURVE_TAIL_VALUES 208 /* what closing window and plateau leave: 13.3 ms of 64 us, 26.6 ms of 128 us */
#define CURVE_LEVELS 14 /* doublings of a span that CURVE_LONGEST_BLOCKS need, and one more */

struct curve_memory {
  uint8_t opening[CONFIG_CURVE_OPENING_BLOCKS][CURVE_BLOCK_READINGS];
  union {
    struct {
      uint8_t closing[CURVE_CLOSING_BLOCKS][CURVE_BLOCK_READINGS];
      uint16_t closing_sums[CURVE_CLOSING_BLOCKS];
      uint16_t plateau[CONFIG_CURVE_PLATEAU_VALUES]; /* four times a sum of 16 ten-bit readings: halving loses next to nothing */
    };
    uint16_t tail[CURVE_TAIL_VALUES]; /* likewise */
  };
  uint16_t halves[CURVE_LEVELS]; /* [k]: mean of 2^k blocks that waits for its other half, if bit k of a mask says so */
};

union light_memory {
  struct packed_block blocks[CONFIG_BLOCK_QUEUE];
  struct curve_memory curve;
};

extern union light_memory light_memory;

#endif
