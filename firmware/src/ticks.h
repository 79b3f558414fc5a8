/* Ticks: counts of the 16 MHz Timer1, 62.5 ns each, 48 bits wide; and how 16-bit readings are widened to them.
   Pure arithmetic, no AVR header: also compiled by the native tests. */
#ifndef TICKS_H
#define TICKS_H

#include <stdint.h>

struct ticks {
  uint32_t high; /* ticks / 65536 */
  uint16_t low;
};

/* `halves` counts half periods of Timer1 (32768 ticks); its lowest bit always equals bit 15 of `count`, so the two share
   that bit and 32 bits of halves carry 47 bits of ticks. */
static inline struct ticks ticks_of(uint32_t halves, uint16_t count) {
  struct ticks ticks = {halves >> 1, count};
  return ticks;
}

static inline struct ticks ticks_less(struct ticks ticks, uint8_t amount) {
  uint16_t low = (uint16_t)(ticks.low - amount);
  if (low > ticks.low) {
    ticks.high--;
  }
  ticks.low = low;
  return ticks;
}

/* Back by any number of 32-bit ticks. */
static inline void ticks_back(struct ticks *ticks, uint32_t amount) {
  uint16_t low = (uint16_t)(ticks->low - (uint16_t)amount);
  ticks->high -= (amount >> 16) + (low > ticks->low);
  ticks->low = low;
}

static inline uint32_t ticks_low32(struct ticks ticks) { return ticks.high << 16 | ticks.low; }

/* Interrupts store the low seven bits of the half count beside their reading of Timer1. The main loop may not yet have
   counted the half that the reading falls into: then the parities differ and one is missing.
   `floor` is a count known to be no later than the reading, and at most 126 halves (0.25 s) earlier; one half is allowed
   for a floor that was taken while the reading was under way. Right across every wrap, because only differences count. */
static inline uint32_t ticks_halves(uint8_t stored, uint16_t count, uint32_t floor) {
  uint8_t seen = stored;
  if ((uint8_t)(seen ^ (uint8_t)(count >> 15)) & 1) {
    seen++;
  }
  floor--;
  return floor + ((uint8_t)(seen - (uint8_t)floor) & 0x7F);
}

#endif
