#include "light.h"

#include "block.h"
#include "board.h"
#include "curve.h"
#include "stream.h"
#include "thresholds.h"
#include "timebase.h"

#define THRESHOLD_BATCHES 4
#define LIGHT_BATCHES 4
#define SETTLING_BATCHES (CONFIG_STARTER_RIG ? CONFIG_BANDGAP_SETTLING_BLOCKS : 0)

static enum { WATCH_CENTRE, MAKE_BLOCKS, READ_LOW, READ_HIGH } task;
static bool fast;       /* the centre is watched all the time, at the fast rate */
static bool paused;     /* it is not watched at all */
static uint8_t watched; /* whose readings those are: the centre's, or for one curve those of another sensor */
static uint8_t asked;   /* the sensor of the next curve */
static uint8_t batches; /* so far, of the sum */
static uint16_t sum;
static struct block block;
static uint16_t centre_sum;
static uint16_t blocks_wanted; /* still to be made */
static uint8_t block_channel;
static uint16_t low_sum;
static uint16_t high_sum;

static uint8_t adc_of(uint8_t channel) {
  if (channel == CHANNEL_OUTER_A) return BOARD_ADC_OUTER_A;
  if (channel == CHANNEL_OUTER_B) return BOARD_ADC_OUTER_B;
  return BOARD_ADC_CENTRE;
}

static void watch_centre(void) {
  paused = false;
  task = WATCH_CENTRE;
  batches = 0;
  sum = 0;
  stream_start(adc_of(watched), fast ? STREAM_FAST : STREAM_SLOW);
}

/* Goes to the sensor whose curve was asked for, and back once that curve waits to be sent. */
static bool change_watched(void) {
  bool waiting = curve_waiting();
  if (waiting && curve.channel == asked) {
    asked = CHANNEL_CENTRE_LOW;
  }
  uint8_t wanted = fast && !waiting ? asked : CHANNEL_CENTRE_LOW;
  if (wanted == watched) {
    return false;
  }
  watched = wanted;
  curve_lost();
  watch_centre();
  return true;
}

void light_start(void) {
  block_channel = CHANNEL_CENTRE_LOW;
  watched = asked = CHANNEL_CENTRE_LOW;
  curve_start();
  light_watch_on();
}

/* The mean of 64 readings, 1.02 ms, as a sum of 16. */
static void add_to_light(uint16_t batch_sum) {
  sum += batch_sum;
  if (++batches == LIGHT_BATCHES) {
    centre_sum = sum >> 2;
    batches = 0;
    sum = 0;
  }
}

static void tell_begin(uint16_t begin) {
  uint32_t now32 = timebase_now32();
  uint16_t ago = (uint16_t)now32 - begin;
  curve_begun(now32 - ago + STREAM_FAST_SAMPLE_DELAY, watched);
}

/* Light of eight bits above which it is no longer dark. The starter rig has half its level: that one stands high on the ramps, and a
   curve has to show where they end. */
static uint8_t dark_code(void) { return CONFIG_STARTER_RIG ? thresholds_low_code() >> 1 : thresholds_low_code(); }

static uint8_t eight_bits(uint16_t reading) { return (uint8_t)(reading >> 2); }

/* Both loops run once every 4096 cycles and are the curve's whole cost per reading, so there is one for each case. */
static void watch_readings(void) {
  bool for_curve = fast && !block_queue_waiting();
  const uint16_t *readings = stream_batch();
  uint8_t *room = for_curve ? curve_room() : 0;
  uint16_t batch_sum = 0;
  uint8_t most = 0;
  if (room) {
    for (uint8_t i = STREAM_BATCH_READINGS; i > 0; i--) {
      uint16_t reading = *readings++;
      uint8_t value = eight_bits(reading);
      batch_sum += reading;
      *room++ = value;
      if (value > most) most = value;
    }
  } else {
    uint8_t span = for_curve ? curve_span() : 0;
    uint16_t span_sum = 0;
    uint8_t to_come = span; /* from 0 it takes 256 */
    for (uint8_t i = STREAM_BATCH_READINGS; i > 0; i--) {
      uint16_t reading = *readings++;
      uint8_t value = eight_bits(reading);
      batch_sum += reading;
      if (value > most) most = value;
      span_sum += reading;
      if (--to_come == 0) {
        curve_take_span(span_sum);
        span_sum = 0;
        to_come = span;
      }
    }
  }
  uint16_t begin = stream_begin();
  stream_next();
  if (watched != CHANNEL_CENTRE_LOW) {
    /* No light of the centre. */
  } else if (fast) {
    add_to_light(batch_sum);
  } else {
    centre_sum = batch_sum;
    paused = true;
    stream_stop();
  }
  if (for_curve && curve_take(most, batch_sum, dark_code())) {
    tell_begin(begin);
  }
}

