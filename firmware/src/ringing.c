#include "ringing.h"

#include "board.h"
#include "config.h"

static bool click_alone(const struct entry *before, const struct entry *after) {
  return ((before->bytes[0] ^ after->bytes[0]) & BOARD_PORTD_MASK) == 1 << BOARD_CLICK_BIT &&
         ((before->bytes[3] ^ after->bytes[3]) & 1 << SNAPSHOT_RELEASE_BIT) == 0;
}

static uint16_t count_of(const struct entry *entry) { return (uint16_t)(entry->bytes[2] << 8 | entry->bytes[1]); }

/* Low seven bits of the half count of the reading itself; see ticks_halves. */
static uint8_t halves_of(const struct entry *entry) {
  uint8_t seen = entry->bytes[3] & 0x7F;
  return (uint8_t)((seen ^ entry->bytes[2] >> 7) & 1 ? seen + 1 : seen);
}

bool ringing_covers(const struct entry *first, const struct entry *second, const struct entry *third,
                    const struct entry *last) {
  return click_alone(first, second) && click_alone(second, third) && click_alone(third, last) &&
         ((uint8_t)(halves_of(last) - halves_of(first)) & 0x7F) <= 1 &&
         (uint16_t)(count_of(last) - count_of(first)) < CONFIG_RINGING_TICKS;
}
