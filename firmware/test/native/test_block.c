#include "block.h"

#include "config.h"
#include "tap.h"

static bool same(const struct block *a, const struct block *b) {
  return a->index == b->index && a->sum == b->sum && a->least == b->least && a->most == b->most;
}

int main(void) {
  struct block block, out;
  block.index = 7;
  uint16_t readings[BLOCK_READINGS];
  for (uint16_t i = 0; i < BLOCK_READINGS; i++) readings[i] = (uint16_t)(515 - i);
  block_gather(&block, readings);
  tap_check(block.sum == 16 * 500 + 120 && block.least == 500 && block.most == 515 && block.index == 7,
            "sum, least and most of 16 readings");
  for (int i = 0; i < BLOCK_READINGS; i++) readings[i] = 0x3FF;
  block_gather(&block, readings);
  tap_check(block.sum == 0x3FF0 && block.least == 0x3FF && block.most == 0x3FF, "full scale is 3FF0");
  bool right = true;
  for (uint16_t least = 0; least < 1024; least += 31) {
    for (uint16_t most = least; most < 1024; most += 13) {
      struct block in = {(uint16_t)(least * 64 + 1), (uint16_t)(most * 16), least, most};
      block_queue_put(&in);
      block_queue_take(&out);
      right = right && same(&in, &out) && !block_queue_waiting();
    }
  }
  tap_check(right, "the queue gives back what was put into it");
  for (uint16_t i = 0; i < CONFIG_BLOCK_QUEUE + 5; i++) {
    struct block in = {i, i, 0, i};
    block_queue_put(&in);
  }
  uint16_t taken = 0;
  right = true;
  while (block_queue_waiting()) {
    block_queue_take(&out);
    right = right && out.index == taken++;
  }
  tap_check(right && taken == CONFIG_BLOCK_QUEUE, "a full queue drops the newest: its index is missing");
  struct block in = {0xFFFF, 0, 0, 0};
  block_queue_put(&in);
  block_queue_clear();
  tap_check(!block_queue_waiting(), "cleared");
  return tap_done();
}
