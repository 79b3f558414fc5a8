/* Halflight rig firmware: stamps edges, reads light, talks the line protocol. See ../README.md for how the parts fit. */
#include <avr/interrupt.h>

#include "board.h"
#include "capture.h"
#include "identity.h"
#include "light.h"
#include "orders.h"
#include "reference.h"
#include "report.h"
#include "status.h"
#include "sweep.h"
#include "thresholds.h"
#include "timebase.h"
#include "uart.h"

/* What cannot wait for a whole round: received bytes, the next character of a line, and the ADC, of which readings of half a
   millisecond are kept. */
static void short_slices(void) {
  reference_tend();
  sweep_tend();
  report_continue();
  orders_tend();
  light_tend();
  reference_tend();
  orders_tend();
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
  orders_start();
  report_start();
  sei();
  capture_start();
  for (;;) {
    timebase_tend();
    short_slices();
    capture_tend();
    short_slices();
    report_tend();
    short_slices();
    identity_tend();
    status_tend();
  }
}
