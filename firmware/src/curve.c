#include "curve.h"

#include <stddef.h>

#define OPENING_BLOCKS CONFIG_CURVE_OPENING_BLOCKS
#define PLATEAU_VALUES CONFIG_CURVE_PLATEAU_VALUES
#define PAIRS (PLATEAU_VALUES / 2)
#define PAIRS_AT_ONCE 8

_Static_assert(PLATEAU_VALUES % 2 == 0, "the plateau is averaged two by two");
_Static_assert(sizeof((struct curve_memory *)0)->tail <= sizeof(struct curve_memory) - sizeof((struct curve_memory *)0)->opening -
                                                           sizeof((struct curve_memory *)0)->halves,
               "a tail takes no more than closing window and plateau");
_Static_assert(CURVE_TAIL_VALUES <= 252, "they are counted in a byte, a block at a time");

enum state {
  WATCHING, /* the opening window goes round */
  OPENING,  /* and is filled up */
  OPEN,     /* the closing window goes round */
  TAIL,     /* of a long curve */
  COMPLETE  /* waits to be sent */
};

struct curve curve;
static enum state state;
static bool enabled;
static bool long_asked;
static uint8_t dark;   /* blocks since it was last light, up to FF */
static uint8_t place;  /* block of the window that is written next */
static uint8_t paired; /* pairs that are averaged; PAIRS: nothing to do */

static void watch(void) {
  state = WATCHING;
  place = 0;
  curve.filled = 0;
}

void curve_start(void) {
  enabled = true;
  long_asked = false;
  curve.number = 0;
  dark = 0;
  watch();
}

void curve_ask_long(void) { long_asked = true; }

void curve_enable(bool on) {
  enabled = on;
  long_asked = false;
  if (!on) {
    curve_suspend();
  }
}

uint8_t *curve_room(void) {
  if (state == COMPLETE || state == TAIL) {
    return NULL;
  }
  return state == OPEN ? light_memory.curve.closing[place] : light_memory.curve.opening[place];
}

static uint16_t mean(uint16_t a, uint16_t b) { return (uint16_t)((a & b) + ((a ^ b) >> 1)); }

bool curve_halve(void) {
  if (state != OPEN || paired == PAIRS) {
    return false;
  }
  const uint16_t *from = light_memory.curve.plateau + 2 * paired;
  uint16_t *to = light_memory.curve.plateau + paired;
  for (uint8_t i = PAIRS_AT_ONCE; i > 0 && paired != PAIRS; i--) {
    *to++ = mean(from[0], from[1]);
    from += 2;
    paired++;
  }
  return true;
}

static void add_to_plateau(uint16_t sum) {
  uint16_t value = (uint16_t)(sum << 2);
  uint16_t bit = 1;
  for (uint8_t k = 0; k < curve.level; k++) {
    if (!(curve.waiting & bit)) {
      light_memory.curve.halves[k] = value;
      curve.waiting |= bit;
      return;
    }
    curve.waiting &= (uint16_t)~bit;
    value = mean(light_memory.curve.halves[k], value);
    bit = (uint16_t)(bit << 1);
  }
  light_memory.curve.plateau[curve.values++] = value;
  if (curve.values == PLATEAU_VALUES) {
    curve.values = PAIRS;
    paired = 0;
    curve.level++;
  }
}

static void complete(void) {
  while (curve_halve()) {
  }
  state = COMPLETE;
}

static bool take_opening(bool begins) {
  place = curve_block_after(place, OPENING_BLOCKS);
  if (state == OPENING) {
    curve.filled++;
  } else if (curve.filled <= CONFIG_CURVE_BEFORE_BLOCKS) {
    curve.filled++;
    begins = begins && curve.filled > CONFIG_CURVE_BEFORE_BLOCKS;
  }
  if (state == WATCHING && begins) {
    state = OPENING;
    curve.opening_first = place >= curve.filled ? place - curve.filled : (uint8_t)(place + OPENING_BLOCKS - curve.filled);
    curve.level = 0;
    curve.values = 0;
    paired = PAIRS;
    curve.waiting = 0;
    curve.closing = 0;
    curve.cut_off = false;
    curve.is_long = long_asked;
    return true;
  }
  if (curve.filled == OPENING_BLOCKS) {
    if (curve.is_long) {
      state = TAIL;
      curve.span = dark != 0 ? 4 : 8;
    } else if (dark >= CONFIG_CURVE_AFTER_BLOCKS) {
      complete();
    } else {
      state = OPEN;
      place = 0;
    }
  }
  return false;
}

static void take_closing(uint16_t sum) {
  if (curve.closing >= CURVE_CLOSING_BLOCKS) {
    add_to_plateau(light_memory.curve.closing_sums[place]);
  }
  light_memory.curve.closing_sums[place] = sum;
  place = curve_block_after(place, CURVE_CLOSING_BLOCKS);
  curve.closing++;
  if (dark >= CONFIG_CURVE_AFTER_BLOCKS) {
    complete();
  } else if (curve.closing == CURVE_LONGEST_BLOCKS) {
    curve.cut_off = true;
    complete();
  }
}

uint8_t curve_span(void) { return state == TAIL ? curve.span : 0; }

void curve_take_span(uint16_t sum) { light_memory.curve.tail[curve.values++] = (uint16_t)(sum << (curve.span == 4 ? 4 : 3)); }

/* A rebound brighter than the low threshold begins the count of dark again; then the memory is the end. */
static void end_tail(void) {
  bool full = curve.values > CURVE_TAIL_VALUES - (curve.span == 4 ? 4 : 2);
  if (full || dark >= CURVE_TAIL_DARK_BLOCKS) {
    curve.cut_off = dark < CONFIG_CURVE_AFTER_BLOCKS;
    long_asked = false;
    complete();
  }
}

bool curve_take(uint8_t most, uint16_t sum, uint8_t low_code) {
  bool rested = dark >= CONFIG_CURVE_REST_BLOCKS;
  if (most > low_code) {
    dark = 0;
  } else if (dark != 0xFF) {
    dark++;
  }
  if (state == OPEN) {
    take_closing(sum);
  } else if (state == TAIL) {
    end_tail();
  } else if (state != COMPLETE) {
    return take_opening(enabled && rested && dark == 0);
  }
  return false;
}

void curve_begun(uint32_t ticks32, uint8_t channel) {
  curve.first = ticks32 - CONFIG_CURVE_BEFORE_BLOCKS * (uint32_t)CURVE_BLOCK_TICKS;
  curve.channel = channel;
}

void curve_lost(void) {
  if (state == COMPLETE) {
    return;
  }
  if (state != WATCHING) {
    curve.number++;
    dark = 0;
  }
  watch();
}

void curve_suspend(void) {
  if (state == OPENING || state == OPEN || state == TAIL) {
    curve.cut_off = true;
    dark = 0;
    complete();
  } else if (state == WATCHING) {
    watch();
  }
}

bool curve_waiting(void) { return state == COMPLETE; }

void curve_sent(void) {
  curve.number++;
  watch();
}
