#include "uart.h"

#include <avr/io.h>

#include "config.h"
#include "status.h"

/* Double speed for 115200 only: 2.1 % off instead of 3.5 %. The others divide exactly either way, and the normal mode
   samples each bit more often. */
#if CONFIG_BAUD == 115200
#define DOUBLE_SPEED 1
#define DIVISOR 16
#elif CONFIG_BAUD == 250000
#define DOUBLE_SPEED 0
#define DIVISOR 3
#elif CONFIG_BAUD == 500000
#define DOUBLE_SPEED 0
#define DIVISOR 1
#else
#error "CONFIG_BAUD must be 115200, 250000 or 500000"
#endif

void uart_start(void) {
  UBRR0 = DIVISOR;
  UCSR0A = DOUBLE_SPEED << U2X0;
  UCSR0C = 1 << UCSZ01 | 1 << UCSZ00;
  UCSR0B = 1 << RXEN0 | 1 << TXEN0;
}

bool uart_can_send(void) { return UCSR0A & (1 << UDRE0); }

void uart_send(char c) { UDR0 = (uint8_t)c; }

bool uart_has_received(void) { return UCSR0A & (1 << RXC0); }

uint8_t uart_receive(void) {
  uint8_t state = UCSR0A; /* before the byte, which takes the error flags with it */
  if (state & (1 << DOR0 | 1 << FE0)) {
    status_count_lost_bytes(1);
  }
  return UDR0;
}
