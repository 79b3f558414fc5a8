/* Serial line, polled. The main loop comes round within two bytes at 250000 baud. */
#ifndef UART_H
#define UART_H

#include <stdbool.h>
#include <stdint.h>

void uart_start(void);
bool uart_can_send(void);
/* Only when uart_can_send. */
void uart_send(char c);
bool uart_has_received(void);
/* Takes a received byte, only when there is one. Bytes lost around it go to the counters. */
uint8_t uart_receive(void);

#endif
