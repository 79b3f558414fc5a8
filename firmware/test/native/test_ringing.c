/* Which of four snapshots are ringing. */
#include "../../src/ringing.h"

#include "board.h"
#include "config.h"
#include "tap.h"

#define CLICK (1 << BOARD_CLICK_BIT)

static struct entry at(uint32_t ticks, uint8_t pins, bool release_pin) {
  uint16_t count = (uint16_t)ticks;
  uint8_t halves = (ticks >> 15) & 0x7F;
  struct entry entry = {{pins, (uint8_t)count, (uint8_t)(count >> 8),
                         (uint8_t)(halves | (release_pin ? 1 << SNAPSHOT_RELEASE_BIT : 0))}};
  return entry;
}

static bool covers(struct entry a, struct entry b, struct entry c, struct entry d) {
  return ringing_covers(&a, &b, &c, &d);
}

/* Four changes of the click, evenly within a span, the first from a tick on. */
static bool swings(uint32_t from, uint32_t span) {
  return covers(at(from, CLICK, true), at(from + span / 3, 0, true), at(from + 2 * span / 3, CLICK, true),
                at(from + span, 0, true));
}

int main(void) {
  tap_check(swings(1000, 3000), "four changes of the click within 0.5 ms are ringing");
  tap_check(swings(1000, CONFIG_RINGING_TICKS - 1) && !swings(1000, CONFIG_RINGING_TICKS), "up to the span of the options");
  bool wraps = true, late = true;
  for (uint32_t from = 0; from < 0x480000; from += 977) {
    wraps = wraps && swings(from, 3000);
    late = late && !swings(from, 65536 + 3000) && !swings(from, 32768 + 3000);
  }
  tap_check(wraps, "across every wrap of the counter and of the half count");
  tap_check(late, "one or two wraps later they are not");
  struct entry last = at(4000, 0, true);
  last.bytes[3] = (uint8_t)((last.bytes[3] & 0x80) | 0x7E);
  tap_check(!covers(at(1000, CLICK, true), at(2000, 0, true), at(3000, CLICK, true), last),
            "a half count far off is not taken for near");
  last = at(33000, 0, true);
  last.bytes[3] &= 0x80; /* the main loop had not yet counted the second half */
  tap_check(covers(at(30000, CLICK, true), at(31000, 0, true), at(32000, CLICK, true), last),
            "a half that was not counted yet does not part them");
  tap_check(!covers(at(1000, CLICK, true), at(2000, 0, true), at(3000, CLICK | 1 << 6, true), at(4000, 1 << 6, true)),
            "a change of light between them is kept");
  tap_check(!covers(at(1000, CLICK, true), at(2000, 0, true), at(3000, CLICK, false), at(4000, 0, false)),
            "a press of the release between them is kept");
  tap_check(covers(at(1000, CLICK | 3, true), at(2000, 1, true), at(3000, CLICK | 8, true), at(4000, 2, true)),
            "pins that are no inputs of ours play no part");
  tap_check(!covers(at(1000, CLICK, true), at(2000, CLICK, true), at(3000, 0, true), at(4000, CLICK, true)),
            "a mark without a change is kept");
  return tap_done();
}
