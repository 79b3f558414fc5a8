#ifndef BENCH_CRC16_H
#define BENCH_CRC16_H

#include <stddef.h>
#include <stdint.h>

/* CRC-16/IBM-3740 of docs/protocol.md, written apart from the firmware's so that one checks the other. */
uint16_t bench_crc16(const void *bytes, size_t count);

#endif
