#include "light.h"

#include <avr/io.h>

#include "block.h"
#include "board.h"
#include "timebase.h"

#define SLOT_TICKS 1000
/* Timer0 counts 125 steps of 0.5 us a slot. The ADC clock is 250 kHz: a conversion takes 54 us from the trigger, so what
   is read before step 104 of a slot was converted in the slot before. */
#define LAST_READ_STEP 100
/* The multiplexer may change from one ADC clock (4 us) after the trigger on, and must have changed before the next. */
#define FIRST_SWITCH_STEP 16
#define LAST_SWITCH_STEP 110

#define REFERENCE_IS_SUPPLY (1 << REFS0)
#define THRESHOLD_READINGS 64

enum { READ_LIGHT, READ_LOW, READ_HIGH };

static uint8_t task;             /* what the readings are for */
static uint8_t wanted;           /* multiplexer channel for that */
static uint8_t selected;         /* what the multiplexer stands at */
static uint8_t converting;       /* what it stood at when this slot began: the next slot finds that one's result */
static uint16_t slot_begin;      /* Timer1 at the beginning of the slot, some ticks early */
static uint8_t readings;         /* so far, of the block or the threshold */
static bool gap;                 /* a reading of this block is missing */
static struct block block;
static uint16_t centre_sum;
static uint16_t blocks_wanted;   /* still to be made */
static uint8_t block_channel;
static uint16_t low_sum;
static uint16_t high_sum;

static void restart(uint8_t new_task, uint8_t channel) {
  task = new_task;
  wanted = channel;
  readings = 0;
  gap = false;
  block_clear(&block);
}

static uint8_t adc_of(uint8_t channel) {
  if (channel == CHANNEL_OUTER_A) return BOARD_ADC_OUTER_A;
  if (channel == CHANNEL_OUTER_B) return BOARD_ADC_OUTER_B;
  return BOARD_ADC_CENTRE;
}

void light_start(void) {
  restart(READ_LIGHT, BOARD_ADC_CENTRE);
  selected = BOARD_ADC_CENTRE;
  converting = 0xFF;
  block_channel = CHANNEL_CENTRE_LOW;
  ADMUX = REFERENCE_IS_SUPPLY | BOARD_ADC_CENTRE;
  ADCSRB = 1 << ADTS1 | 1 << ADTS0;                          /* started by compare match A of Timer0 */
  ADCSRA = 1 << ADEN | 1 << ADATE | 1 << ADPS2 | 1 << ADPS1; /* clk/64 */
  OCR0A = SLOT_TICKS / 8 - 1;
  TCCR0A = 1 << WGM01; /* back to 0 after OCR0A */
  slot_begin = timebase_count();
  TCCR0B = 1 << CS01; /* clk/8 */
}

static void end_block(void) {
  if (wanted == BOARD_ADC_CENTRE && !gap) {
    centre_sum = block.sum;
  }
  if (blocks_wanted != 0) {
    if (!gap) {
      block_queue_put(&block);
    }
    block.index++;
    if (--blocks_wanted == 0 && block_channel != CHANNEL_CENTRE_LOW) {
      /* back to watching the centre; the channel of the queue stays */
      restart(READ_LIGHT, BOARD_ADC_CENTRE);
      return;
    }
  }
  restart(READ_LIGHT, wanted);
}

static void take_reading(uint16_t reading) {
  switch (task) {
    case READ_LIGHT:
      block_add(&block, reading);
      if (++readings == BLOCK_READINGS) {
        end_block();
      }
      break;
    case READ_LOW:
      low_sum += reading;
      if (++readings == THRESHOLD_READINGS) {
        restart(READ_HIGH, BOARD_ADC_HIGH_THRESHOLD);
      }
      break;
    default:
      high_sum += reading;
      if (++readings == THRESHOLD_READINGS) {
        restart(READ_LIGHT, BOARD_ADC_CENTRE);
      }
      break;
  }
}

/* A slot whose reading was not made in time: light blocks keep their millisecond and get a gap instead of a guess,
   thresholds just take one reading more. */
static void miss_reading(void) {
  if (task == READ_LIGHT) {
    gap = true;
    if (++readings == BLOCK_READINGS) {
      end_block();
    }
  }
}

static void switch_channel(uint8_t step) {
  if (selected != wanted && step >= FIRST_SWITCH_STEP && step < LAST_SWITCH_STEP) {
    ADMUX = REFERENCE_IS_SUPPLY | wanted;
    selected = wanted;
  }
}

void light_tend(void) {
  if (!(TIFR0 & (1 << OCF0A))) {
    switch_channel(TCNT0);
    return;
  }
  uint16_t reading = ADC;
  bool in_time = TCNT0 < LAST_READ_STEP;
  uint16_t seen = timebase_count();
  TIFR0 = 1 << OCF0A; /* until this is written, the next match starts no conversion */
  bool of_this_task = converting == wanted;
  converting = selected;
  slot_begin += SLOT_TICKS;
  if (of_this_task && in_time) {
    take_reading(reading);
  } else if (of_this_task) {
    miss_reading();
  }
  uint16_t late = seen - slot_begin;
  if (late >= 16 * SLOT_TICKS) {
    slot_begin = seen; /* the counter was set from outside */
    return;
  }
  for (; late >= SLOT_TICKS; late -= SLOT_TICKS) {
    slot_begin += SLOT_TICKS;
    miss_reading();
  }
}

uint16_t light_centre(void) { return centre_sum; }

bool light_ask_blocks(uint8_t channel, uint16_t blocks) {
  if (task != READ_LIGHT) {
    return false;
  }
  block_queue_clear();
  block_channel = channel;
  blocks_wanted = blocks;
  block.index = 0;
  restart(READ_LIGHT, adc_of(blocks == 0 ? CHANNEL_CENTRE_LOW : channel));
  return true;
}

uint8_t light_block_channel(void) { return block_channel; }

bool light_ask_thresholds(void) {
  if (blocks_wanted != 0) {
    return false;
  }
  low_sum = 0;
  high_sum = 0;
  restart(READ_LOW, BOARD_ADC_LOW_THRESHOLD);
  return true;
}

bool light_thresholds_ready(void) { return task == READ_LIGHT; }
uint16_t light_low_threshold(void) { return low_sum; }
uint16_t light_high_threshold(void) { return high_sum; }
