#include "eeprom_record.h"

#include "crc16.h"

enum { WRITES_AT = 0, BOOTS_AT = 4, SERIAL_AT = 8, CRC_AT = 20 };

static uint32_t get32(const uint8_t *bytes) {
  uint32_t value = 0;
  for (uint8_t i = 4; i > 0; i--) {
    value = value << 8 | bytes[i - 1];
  }
  return value;
}

static uint16_t crc_of(const uint8_t *bytes) {
  uint16_t crc = CRC16_START;
  for (uint8_t i = 0; i < CRC_AT; i++) {
    crc = crc16_add(crc, bytes[i]);
  }
  return crc;
}

uint8_t eeprom_record_byte(const struct eeprom_record *record, uint16_t crc, uint8_t at) {
  if (at >= CRC_AT) {
    return (uint8_t)(at == CRC_AT ? crc : crc >> 8);
  }
  if (at >= SERIAL_AT) {
    return (uint8_t)record->serial[at - SERIAL_AT];
  }
  uint32_t value = at < BOOTS_AT ? record->writes : record->boots;
  return (uint8_t)(value >> 8 * (at & 3));
}

uint16_t eeprom_record_crc(const struct eeprom_record *record) {
  uint16_t crc = CRC16_START;
  for (uint8_t i = 0; i < CRC_AT; i++) {
    crc = crc16_add(crc, eeprom_record_byte(record, 0, i));
  }
  return crc;
}

bool eeprom_record_decode(struct eeprom_record *record, const uint8_t bytes[EEPROM_RECORD_BYTES]) {
  if (crc_of(bytes) != (uint16_t)(bytes[CRC_AT] | bytes[CRC_AT + 1] << 8)) {
    return false;
  }
  record->writes = get32(bytes + WRITES_AT);
  record->boots = get32(bytes + BOOTS_AT);
  for (uint8_t i = 0; i < SERIAL_CHARS; i++) {
    record->serial[i] = (char)bytes[SERIAL_AT + i];
  }
  record->serial[SERIAL_CHARS] = '\0';
  return true;
}

bool eeprom_record_blank(const uint8_t bytes[EEPROM_RECORD_BYTES]) {
  for (uint8_t i = 0; i < EEPROM_RECORD_BYTES; i++) {
    if (bytes[i] != 0xFF) return false;
  }
  return true;
}

bool eeprom_record_newer(uint32_t writes, uint32_t other_writes) { return (int32_t)(writes - other_writes) > 0; }
