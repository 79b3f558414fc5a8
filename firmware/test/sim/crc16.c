#include "crc16.h"

uint16_t bench_crc16(const void *bytes, size_t count) {
  const unsigned char *at = bytes;
  uint16_t crc = 0xFFFF;
  for (size_t i = 0; i < count; i++) {
    for (int bit = 7; bit >= 0; bit--) {
      unsigned feedback = (crc >> 15 ^ at[i] >> bit) & 1u;
      crc = (uint16_t)(crc << 1 ^ (feedback ? 0x1021 : 0));
    }
  }
  return crc;
}
