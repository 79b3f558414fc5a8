#include "stream.h"

#include <avr/interrupt.h>
#include <avr/io.h>

#include "board.h"
#include "timebase.h"

#define REFERENCE_IS_SUPPLY (1 << REFS0)
#define SLOW_TICKS 1000
#define FAST_TICKS 256
/* Readings that are dropped after a start: the first conversion takes twice as long and swallows the second trigger. */
#define SETTLING 4
/* Ticks by which a match may lie before what was measured: clk/8 counts eight of them. */
#define SLACK 16
/* Starting Timer0 and looking at both timers takes less than this unless a handler came between. */
#define UNDISTURBED 40
#define LATEST_PLACE 32
/* Lost readings beyond which the counter was set from outside, or the ring ran over. */
#define LOST_TOO_MANY 14

extern uint16_t stream_ring[STREAM_BYTES / 2]; /* in capture_isr.S; its address ends in a zero byte or 80 */
volatile uint8_t stream_write;                 /* low byte of the address of the next entry; written by the handler */

static uint8_t half;      /* offset of the batch that is read next: 0 or STREAM_BATCH_BYTES */
static bool settling;     /* the dropped readings are under way */
static bool lost_before;  /* readings were lost, maybe of this batch */
static uint16_t begin;    /* Timer1 when the first conversion of that batch was started */
static uint16_t period;   /* ticks */
static uint8_t selected;
static enum stream_rate chosen;

static uint8_t ring_start(void) { return (uint8_t)(uint16_t)stream_ring; }

/* Timer1 at the moment when Timer0 stood at zero. Both are read by `lds`, two cycles apart. */
static uint16_t zero_of_timer0(uint8_t step_shift) {
  uint8_t steps;
  uint16_t count;
  __asm__ volatile("lds %0, %2\n\tlds %A1, %3\n\tlds %B1, %4"
                   : "=&r"(steps), "=&r"(count)
                   : "n"(_SFR_MEM_ADDR(TCNT0)), "n"(_SFR_MEM_ADDR(TCNT1L)), "n"(_SFR_MEM_ADDR(TCNT1H)));
  return count - 2 - ((uint16_t)steps << step_shift);
}

static void start(void) {
  bool fast = chosen == STREAM_FAST;
  uint8_t clock = fast ? 1 << CS00 : 1 << CS01; /* clk/1, clk/8 */
  uint16_t before;
  uint16_t zero;
  TCCR0B = 0;
  ADCSRA = 0;
  ADMUX = REFERENCE_IS_SUPPLY | selected;
  ADCSRB = 1 << ADTS1 | 1 << ADTS0; /* started by compare match A of Timer0 */
  ADCSRA = 1 << ADEN | 1 << ADATE | (fast ? 1 << ADPS2 : 1 << ADPS2 | 1 << ADPS1); /* clk/16, clk/64 */
  TCCR0A = 1 << WGM01; /* back to 0 after OCR0A */
  OCR0A = fast ? FAST_TICKS - 1 : SLOW_TICKS / 8 - 1;
  period = fast ? FAST_TICKS : SLOW_TICKS;
  /* At the fast rate the handler then always runs early in a cycle of the PWM, away from its end, before which a fine
     threshold is set. */
  while (TCNT2 > LATEST_PLACE) {
  }
  do {
    TCCR0B = 0;
    TCNT0 = 0;
    TIFR0 = 1 << OCF0A;
    stream_write = ring_start() + STREAM_BYTES - 2 * SETTLING;
    before = timebase_count();
    TCCR0B = clock;
    zero = zero_of_timer0(fast ? 0 : 3);
  } while ((uint16_t)(zero - before) > UNDISTURBED);
  TIMSK0 = 1 << OCIE0A;
  /* match 1 starts a conversion, its handler stores entry 1 of the dropped ones; the batch begins behind them */
  begin = zero + SETTLING * period;
  half = 0;
  settling = true;
  lost_before = false;
}

void stream_start(uint8_t channel, enum stream_rate rate) {
  selected = channel;
  chosen = rate;
  start();
}

void stream_stop(void) { TCCR0B = 0; }

static uint8_t stored_bytes(void) { return (uint8_t)(stream_write - ring_start() - half) & (STREAM_BYTES - 1); }

bool stream_ready(void) {
  if (stored_bytes() < STREAM_BATCH_BYTES) {
    settling = false;
    return false;
  }
  return !settling;
}

/* While the main loop runs, no handler waits, so the entries are as many as matches went by. What is missing is put in as
   garbage, so that batches keep their distance; it may be of this batch or of the next. */
bool stream_whole(void) {
  uint16_t elapsed = timebase_count() - begin;
  uint8_t stored = stored_bytes() >> 1;
  uint16_t due = period * (uint16_t)(stored + 1) + SLACK; /* by then there would be one more */
  uint8_t lost = 0;
  while (elapsed >= due && lost < LOST_TOO_MANY) {
    due += period;
    lost++;
  }
  if (stored + lost >= 2 * STREAM_BATCH_READINGS || elapsed + 3 * period < due) {
    start();
    return false;
  }
  bool whole = lost == 0 && !lost_before;
  lost_before = lost != 0;
  for (; lost > 0; lost--) {
    cli();
    uint8_t next = stream_write + 2;
    stream_write = next & STREAM_BYTES ? ring_start() : next;
    sei();
  }
  return whole;
}

const uint16_t *stream_batch(void) { return stream_ring + (half >> 1); }
uint16_t stream_begin(void) { return begin; }

void stream_next(void) {
  if (settling) {
    return; /* started afresh meanwhile */
  }
  half ^= STREAM_BATCH_BYTES;
  begin += STREAM_BATCH_READINGS * period;
}
