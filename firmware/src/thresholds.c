#include "thresholds.h"

#include <avr/io.h>

#include "config.h"

void thresholds_set(uint8_t low_code, uint8_t high_code) {
  OCR2B = low_code;
  OCR2A = high_code;
}

uint8_t thresholds_low_code(void) { return OCR2B; }
uint8_t thresholds_high_code(void) { return OCR2A; }

void thresholds_start(void) {
  thresholds_set(CONFIG_LOW_CODE, CONFIG_HIGH_CODE);
  /* fast PWM to FF, both outputs high from 0 to their code, clk/1 */
  TCCR2A = (CONFIG_STARTER_RIG ? 0 : 1 << COM2A1 | 1 << COM2B1) | 1 << WGM21 | 1 << WGM20;
  TCCR2B = 1 << CS20;
}
