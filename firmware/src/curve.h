/* The light of one opening, kept until it is sent (curve_send.h): readings of a window around the opening, means over spans of equal
   length on the plateau, readings of a window around the closing. Works in blocks of 16 readings. No AVR header: also
   compiled by the native tests. Main loop only.

   Readings go round in the opening window until one is above the low threshold; then the window is filled up and kept. If
   it is dark by then, that is the whole curve. Otherwise readings go round in the closing window until it is dark again,
   and the mean of each block that is overwritten there goes to the plateau. When the plateau is full, its values are
   averaged two by two and its spans are twice as long. So no reading is in two parts, and none is missing between them.

   A long curve, taken once for each time that it is asked for, looks for a rebound of the blades. Behind its opening window
   stand means over spans of 64 us, or of 128 us where it is still light, until it has been dark for 12.3 ms. They take the
   memory of closing window and plateau. */
#ifndef CURVE_H
#define CURVE_H

#include <stdbool.h>
#include <stdint.h>

#include "light_memory.h"

#define CURVE_BLOCK_TICKS 4096
#define CURVE_READING_TICKS 256
#define CURVE_TAIL_DARK_BLOCKS 48
/* 117 s: what is older than 2^31 ticks could not be told by 32 bits. */
#define CURVE_LONGEST_BLOCKS 0x70000

/* A curve whose values are in light_memory.curve. */
struct curve {
  uint8_t number;
  uint8_t channel; /* the sensor whose light it is */
  bool is_long;
  bool cut_off;
  uint8_t opening_first; /* block where the opening window begins */
  uint8_t filled;        /* blocks of the opening window that count */
  uint8_t level;         /* a value of the plateau is the mean of 2^level blocks */
  uint8_t values;        /* on the plateau, or of the tail */
  uint8_t span;          /* readings of a value of the tail: 4 or 8 */
  uint16_t waiting;      /* bit k: halves[k] waits */
  uint32_t closing;      /* blocks that went into the closing window */
  uint32_t first;        /* tick of the first reading */
};

/* Curves on. */
void curve_start(void);
/* Off: none is begun, one under way is cut off. */
void curve_enable(bool on);

/* The next curve is a long one; curve_enable forgets that. */
void curve_ask_long(void);

/* Where the 16 eight-bit readings of the next block belong; null while none are wanted. */
uint8_t *curve_room(void);
/* They are there; or, when there was no room, have gone by. `most` is their largest, `sum` that of the 16 ten-bit readings,
   `low_code` the threshold on the scale of `most`. True when a curve has begun: then curve_begun must follow. */
bool curve_take(uint8_t most, uint16_t sum, uint8_t low_code);
/* Means over parts of the next block are wanted, before curve_take: how many readings each, 4 or 8; 0: none are. */
uint8_t curve_span(void);
/* One of them, in order: its sum of ten-bit readings. */
void curve_take_span(uint16_t sum);
/* `ticks32`: when the first reading of that block was sampled; `channel`: of which sensor. */
void curve_begun(uint32_t ticks32, uint8_t channel);
/* Some of the averaging is still to be done: must be called until it is false, before the next block. At most 250 cycles. */
bool curve_halve(void);

/* The next blocks are not those that follow. A curve under way is given up. */
void curve_lost(void);
/* The readings come to an end for now. A curve under way is cut off and sent. */
void curve_suspend(void);

/* True while a curve waits to be sent, or its last bytes are on their way. */
bool curve_waiting(void);
/* The curve under way, or that waits. The sender counts `first` and `level` on to the part that comes next. */
extern struct curve curve;
static inline uint8_t curve_block_after(uint8_t block, uint8_t blocks) { return ++block == blocks ? 0 : block; }
/* All of it is out: the memory is free again. */
void curve_sent(void);

#endif
