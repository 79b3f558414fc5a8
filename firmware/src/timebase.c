#include "timebase.h"

#include <avr/io.h>
#include <avr/wdt.h>

volatile uint32_t timebase_halves;
static uint8_t wrapped; /* bit 47 of the ticks: toggles when timebase_halves wraps, after 101 days */

/* GPIOR1 with bit 7 set: what a snapshot stores when the release pin is high. Read by capture_isr.S. */
volatile uint8_t half_count_release_pin;

/* The handlers read these at any moment. Old and new are both right, because they also store bit 15 of Timer1. */
static void publish(uint8_t halves) {
  GPIOR1 = halves & 0x7F;
  half_count_release_pin = halves | 0x80;
}

void timebase_start(void) {
  TCCR1A = 0;
  TCCR1B = 1 << CS10; /* normal mode, clk/1; capture.c chooses the edge; no noise canceller, which would add 4 cycles */
  publish(0);
}

uint16_t timebase_count(void) {
  uint16_t first;
  uint16_t second = TCNT1;
  /* A handler between the two halves of a read makes it wrong by a multiple of 256, or late. Two reads with nothing
     between them are some ten cycles apart. */
  do {
    first = second;
    second = TCNT1;
  } while ((uint16_t)(second - first) > 30);
  return second;
}

void timebase_tend(void) {
  /* twice, so that a bench that sets counter and variable between two instructions is not taken for a half period */
  if ((uint8_t)((uint8_t)timebase_halves ^ (uint8_t)(timebase_count() >> 15)) & 1) {
    uint32_t halves = timebase_halves;
    if ((uint8_t)((uint8_t)halves ^ (uint8_t)(timebase_count() >> 15)) & 1) {
      timebase_halves = ++halves;
      if (halves == 0) {
        wrapped ^= 1;
      }
      wdt_reset();
    }
  }
  publish((uint8_t)timebase_halves);
}

void timebase_now(struct ticks *now) {
  uint16_t count;
  do {
    timebase_tend();
    count = timebase_count();
  } while (((uint8_t)timebase_halves ^ (uint8_t)(count >> 15)) & 1);
  uint32_t high = timebase_halves >> 1;
  if (wrapped) {
    high |= 0x80000000;
  }
  now->high = high;
  now->low = count;
}

uint32_t timebase_now32(void) {
  static struct ticks now; /* static, as a stack frame for it would make the compiler close interrupts around its making */
  timebase_now(&now);
  return ticks_low32(now);
}
