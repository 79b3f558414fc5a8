#include "ring.h"

#include "tap.h"

int main(void) {
  uint8_t write = 0, read = 0;
  int stored = 0;
  while (!ring_full(write, read)) {
    write = ring_after(write);
    stored++;
  }
  tap_check(stored == RING_CAPACITY, "63 entries fit");
  tap_check(ring_waiting(write, read) == RING_CAPACITY, "and are counted");
  bool right = true;
  for (int i = 0; i < 1000; i++) {
    read = ring_after(read);
    right = right && !ring_full(write, read) && ring_waiting(write, read) == RING_CAPACITY - 1;
    write = ring_after(write);
    right = right && ring_full(write, read);
  }
  tap_check(right, "one out, one in, around the ring many times");
  while (write != read) read = ring_after(read);
  tap_check(ring_waiting(write, read) == 0, "empty again");
  right = true;
  for (int w = 0; w < 256; w++) {
    for (int r = 0; r < 256; r++) {
      right = right && ring_sound((uint8_t)w, (uint8_t)r) == (w % 4 == 0 && r % 4 == 0);
    }
  }
  tap_check(right, "an offset between slots is unsound");
  return tap_done();
}
