#include "report.h"

#include <stdbool.h>
#include <stdint.h>

#include "block.h"
#include "config.h"
#include "edges.h"
#include "lines.h"
#include "orders.h"
#include "status.h"
#include "timebase.h"
#include "uart.h"

static uint8_t beat_halves; /* half count, low byte, at the last beat or greeting */
static bool counters_due;   /* behind a beat, when edges were counted */

static void send_beat(void) {
  beat_halves = (uint8_t)timebase_halves;
  lines_beat();
  counters_due = status_edges_changed();
}

void report_start(void) {
  beat_halves = (uint8_t)timebase_halves;
  lines_greeting();
}

/* Edges go before all else, except a beat that would come too late for a host to widen ticks by; light blocks go last. */
static bool start_line(void) {
  uint8_t since_beat = (uint8_t)((uint8_t)timebase_halves - beat_halves);
  /* static: a stack frame would make the compiler close interrupts around its making */
  static struct edge edge;
  static struct block block;
  if (since_beat >= CONFIG_BEAT_FORCED_HALVES) {
    send_beat();
    return true;
  }
  if (edges_next(&edge)) {
    lines_edge(&edge);
    return true;
  }
  if (since_beat >= CONFIG_BEAT_HALVES) {
    send_beat();
    return true;
  }
  if (counters_due || status_changed()) {
    counters_due = false;
    lines_counters();
    return true;
  }
  if (orders_start_line()) {
    return true;
  }
  if (block_queue_take(&block)) {
    lines_block(&block);
    return true;
  }
  return false;
}

void report_continue(void) {
  if (lines_busy() && uart_can_send()) {
    uart_send(lines_next());
  }
}

void report_tend(void) {
  if (!lines_busy() && uart_can_send() && start_line()) {
    uart_send(lines_next());
  }
}
