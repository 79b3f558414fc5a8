#include "transmit.h"

#include <stdbool.h>
#include <stdint.h>

#include "block.h"
#include "command.h"
#include "command_queue.h"
#include "config.h"
#include "curve.h"
#include "curve_send.h"
#include "edges.h"
#include "lines.h"
#include "reference.h"
#include "status.h"
#include "sweep.h"
#include "timebase.h"
#include "uart.h"

/* Half periods since the last beat from which on an edge is one of before it, stamped by its own latency earlier. */
#define BEFORE_BEAT 192

static uint8_t beat_halves; /* half count, low byte, of the last beat or greeting */
static bool counters_due;   /* behind a beat, when edges were counted */

/* Half count, low byte, of a beat that would be sent now. While edges wait it is of the time before them: those told after it
   are then no earlier than it, however long they have waited, and within reach of its 48 bits. */
static uint8_t next_beat_halves(void) {
  return edges_waiting() ? (uint8_t)(edges_next_ticks32() >> 15) : (uint8_t)timebase_halves;
}

static void send_beat(void) {
  beat_halves = next_beat_halves();
  lines_beat();
  counters_due = status_edges_changed();
}

void transmit_start(void) {
  beat_halves = (uint8_t)timebase_halves;
  lines_greeting();
}

static void send_counters(void) {
  counters_due = false;
  lines_counters();
}

/* The locals of these are static, as a stack frame would make the compiler close interrupts around its making. */
static void send_edge(void) {
  static struct edge edge;
  edges_next(&edge);
  lines_edge(&edge);
}

static void send_block(void) {
  static struct block block;
  block_queue_take(&block);
  lines_block(&block);
}

static void send_curve(void) {
  static struct curve_line part;
  if (curve_send_next_line(&part)) {
    lines_curve(&part);
  }
}

static void send_pulse(void) {
  lines_pulse(reference_pulse());
  reference_told();
}

static void send_trip(void) {
  lines_trip(sweep_trip());
  sweep_trip_told();
}

static void answer_sweep(void) {
  lines_answer(sweep_command_seq(), RESULT_DONE);
  sweep_answered();
}

/* Edges go before all else, except a beat that would come too late for a host to widen ticks by; light blocks and the light
   curve, of which only one waits at a time, go last. */
static void start_line(void) {
  uint8_t since_beat = (uint8_t)(next_beat_halves() - beat_halves);
  if (since_beat >= BEFORE_BEAT) {
    since_beat = 0;
  }
  if (since_beat >= CONFIG_BEAT_FORCED_HALVES) {
    send_beat();
  } else if (edges_waiting()) {
    send_edge();
  } else if (since_beat >= CONFIG_BEAT_HALVES) {
    send_beat();
  } else if (counters_due || status_changed()) {
    send_counters();
  } else if (reference_pulse_waiting()) {
    send_pulse();
  } else if (sweep_trip_waiting()) {
    send_trip();
  } else if (sweep_over()) {
    answer_sweep();
  } else if (command_queue_start_line()) {
    return;
  } else if (block_queue_waiting()) {
    send_block();
  } else if (curve_waiting()) {
    send_curve();
  }
}

void transmit_continue(void) {
  if (lines_busy() && uart_can_send()) {
    uart_send(lines_next());
  }
}

void transmit_tend(void) {
  if (!lines_busy() && uart_can_send()) {
    start_line();
  }
}
