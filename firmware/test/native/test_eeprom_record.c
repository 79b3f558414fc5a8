#include "eeprom_record.h"

#include <string.h>

#include "tap.h"

static void encode(const struct eeprom_record *record, uint8_t bytes[EEPROM_RECORD_BYTES]) {
  uint16_t crc = eeprom_record_crc(record);
  for (uint8_t i = 0; i < EEPROM_RECORD_BYTES; i++) {
    bytes[i] = eeprom_record_byte(record, crc, i);
  }
}

int main(void) {
  uint8_t bytes[EEPROM_RECORD_BYTES];
  struct eeprom_record in = {0x89ABCDEF, 0x01234567, "R-0001"}, out;
  encode(&in, bytes);
  tap_check(eeprom_record_decode(&out, bytes) && out.writes == in.writes && out.boots == in.boots &&
                strcmp(out.serial, in.serial) == 0,
            "a record reads back as it was written");
  struct eeprom_record longest = {1, 2, "ABCDEFGHIJKL"};
  encode(&longest, bytes);
  tap_check(eeprom_record_decode(&out, bytes) && strcmp(out.serial, "ABCDEFGHIJKL") == 0, "twelve characters of serial number");
  bool caught = true;
  for (int bit = 0; bit < EEPROM_RECORD_BYTES * 8; bit++) {
    encode(&in, bytes);
    bytes[bit / 8] ^= (uint8_t)(1 << bit % 8);
    caught = caught && !eeprom_record_decode(&out, bytes);
  }
  tap_check(caught, "any single flipped bit is found");
  /* A power cut while a new record is written over an old one: some bytes new, the rest old. */
  struct eeprom_record old = {5, 40, "R-0001"}, new = {7, 42, "R-0001"};
  uint8_t before[EEPROM_RECORD_BYTES], after[EEPROM_RECORD_BYTES];
  encode(&old, before);
  encode(&new, after);
  caught = true;
  for (int done = 0; done <= EEPROM_RECORD_BYTES; done++) {
    memcpy(bytes, before, sizeof bytes);
    memcpy(bytes, after, (size_t)done);
    bool whole = memcmp(bytes, before, sizeof bytes) == 0 || memcmp(bytes, after, sizeof bytes) == 0;
    caught = caught && eeprom_record_decode(&out, bytes) == whole;
  }
  tap_check(caught, "a record cut off while it is written is found");
  memset(bytes, 0xFF, sizeof bytes);
  tap_check(eeprom_record_blank(bytes) && !eeprom_record_decode(&out, bytes), "an EEPROM never written to is blank and no record");
  bytes[EEPROM_RECORD_BYTES - 1] = 0xFE;
  tap_check(!eeprom_record_blank(bytes), "one byte written is not blank");
  memset(bytes, 0, sizeof bytes);
  tap_check(!eeprom_record_decode(&out, bytes), "all zero is no record");
  tap_check(eeprom_record_newer(1, 0) && !eeprom_record_newer(0, 1) && !eeprom_record_newer(3, 3) && eeprom_record_newer(2, 0xFFFFFFFE),
            "the newer of two records, also across the wrap");
  return tap_done();
}
