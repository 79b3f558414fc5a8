/* The record in the EEPROM: who this rig is and how often it has started. Two places take turns, so that a power cut while
   one is written leaves the other. No AVR header: also compiled by the native tests. */
#ifndef RECORD_H
#define RECORD_H

#include <stdbool.h>
#include <stdint.h>

#include "command.h" /* SERIAL_CHARS */

#define RECORD_BYTES 22

struct record {
  uint32_t writes; /* goes up by one a write; the higher of two good records is the newer */
  uint32_t boots;
  char serial[SERIAL_CHARS + 1]; /* empty: none was given yet */
};

/* Lowest byte first: writes, boots, serial number filled up with NUL, CRC-16/IBM-3740 over all of that. */
void record_encode(const struct record *record, uint8_t bytes[RECORD_BYTES]);
/* False when the CRC is wrong. */
bool record_decode(struct record *record, const uint8_t bytes[RECORD_BYTES]);
/* True when every byte is FF: an EEPROM that nobody wrote to. */
bool record_blank(const uint8_t bytes[RECORD_BYTES]);
/* Right across the wrap of the count of writes. */
bool record_newer(uint32_t writes, uint32_t other_writes);

#endif
