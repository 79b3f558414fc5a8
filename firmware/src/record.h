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
  char serial[SERIAL_CHARS + 1]; /* filled up with NUL; empty: none was given yet */
};

/* What a record is stored as, lowest byte first: writes, boots, serial number filled up with NUL, CRC-16/IBM-3740 over all of
   that. */
uint16_t record_crc(const struct record *record);
/* One byte of it, `at` from 0 to RECORD_BYTES - 1, so that nobody needs room for all. */
uint8_t record_byte(const struct record *record, uint16_t crc, uint8_t at);
/* False when the CRC is wrong. */
bool record_decode(struct record *record, const uint8_t bytes[RECORD_BYTES]);
/* True when every byte is FF: an EEPROM that nobody wrote to. */
bool record_blank(const uint8_t bytes[RECORD_BYTES]);
/* Right across the wrap of the count of writes. */
bool record_newer(uint32_t writes, uint32_t other_writes);

#endif
