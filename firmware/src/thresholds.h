/* Comparator thresholds: two PWM outputs of Timer2 (62.5 kHz), filtered outside the chip. Code c gives (c + 1) / 256 of the
   supply; the filter takes 30 ms to settle. The starter rig has no such output: its low code is where the bandgap was read. */
#ifndef THRESHOLDS_H
#define THRESHOLDS_H

#include <stdint.h>

void thresholds_start(void);
void thresholds_set(uint8_t low_code, uint8_t high_code);
uint8_t thresholds_low_code(void);
uint8_t thresholds_high_code(void);

#endif
