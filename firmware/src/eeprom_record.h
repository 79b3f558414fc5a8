/* The record in the EEPROM: who this rig is and how often it has started. Two places take turns, so that a power cut while
   one is written leaves the other. No AVR header: also compiled by the native tests. */
#ifndef EEPROM_RECORD_H
#define EEPROM_RECORD_H

#include <stdbool.h>
#include <stdint.h>

#include "command.h" /* SERIAL_CHARS */

#define EEPROM_RECORD_BYTES 22

struct eeprom_record {
  uint32_t writes; /* goes up by one a write; the higher of two good records is the newer */
  uint32_t boots;
  char serial[SERIAL_CHARS + 1]; /* filled up with NUL; empty: none was given yet */
};

/* What a record is stored as, lowest byte first: writes, boots, serial number filled up with NUL, CRC-16/IBM-3740 over all of
   that. */
uint16_t eeprom_record_crc(const struct eeprom_record *record);
/* One byte of it, `at` from 0 to EEPROM_RECORD_BYTES - 1, so that nobody needs room for all. */
uint8_t eeprom_record_byte(const struct eeprom_record *record, uint16_t crc, uint8_t at);
/* False when the CRC is wrong. */
bool eeprom_record_decode(struct eeprom_record *record, const uint8_t bytes[EEPROM_RECORD_BYTES]);
/* True when every byte is FF: an EEPROM that nobody wrote to. */
bool eeprom_record_blank(const uint8_t bytes[EEPROM_RECORD_BYTES]);
/* Right across the wrap of the count of writes. */
bool eeprom_record_newer(uint32_t writes, uint32_t other_writes);

#endif
