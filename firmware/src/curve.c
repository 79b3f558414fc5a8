#include "curve.h"

#include <stddef.h>

#include "light_memory.h"

#define OPENING_BLOCKS CONFIG_CURVE_OPENING_BLOCKS
#define PLATEAU_VALUES CONFIG_CURVE_PLATEAU_VALUES
#define PAIRS (PLATEAU_VALUES / 2)
#define PAIRS_AT_ONCE 8
#define LINE_BYTES 32

_Static_assert(PLATEAU_VALUES % 2 == 0, "the plateau is averaged two by two");
_Static_assert(sizeof((struct curve_memory *)0)->tail <= sizeof(struct curve_memory) - sizeof((struct curve_memory *)0)->opening -
                                                           sizeof((struct curve_memory *)0)->halves,
               "a tail takes no more than closing window and plateau");
_Static_assert(CURVE_TAIL_VALUES <= 252, "they are counted in a byte, a block at a time");

enum { PART_OPENING, PART_PLATEAU, PART_CLOSING, PART_TAIL };
enum { FLAG_LAST = 1, FLAG_CUT_OFF = 4 };

enum state {
  WATCHING, /* the opening window goes round */
  OPENING,  /* and is filled up */
  OPEN,     /* the closing window goes round */
  TAIL,     /* of a long curve */
  SENDING
};

static enum state state;
static bool enabled;
static bool long_asked;
static bool is_long;          /* the curve under way */
static uint8_t span;          /* readings of a value of the tail: 4 or 8 */
static uint8_t number;        /* of the next curve */
static uint8_t dark;          /* blocks since it was last light, up to FF */
static uint8_t place;         /* block of the window that is written next; while sending, that is sent next */
static uint8_t opening_first; /* where the opening window begins */
static uint8_t filled;        /* blocks of the opening window that count */
static uint8_t level;         /* a value of the plateau is the mean of 2^level blocks */
static uint8_t values;        /* on the plateau, or of the tail */
static uint8_t paired;        /* pairs that are averaged; PAIRS: nothing to do */
static uint16_t waiting;      /* bit k: halves[k] waits */
static uint32_t closing;      /* blocks that went into the closing window */
static bool cut_off;
static uint32_t first;        /* tick of the first reading; while sending, of the part that comes next */

/* Sending. Parts in order: opening, plateau, what waits in halves from the longest to the shortest, closing. */
static enum { SEND_OPENING, SEND_PLATEAU, SEND_HALVES, SEND_CLOSING, SEND_TAIL, SENT } stage;
static uint8_t part;
static uint8_t left;          /* of the part under way: blocks of a window, values of the plateau */
static uint16_t index;        /* of the value that is sent next */
static uint16_t *next_value;

static void watch(void) {
  state = WATCHING;
  place = 0;
  filled = 0;
}

