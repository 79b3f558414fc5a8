#include "curve_send.h"

#include "curve.h"

#define LINE_BYTES 32

enum { PART_OPENING, PART_PLATEAU, PART_CLOSING, PART_TAIL };
enum { FLAG_LAST = 1, FLAG_CUT_OFF = 4, FLAG_CHANNEL_SHIFT = 4 };

/* What comes next. Parts in order: opening, plateau, what waits in halves from the longest to the shortest, closing. */
static enum { SEND_OPENING, SEND_PLATEAU, SEND_HALVES, SEND_CLOSING, SEND_TAIL, SENT } stage;
static uint8_t part;
static uint8_t left;   /* of the part under way: blocks of a window, values of the plateau */
static uint8_t place;  /* block of the window that is sent next */
static uint16_t index; /* of the value that is sent next */
static uint16_t *next_value;

static bool begin_part(struct curve_line *line, uint8_t kind, uint8_t count, uint16_t number_of_values, uint8_t shift) {
  part = kind;
  left = count;
  index = 0;
  line->part = kind;
  line->byte_count = 0;
  line->first = curve.first;
  line->period = (uint32_t)CURVE_BLOCK_TICKS << shift;
  line->number = number_of_values;
  line->flags = (uint8_t)(curve.channel << FLAG_CHANNEL_SHIFT) | (curve.cut_off ? FLAG_CUT_OFF : 0);
  return true;
}

static bool begin_window(struct curve_line *line, uint8_t kind, uint8_t blocks) {
  begin_part(line, kind, blocks, (uint16_t)(blocks * CURVE_BLOCK_READINGS), 0);
  line->period = CURVE_READING_TICKS;
  curve.first += (uint32_t)blocks * CURVE_BLOCK_TICKS;
  if (stage == SENT) {
    line->flags |= FLAG_LAST;
  }
  return true;
}

static bool begin_plateau(struct curve_line *line, uint8_t count) {
  begin_part(line, PART_PLATEAU, count, count, curve.level);
  for (; count > 0; count--) {
    curve.first += line->period;
  }
  return true;
}

/* The part that comes next, if it holds anything. */
static bool next_part(struct curve_line *line) {
  switch (stage) {
    case SEND_OPENING:
      stage = curve.is_long && curve.values != 0 ? SEND_TAIL : curve.closing == 0 ? SENT : SEND_PLATEAU;
      place = curve.opening_first;
      return begin_window(line, PART_OPENING, curve.filled);
    case SEND_PLATEAU:
      stage = SEND_HALVES;
      next_value = light_memory.curve.plateau;
      return curve.values != 0 && begin_plateau(line, curve.values);
    case SEND_HALVES:
      if (curve.level == 0) {
        stage = SEND_CLOSING;
        return false;
      }
      curve.level--;
      next_value = &light_memory.curve.halves[curve.level];
      return (curve.waiting >> curve.level & 1) && begin_plateau(line, 1);
    case SEND_TAIL:
      stage = SENT;
      next_value = light_memory.curve.tail;
      begin_part(line, PART_TAIL, curve.values, curve.values, 0);
      line->period = (uint32_t)curve.span * CURVE_READING_TICKS;
      line->flags |= FLAG_LAST;
      return true;
    default:
      stage = SENT;
      place = curve.closing < CURVE_CLOSING_BLOCKS ? 0 : (uint8_t)curve.closing % CURVE_CLOSING_BLOCKS;
      return begin_window(line, PART_CLOSING, curve.closing < CURVE_CLOSING_BLOCKS ? (uint8_t)curve.closing : CURVE_CLOSING_BLOCKS);
  }
}

static void window_values(struct curve_line *line) {
  bool opening = part == PART_OPENING;
  uint8_t blocks = opening ? CONFIG_CURVE_OPENING_BLOCKS : CURVE_CLOSING_BLOCKS;
  line->bytes = opening ? light_memory.curve.opening[place] : light_memory.curve.closing[place];
  for (line->byte_count = 0; line->byte_count < LINE_BYTES && left > 0;) {
    line->byte_count += CURVE_BLOCK_READINGS;
    left--;
    place = curve_block_after(place, blocks);
    if (place == 0) break; /* the next block is elsewhere */
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

bool curve_send_next_line(struct curve_line *line) {
  line->curve = curve.number;
  if (left == 0) {
    while (stage != SENT) {
      if (next_part(line)) {
        return true;
      }
    }
    stage = SEND_OPENING;
    curve_sent();
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
