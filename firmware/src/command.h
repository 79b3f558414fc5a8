/* What a checked line asks the rig to do (host to rig table of docs/protocol.md). No AVR header: also compiled by the
   native tests. */
#ifndef COMMAND_H
#define COMMAND_H

#include <stdint.h>

#include "line_reader.h"

#define SERIAL_CHARS 12

/* Results of the A line. */
enum result {
  RESULT_DONE = 0x00,
  RESULT_UNKNOWN = 0x01,
  RESULT_BAD_FIELDS = 0x02,
  RESULT_BUSY = 0x03,
  RESULT_STORE_FAILED = 0x04,
  RESULT_NOT_ON_THIS_RIG = 0x05,
  /* Upper case is rig to host: an echo of our own line, say. It gets no answer, or two rigs would talk for ever. */
  RESULT_NO_COMMAND = 0xFF
};

/* Modes of `c`. */
enum { CURVES_OFF, CURVES_ON, CURVES_NEXT_LONG, CURVES_NEXT_OF_OUTER_A, CURVES_NEXT_OF_OUTER_B };

struct command {
  char kind;
  uint16_t seq;
  uint8_t result; /* RESULT_DONE: may be carried out */
  uint8_t first;   /* t: low code; m, w: channel; r: kind; c: mode */
  uint16_t number; /* t: high code; m: blocks; p: token; r: count; w: last fine code */
  uint32_t wide;   /* r: width in ticks; w: first fine code */
};

/* Reads the fields of a good line. For `i` the serial number is the line's body. */
void command_read(struct command *command, const struct line_reader *line);

#endif
