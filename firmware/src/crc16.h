/* CRC-16/IBM-3740: polynomial 1021, start value FFFF, nothing reflected, no final exclusive-or.
   Check value over "123456789": 29B1 (catalogue of parametrised CRC algorithms). */
#ifndef CRC16_H
#define CRC16_H

#include <stdint.h>

#define CRC16_START 0xFFFF

/* The CRC after one more byte. */
uint16_t crc16_add(uint16_t crc, uint8_t byte);

#endif
