#include "status.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/wdt.h>

#include "reference.h"

#define GUARD 0xA5

static struct status counts;
static bool changed;
static uint16_t edges_told;

/* Both survive a restart that keeps RAM. */
static uint8_t cause_flags __attribute__((section(".noinit")));
uint8_t status_stopped __attribute__((section(".noinit")));

extern uint8_t _end; /* linker: first byte behind the variables, the last that the stack may take */

/* Before main, as the watchdog stays on at its shortest period after it has bitten, and MCUSR must be clear before it can
   be switched off (data sheet, watchdog timer). A bootloader may have cleared MCUSR already. */
void status_keep_cause(void) __attribute__((naked, used, section(".init3")));
void status_keep_cause(void) {
  cause_flags = MCUSR;
  MCUSR = 0;
  wdt_disable();
}

void status_start(void) {
  _end = GUARD;
  wdt_enable(WDTO_1S);
}

void status_tend(void) {
  if (_end != GUARD) {
    status_stop(STOP_STACK_FULL);
  }
}

const struct status *status_now(void) { return &counts; }

static void count_to_limit(uint16_t *counter) {
  if (*counter != 0xFFFF) {
    (*counter)++;
  }
}

void status_count_snapshot_flood(void) {
  count_to_limit(&counts.snapshots_lost);
  counts.floods++;
  changed = true;
}

void status_count_capture_flood(void) {
  count_to_limit(&counts.captures_lost);
  counts.floods++;
  changed = true;
}

void status_count_bad_line(void) {
  counts.bad_lines++;
  changed = true;
}

void status_count_long_line(void) {
  counts.long_lines++;
  changed = true;
}

void status_count_lost_bytes(uint8_t count) {
  counts.lost_bytes += count;
  changed = true;
}

void status_count_edge(void) { counts.edges++; }

bool status_changed(void) { return changed; }

bool status_edges_changed(void) { return (uint16_t)counts.edges != edges_told; }

void status_told(void) {
  changed = false;
  edges_told = (uint16_t)counts.edges;
}

const FLASH char *status_cause(void) {
  static const FLASH char power[] = "power";
  static const FLASH char brownout[] = "brownout";
  static const FLASH char watchdog[] = "watchdog";
  static const FLASH char external[] = "external";
  static const FLASH char unknown[] = "unknown";
  if (cause_flags & (1 << PORF)) return power;
  if (cause_flags & (1 << BORF)) return brownout;
  if (cause_flags & (1 << WDRF)) return watchdog;
  if (cause_flags & (1 << EXTRF)) return external;
  return unknown;
}

void status_stop(enum stop_reason reason) {
  cli();
  reference_off();
  status_stopped = (uint8_t)reason;
  for (;;) {
  }
}
