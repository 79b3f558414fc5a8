/* The lines of a light curve (docs/protocol.md), part by part. No AVR header: also compiled by the native tests. Main loop only. */
#ifndef CURVE_SEND_H
#define CURVE_SEND_H

#include <stdbool.h>
#include <stdint.h>

/* A line: `C` when there are no bytes, else `D`. */
struct curve_line {
  uint8_t curve;
  uint8_t part;
  uint8_t flags;
  uint8_t byte_count;
  const uint8_t *bytes; /* stay as they are until the next line is asked for */
  uint32_t first;
  uint32_t period;
  uint16_t number; /* COUNT or INDEX */
};

/* The next line of the curve, only while curve_waiting. False when all are out; then the memory is free again. */
bool curve_send_next_line(struct curve_line *line);

#endif
