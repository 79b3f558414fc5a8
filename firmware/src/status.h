/* Why the board started, what went wrong since, and the one way to stop. Main loop only. */
#ifndef STATUS_H
#define STATUS_H

#include <stdbool.h>
#include <stdint.h>

#include "flash.h"

struct status {
  uint32_t edges;
  uint16_t snapshots_lost; /* stops at FFFF, as the next one */
  uint16_t captures_lost;
  uint16_t floods;
  uint16_t bad_lines;
  uint16_t long_lines;
  uint16_t lost_bytes;
};

/* Numbers in `status_stopped`. */
enum stop_reason {
  STOP_RING_DAMAGED = 1, /* a ring offset that no handler can have written */
  STOP_STACK_FULL = 2    /* the stack has come down to the variables */
};

const struct status *status_now(void);

/* Each of these makes status_changed true until status_told. */
void status_count_snapshot_flood(void);
void status_count_capture_flood(void);
void status_count_bad_line(void);
void status_count_long_line(void);
void status_count_lost_bytes(uint8_t count);
bool status_changed(void);
/* Does not by itself call for an L line, or every edge would. */
void status_count_edge(void);
/* True when edges were counted since status_told. */
bool status_edges_changed(void);
void status_told(void);

/* Word of the greeting: power, brownout, watchdog, external or unknown. */
const FLASH char *status_cause(void);

void status_start(void);
/* One slice of the main loop: stack guard. */
void status_tend(void);

/* The one stop path, for what cannot be repaired while running: no edge is taken any more, the reason is left in
   `status_stopped` for a debugger, and the watchdog restarts the board (cause `watchdog`). */
void status_stop(enum stop_reason reason) __attribute__((noreturn));

#endif
