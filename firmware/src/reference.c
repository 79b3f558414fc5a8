#include "reference.h"

#include <avr/interrupt.h>
#include <avr/io.h>

#include "board.h"
#include "timebase.h"

/* A compare match changes the pin one tick later: the pin switches at OCR1x + 1 (data sheet, timing diagrams of Timer1, and
   the simulator). The pin toggles in each wrap of 65536 ticks in which the toggle is armed, so it is armed only for the last.
   While a longer wait goes on, the port register holds the level and the timer is not connected to the pin. */
#define SHORT_TICKS 0xC000u /* up to here the end is armed at once, the timer staying connected */
#define LATE_LEAD_TICKS 200 /* end of a pulse whose proper end went by, from the moment that is noticed */
#define GAP_TICKS 320000UL  /* 20 ms */
#define LEAST_LEAD_TICKS 0x10000UL /* from the planning of a pulse to its begin */
#define STEADY_HALVES 4882  /* 10 s less 2 ms */

enum { IDLE, STEADY, WAITS_TO_BEGIN, BEGIN_ARMED, WAITS_TO_END, END_ARMED, OVER };

uint8_t reference_state;
static bool ramped;
static uint32_t due; /* tick of the next switching */
static uint32_t width;
static uint16_t left; /* pulses still to be made */
static struct reference_pulse pulse;
static uint8_t seen_halves; /* half count, low byte, at the last look while waiting */
static uint16_t steady_since;

/* Interrupts are closed for the two bytes of the register, as the snapshot handler overwrites the timer's TEMP between them;
   an edge in these four cycles is stamped up to five cycles late. */
static void set_compare(void) {
  uint16_t match = (uint16_t)(due - 1);
  if (ramped) {
    cli();
    OCR1B = match;
    sei();
  } else {
    cli();
    OCR1A = match;
    sei();
  }
}

static void forget_match(void) { TIFR1 = ramped ? 1 << OCF1B : 1 << OCF1A; }
static bool matched(void) { return TIFR1 & (ramped ? 1 << OCF1B : 1 << OCF1A); }

static void hold_high(void) {
  if (ramped) {
    PORTB |= 1 << BOARD_RAMPED_LED_BIT;
  } else {
    PORTB |= 1 << BOARD_LED_BIT;
  }
}

static void hold_low(void) {
  PORTB &= (uint8_t)~(1 << BOARD_LED_BIT);
  PORTB &= (uint8_t)~(1 << BOARD_RAMPED_LED_BIT);
}

/* The port register gets the pin; it holds the level that the pin has. */
static void disconnect(void) { TCCR1A = 0; }

/* The timer gets the pin, to toggle it. Its own level is forced first to what the pin has. */
static void connect_high(void) {
  TCCR1A = ramped ? 1 << COM1B1 | 1 << COM1B0 : 1 << COM1A1 | 1 << COM1A0;
  TCCR1C = ramped ? 1 << FOC1B : 1 << FOC1A;
  TCCR1A = ramped ? 1 << COM1B0 : 1 << COM1A0;
}

static void connect_low(void) {
  TCCR1A = ramped ? 1 << COM1B1 : 1 << COM1A1;
  TCCR1C = ramped ? 1 << FOC1B : 1 << FOC1A;
  TCCR1A = ramped ? 1 << COM1B0 : 1 << COM1A0;
}

void reference_off(void) {
  reference_state = IDLE;
  /* low by the timer first: were only the port low, a later connecting would find the timer's level still high */
  TCCR1A = 1 << COM1A1 | 1 << COM1B1;
  TCCR1C = 1 << FOC1A | 1 << FOC1B;
  hold_low();
  disconnect();
}

static void wait_to(uint8_t state) {
  reference_state = state;
  seen_halves = (uint8_t)~(uint8_t)timebase_halves; /* look at once */
}

static void plan_begin(uint32_t begin) {
  due = begin;
  wait_to(WAITS_TO_BEGIN);
}

void reference_ask(uint8_t kind, uint32_t width_ticks, uint16_t count) {
  reference_off();
  switch (kind) {
    case REFERENCE_STEADY:
      steady_since = (uint16_t)timebase_halves;
      ramped = false;
      hold_high();
      reference_state = STEADY;
      break;
    case REFERENCE_SQUARE:
    case REFERENCE_RAMPED:
      ramped = kind == REFERENCE_RAMPED;
      width = width_ticks;
      left = count;
      pulse.index = 0;
      pulse.kind = kind;
      plan_begin(timebase_now32() + GAP_TICKS);
      break;
    default:
      break;
  }
}

/* True when the next match is the one that is due: less than one wrap is left. Looks once a half period, at its beginning,
   so that at least 32768 ticks less a round of the loop are left then. */
static bool last_wrap(void) {
  if (seen_halves == (uint8_t)timebase_halves) {
    return false;
  }
  seen_halves = (uint8_t)timebase_halves;
  return (int16_t)((uint16_t)(due >> 15) - (uint16_t)timebase_halves) <= 1;
}

/* Arms the end while the timer is connected. When the end went by before it was armed, the next possible one is taken. */
static void arm_end_at_once(void) {
  for (;;) {
    forget_match();
    set_compare();
    uint16_t count = timebase_count();
    uint16_t to_go = (uint16_t)(due - count);
    if ((to_go != 0 && to_go <= SHORT_TICKS) || matched()) {
      reference_state = END_ARMED;
      return;
    }
    due += (uint16_t)(LATE_LEAD_TICKS - to_go);
  }
}

static void begun(void) {
  pulse.begin = due;
  due += width;
  if (width <= SHORT_TICKS) {
    arm_end_at_once();
    return;
  }
  hold_high();
  disconnect();
  wait_to(WAITS_TO_END);
}

static void ended(void) {
  pulse.end = due;
  hold_low();
  disconnect();
  reference_state = OVER;
}

void reference_go_on(void) {
  switch (reference_state) {
    case STEADY:
      if ((uint16_t)((uint16_t)timebase_halves - steady_since) >= STEADY_HALVES) {
        reference_off();
      }
      break;
    case WAITS_TO_BEGIN:
      if (last_wrap()) {
        set_compare();
        forget_match();
        connect_low();
        reference_state = BEGIN_ARMED;
      }
      break;
    case WAITS_TO_END:
      if (last_wrap()) {
        set_compare();
        forget_match();
        connect_high();
        reference_state = END_ARMED;
      }
      break;
    case BEGIN_ARMED:
      if (matched()) {
        begun();
      }
      break;
    case END_ARMED:
      if (matched()) {
        ended();
      }
      break;
    default:
      break;
  }
}

bool reference_pulse_waiting(void) { return reference_state == OVER; }
const struct reference_pulse *reference_pulse(void) { return &pulse; }

void reference_told(void) {
  if (--left == 0) {
    reference_off();
    return;
  }
  pulse.index++;
  uint32_t begin = pulse.end + (width > GAP_TICKS ? width : GAP_TICKS);
  uint32_t soonest = timebase_now32() + LEAST_LEAD_TICKS;
  plan_begin((int32_t)(begin - soonest) < 0 ? soonest : begin);
}
