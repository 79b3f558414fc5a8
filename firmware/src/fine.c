#include "fine.h"

#include <avr/io.h>

#include "thresholds.h"
#include "timebase.h"

#define LAST_PLACE 210 /* 45 cycles before the end */

static bool of_high;
static uint8_t low_before;
static uint8_t high_before;
static uint8_t lower;    /* the lower one of the two codes */
static uint8_t share;    /* sixteenths of the time that the upper one is due */
static bool upper;       /* in force since the last slice */
static int16_t owed;     /* to the upper one, sixteenths of a cycle */
static uint8_t counted;  /* PWM cycles up to the last slice, low byte */

static uint8_t place;    /* within a cycle of the PWM, when `counted` was read */

/* Both timers count the same clock, so their difference is constant within a cycle of Timer2 and goes up by 256 at its end,
   where a new code comes into force (data sheet, fast PWM). */
static uint8_t pwm_cycles(void) {
  uint16_t count = timebase_count();
  place = TCNT2;
  return (uint8_t)((uint16_t)(count - place) >> 8);
}

static void put(void) {
  uint8_t code = (uint8_t)(lower + upper);
  if (of_high) {
    thresholds_set(low_before, code);
  } else {
    thresholds_set(code, high_before);
  }
}

/* So many cycles have gone, or cannot be changed any more, with the code that is in force. */
static void account(uint8_t cycles) {
  owed = (int16_t)(owed + (int16_t)(uint16_t)(cycles * share));
  if (upper) {
    owed = (int16_t)(owed - (int16_t)((uint16_t)cycles << 4));
  }
}

void fine_set(uint16_t code) {
  lower = (uint8_t)((code >> 4) - 1);
  share = (uint8_t)(code & 0x0F);
}

void fine_start(bool high, uint16_t code) {
  of_high = high;
  low_before = thresholds_low_code();
  high_before = thresholds_high_code();
  upper = false;
  owed = 0;
  counted = pwm_cycles();
  fine_set(code);
  put();
}

uint8_t fine_tend(void) {
  uint8_t cycles = (uint8_t)(pwm_cycles() - counted);
  if (cycles == 0 || cycles > 127) { /* an interrupt between the readings of the two timers can put it one back */
    return 0;
  }
  account(cycles);
  /* The cycle in which the code is written must be known, so it is not written close to the end of one. */
  while (TCNT2 > LAST_PLACE) {
  }
  if (TCNT2 < place) {
    account(1);
    cycles++;
  }
  upper = owed > 0;
  put();
  counted = (uint8_t)(counted + cycles);
  return cycles;
}

void fine_stop(void) { thresholds_set(low_before, high_before); }
