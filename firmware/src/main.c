/* Halflight rig firmware: stamps edges, reads light, talks the line protocol. See ../README.md for how the parts fit. */
#include <avr/interrupt.h>

#include "board.h"
#include "capture.h"
#include "identity.h"
#include "light.h"
#include "orders.h"
#include "report.h"
#include "status.h"
#include "thresholds.h"
#include "timebase.h"
#include "uart.h"

/* Everything but the edges is done by slices in turn. One round takes well under the 40 us between two received bytes. */
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
    orders_tend();
    capture_tend();
    report_tend();
    light_tend();
    capture_tend();
    identity_tend();
    status_tend();
  }
}
