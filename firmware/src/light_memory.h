/* The largest piece of RAM, used by one of two at a time: light blocks that wait for the serial line, or the light curve.
   light.c sees to it that the one is empty before the other begins. */
#ifndef LIGHT_MEMORY_H
#define LIGHT_MEMORY_H

#include "block.h"
#include "config.h"
#include "curve.h"

union light_memory {
  struct packed_block blocks[CONFIG_BLOCK_QUEUE];
  struct curve_memory curve;
};

extern union light_memory light_memory;

#endif
