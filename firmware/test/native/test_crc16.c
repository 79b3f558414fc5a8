#include "crc16.h"

#include <stdlib.h>
#include <string.h>

#include "tap.h"

static uint16_t crc_of(const char *text) {
  uint16_t crc = CRC16_START;
  for (; *text; text++) {
    crc = crc16_add(crc, (uint8_t)*text);
  }
  return crc;
}

/* Bit by bit, straight from the definition: polynomial x^16 + x^12 + x^5 + 1. */
static uint16_t by_definition(uint16_t crc, uint8_t byte) {
  crc ^= (uint16_t)(byte << 8);
  for (int i = 0; i < 8; i++) {
    crc = (uint16_t)(crc & 0x8000 ? crc << 1 ^ 0x1021 : crc << 1);
  }
  return crc;
}

int main(void) {
  /* Catalogue of parametrised CRC algorithms, CRC-16/IBM-3740. */
  tap_check(crc_of("123456789") == 0x29B1, "check value over 123456789 is 29B1");
  tap_check(crc_of("") == 0xFFFF, "nothing at all leaves the start value");
  bool same = true;
  for (uint32_t crc = 0; crc <= 0xFFFF; crc += 0x0101) {
    for (int byte = 0; byte < 256; byte++) {
      same = same && crc16_add((uint16_t)crc, (uint8_t)byte) == by_definition((uint16_t)crc, (uint8_t)byte);
    }
  }
  tap_check(same, "the shifts equal the bit by bit definition");
  return tap_done();
}
