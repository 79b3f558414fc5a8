/* Halflight rig firmware: stamps edges, reads light, talks the line protocol. See ../README.md for how the parts fit. */
#include <avr/interrupt.h>

#include "board.h"
#include "capture.h"
#include "command_queue.h"
#include "identity.h"
#include "light.h"
#include "reference.h"
#include "status.h"
#include "sweep.h"
#include "thresholds.h"
#include "timebase.h"
#include "transmit.h"
#include "uart.h"

/* What cannot wait for a whole round: received bytes, the next character of a line, and the ADC, of which readings of half a
   millisecond are kept. */
static void short_slices(void) {
  reference_tend();
  sweep_tend();
  transmit_continue();
  command_queue_tend();
  light_tend();
  reference_tend();
  command_queue_tend();
}

/* Everything but the edges is done by slices in turn. A round takes about 800 cycles, 1700 at most; the receiver
   holds three bytes, 1920 cycles of them at 250000 baud. */
int main(void) {
  board_start();
  status_start();
  timebase_start();
  thresholds_start();
  uart_start();
  identity_start();
  light_start();
  command_queue_start();
  transmit_start();
  sei();
  capture_start();
  for (;;) {
    timebase_tend();
    short_slices();
    capture_tend();
    short_slices();
    capture_tend_knob();
    transmit_tend();
    short_slices();
    identity_tend();
    status_tend();
  }
}