static void make_block(bool whole) {
  if (whole) {
    block_queue_put(&block);
  }
  block.index++;
  if (--blocks_wanted == 0) {
    watch_centre();
  }
}

static void read_threshold(void) {
  sum += block.sum;
  batches++;
  if (SETTLING_BATCHES != 0 && batches == 0) {
    sum = 0;
  }
  if (batches != THRESHOLD_BATCHES) {
    return;
  }
  if (CONFIG_STARTER_RIG) {
    low_sum = high_sum = sum;
    thresholds_set((uint8_t)(((sum + 128) >> 8) - 1), CONFIG_HIGH_CODE);
    watch_centre();
    return;
  }
  if (task == READ_LOW) {
    low_sum = sum;
    task = READ_HIGH;
    batches = 0;
    sum = 0;
    stream_start(BOARD_ADC_HIGH_THRESHOLD, STREAM_SLOW);
  } else {
    high_sum = sum;
    watch_centre();
  }
}

/* Not inlined, or light_tend would save registers for it each time that nothing is to be done. */
static void __attribute__((noinline)) take_batch(void) {
  bool whole = stream_whole();
  if (task == WATCH_CENTRE) {
    if (change_watched()) {
      return;
    }
    if (whole) {
      watch_readings();
    } else {
      stream_next();
      batches = 0;
      sum = 0;
      curve_lost();
    }
    return;
  }
  block_gather(&block, stream_batch());
  stream_next();
  if (task == MAKE_BLOCKS) {
    if (whole && block_channel == CHANNEL_CENTRE_LOW) {
      centre_sum = block.sum;
    }
    make_block(whole);
  } else if (whole) {
    read_threshold();
  }
}

void light_tend(void) {
  if (!paused && !curve_halve() && stream_ready()) {
    take_batch();
  }
}

void light_watch_once(void) { fast = false; }

void light_watch_on(void) {
  fast = true;
  watch_centre();
}

void light_watch(uint8_t channel) {
  if (channel != watched) {
    curve_suspend();
  }
  asked = channel;
}

uint16_t light_centre(void) { return centre_sum; }

bool light_ask_blocks(uint8_t channel, uint16_t blocks) {
  if (task == READ_LOW || task == READ_HIGH) {
    return false;
  }
  block_queue_clear();
  block_channel = channel;
  blocks_wanted = blocks;
  block.index = 0;
  if (blocks != 0) {
    paused = false;
    task = MAKE_BLOCKS;
    stream_start(adc_of(channel), STREAM_SLOW);
  } else if (task == MAKE_BLOCKS) {
    watch_centre();
  }
  return true;
}

uint8_t light_block_channel(void) { return block_channel; }

bool light_ask_thresholds(void) {
  if (task != WATCH_CENTRE) {
    return false;
  }
  curve_suspend();
  paused = false;
  task = READ_LOW;
  batches = (uint8_t)-SETTLING_BATCHES; /* up to 0 they are not counted */
  sum = 0;
  stream_start(BOARD_ADC_LOW_THRESHOLD, STREAM_SLOW);
  return true;
}

bool light_thresholds_ready(void) { return task != READ_LOW && task != READ_HIGH; }
uint16_t light_low_threshold(void) { return low_sum; }
uint16_t light_high_threshold(void) { return high_sum; }
