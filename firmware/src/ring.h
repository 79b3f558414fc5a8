/* Index arithmetic of the two rings between interrupts and main loop: 64 slots of four bytes on a 256-byte boundary, so
   that a byte offset wraps by itself. One slot stays free: 63 entries wait at most, and one more is in the hand of the
   main loop. The interrupt owns `write`, the main loop owns `read`. */
#ifndef RING_H
#define RING_H

#define RING_BYTES 256
#define RING_ENTRY 4
#define RING_CAPACITY 63

#ifndef __ASSEMBLER__
#include <stdbool.h>
#include <stdint.h>

static inline uint8_t ring_after(uint8_t offset) { return (uint8_t)(offset + RING_ENTRY); }
static inline bool ring_full(uint8_t write, uint8_t read) { return ring_after(write) == read; }
static inline uint8_t ring_waiting(uint8_t write, uint8_t read) { return (uint8_t)(write - read) >> 2; }
/* An offset that is not a multiple of four can only come from damaged memory. */
static inline bool ring_sound(uint8_t write, uint8_t read) { return ((write | read) & (RING_ENTRY - 1)) == 0; }
#endif
#endif
