#include "ticks.h"

#include "tap.h"

/* What an interrupt stores at a true time, when the main loop has counted `behind` halves less (0 or 1). */
static uint32_t widened(uint64_t now, uint32_t behind, uint32_t floor) {
  uint32_t halves = (uint32_t)(now >> 15) - behind;
  return ticks_halves(halves & 0x7F, (uint16_t)now, floor);
}

static bool right_around(uint64_t centre) {
  bool right = true;
  for (int64_t step = -70000; step <= 70000; step += 7) {
    uint64_t now = centre + (uint64_t)step;
    uint32_t halves = (uint32_t)(now >> 15);
    for (uint32_t behind = 0; behind <= 1; behind++) {
      for (int age = -1; age <= 126; age += age < 3 ? 1 : 41) {
        uint32_t floor = halves - (uint32_t)age;
        right = right && widened(now, behind, floor) == halves;
      }
    }
    struct ticks ticks = ticks_of(halves, (uint16_t)now);
    right = right && ticks.high == (uint32_t)(now >> 16 & 0x7FFFFFFF) && ticks.low == (uint16_t)now &&
            ticks_low32(ticks) == (uint32_t)now;
  }
  return right;
}

int main(void) {
  tap_check(right_around(0x10000), "around the first wrap of the timer");
  tap_check(right_around(0x3F8000), "around the wrap of the stored seven bits");
  tap_check(right_around(0x100000000), "around the 32-bit wrap of the ticks");
  tap_check(right_around(0x800000000000), "around the wrap of the half count");
  struct ticks ticks = {0x00010000, 0x0005};
  struct ticks less = ticks_less(ticks, 22);
  tap_check(less.high == 0x0000FFFF && less.low == 0xFFEF, "a correction borrows from the upper part");
  less = ticks_less(ticks, 5);
  tap_check(less.high == 0x00010000 && less.low == 0, "a correction down to 0 does not borrow");
  less = ticks_less((struct ticks){0, 3}, 22);
  tap_check(ticks_low32(less) == 0xFFFFFFED, "an edge before tick 22 wraps below 0, as its channel's error does");
  struct ticks back = {0x00020001, 0x0005};
  ticks_back(&back, 0x10006);
  tap_check(back.high == 0x0001FFFF && back.low == 0xFFFF, "going back borrows from the upper part");
  ticks_back(&back, 0xFFFF);
  tap_check(back.high == 0x0001FFFF && back.low == 0, "and not down to 0");
  return tap_done();
}