void curve_start(void) {
  enabled = true;
  long_asked = false;
  number = 0;
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
  if (state == SENDING || state == TAIL) {
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
  for (uint8_t k = 0; k < level; k++) {
    if (!(waiting & bit)) {
      light_memory.curve.halves[k] = value;
      waiting |= bit;
      return;
    }
    waiting &= (uint16_t)~bit;
    value = mean(light_memory.curve.halves[k], value);
    bit = (uint16_t)(bit << 1);
  }
  light_memory.curve.plateau[values++] = value;
  if (values == PLATEAU_VALUES) {
    values = PAIRS;
    paired = 0;
    level++;
  }
}

static void send(void) {
  while (curve_halve()) {
  }
  state = SENDING;
  stage = SEND_OPENING;
  left = 0;
}

static uint8_t after(uint8_t block, uint8_t blocks) { return ++block == blocks ? 0 : block; }

static bool take_opening(bool begins) {
  place = after(place, OPENING_BLOCKS);
  if (state == OPENING) {
    filled++;
  } else if (filled <= CONFIG_CURVE_BEFORE_BLOCKS) {
    filled++;
    begins = begins && filled > CONFIG_CURVE_BEFORE_BLOCKS;
  }
  if (state == WATCHING && begins) {
    state = OPENING;
    opening_first = place >= filled ? place - filled : (uint8_t)(place + OPENING_BLOCKS - filled);
    level = 0;
    values = 0;
    paired = PAIRS;
    waiting = 0;
    closing = 0;
    cut_off = false;
    is_long = long_asked;
    return true;
  }
  if (filled == OPENING_BLOCKS) {
    if (is_long) {
      state = TAIL;
      span = dark != 0 ? 4 : 8;
    } else if (dark >= CONFIG_CURVE_AFTER_BLOCKS) {
      send();
    } else {
      state = OPEN;
      place = 0;
    }
  }
  return false;
}

static void take_closing(uint16_t sum) {
  if (closing >= CURVE_CLOSING_BLOCKS) {
    add_to_plateau(light_memory.curve.closing_sums[place]);
  }
  light_memory.curve.closing_sums[place] = sum;
  place = after(place, CURVE_CLOSING_BLOCKS);
  closing++;
  if (dark >= CONFIG_CURVE_AFTER_BLOCKS) {
    send();
  } else if (closing == CURVE_LONGEST_BLOCKS) {
    cut_off = true;
    send();
  }
}

uint8_t curve_span(void) { return state == TAIL ? span : 0; }

void curve_take_span(uint16_t sum) { light_memory.curve.tail[values++] = (uint16_t)(sum << (span == 4 ? 4 : 3)); }

/* A rebound brighter than the low threshold begins the count of dark anew; then the memory is the end. */
static void end_tail(void) {
  bool full = values > CURVE_TAIL_VALUES - (span == 4 ? 4 : 2);
  if (full || dark >= CURVE_TAIL_DARK_BLOCKS) {
    cut_off = dark < CONFIG_CURVE_AFTER_BLOCKS;
    long_asked = false;
    send();
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
  } else if (state != SENDING) {
    return take_opening(enabled && rested && dark == 0);
  }
  return false;
}

void curve_begun(uint32_t ticks32) { first = ticks32 - CONFIG_CURVE_BEFORE_BLOCKS * (uint32_t)CURVE_BLOCK_TICKS; }

void curve_lost(void) {
  if (state == SENDING) {
    return;
  }
  if (state != WATCHING) {
    number++;
    dark = 0;
  }
  watch();
}

void curve_suspend(void) {
  if (state == OPENING || state == OPEN || state == TAIL) {
    cut_off = true;
    dark = 0;
    send();
  } else if (state == WATCHING) {
    watch();
  }
}

bool curve_waiting(void) { return state == SENDING; }

static bool begin_part(struct curve_line *line, uint8_t kind, uint8_t count, uint16_t number_of_values, uint8_t shift) {
  part = kind;
  left = count;
  index = 0;
  line->part = kind;
  line->byte_count = 0;
  line->first = first;
  line->period = (uint32_t)CURVE_BLOCK_TICKS << shift;
  line->number = number_of_values;
  line->flags = cut_off ? FLAG_CUT_OFF : 0;
  return true;
}

static bool begin_window(struct curve_line *line, uint8_t kind, uint8_t blocks) {
  begin_part(line, kind, blocks, (uint16_t)(blocks * CURVE_BLOCK_READINGS), 0);
  line->period = CURVE_READING_TICKS;
  first += (uint32_t)blocks * CURVE_BLOCK_TICKS;
  if (stage == SENT) {
    line->flags |= FLAG_LAST;
  }
  return true;
}

static bool begin_plateau(struct curve_line *line, uint8_t count) {
  begin_part(line, PART_PLATEAU, count, count, level);
  for (; count > 0; count--) {
    first += line->period;
  }
  return true;
}

/* The part that comes next, if it holds anything. */
static bool next_part(struct curve_line *line) {
  switch (stage) {
    case SEND_OPENING:
      stage = is_long && values != 0 ? SEND_TAIL : closing == 0 ? SENT : SEND_PLATEAU;
      place = opening_first;
      return begin_window(line, PART_OPENING, filled);
    case SEND_PLATEAU:
      stage = SEND_HALVES;
      next_value = light_memory.curve.plateau;
      return values != 0 && begin_plateau(line, values);
    case SEND_HALVES:
      if (level == 0) {
        stage = SEND_CLOSING;
        return false;
      }
      level--;
      next_value = &light_memory.curve.halves[level];
      return (waiting >> level & 1) && begin_plateau(line, 1);
    case SEND_TAIL:
      stage = SENT;
      next_value = light_memory.curve.tail;
      begin_part(line, PART_TAIL, values, values, 0);
      line->period = (uint32_t)span * CURVE_READING_TICKS;
      line->flags |= FLAG_LAST;
      return true;
    default:
      stage = SENT;
      place = closing < CURVE_CLOSING_BLOCKS ? 0 : (uint8_t)closing % CURVE_CLOSING_BLOCKS;
      return begin_window(line, PART_CLOSING, closing < CURVE_CLOSING_BLOCKS ? (uint8_t)closing : CURVE_CLOSING_BLOCKS);
  }
}

static void window_values(struct curve_line *line) {
  bool opening = part == PART_OPENING;
  uint8_t blocks = opening ? OPENING_BLOCKS : CURVE_CLOSING_BLOCKS;
  line->bytes = opening ? light_memory.curve.opening[place] : light_memory.curve.closing[place];
  for (line->byte_count = 0; line->byte_count < LINE_BYTES && left > 0;) {
    line->byte_count += CURVE_BLOCK_READINGS;
    left--;
    place = after(place, blocks);
    if (place == 0) break; /* the next block stands elsewhere */
  }
  index += line->byte_count;
}

static void mean_values(struct curve_line *line) {
  line->bytes = (const uint8_t *)next_value;
  for (line->byte_count = 0; line->byte_count < LINE_BYTES && left > 0; line->byte_count += 2) {
    uint16_t value = (uint16_t)(*next_value + 2) >> 2;
    *next_value++ = (uint16_t)(value << 8 | value >> 8); /* sent byte by byte, the upper one first */
    left--;
    index++;
  }
}

bool curve_next_line(struct curve_line *line) {
  line->curve = number;
  if (left == 0) {
    while (stage != SENT) {
      if (next_part(line)) {
        return true;
      }
    }
    number++;
    watch();
    return false;
  }
  line->number = index;
  if (part == PART_PLATEAU || part == PART_TAIL) {
    mean_values(line);
  } else {
    window_values(line);
  }
  return true;
}
