#include "crc16.h"

/* Shifts instead of a table: the polynomial x^16 + x^12 + x^5 + 1 lets eight steps be taken at once, and a table would
   cost 512 bytes of flash to save some 10 cycles of the 640 between two bytes. */
uint16_t crc16_add(uint16_t crc, uint8_t byte) {
  crc = (uint16_t)(crc >> 8 | crc << 8);
  crc ^= byte;
  crc ^= (uint8_t)crc >> 4;
  crc ^= (uint16_t)(crc << 12);
  crc ^= (uint16_t)((crc & 0xFF) << 5);
  return crc;
}
