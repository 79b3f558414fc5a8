/* Serial line, polled. The main loop comes round within two bytes at 250000 baud. */
#ifndef UART_H
#define UART_H

#include <stdbool.h>
#include <stdint.h>

void uart_start(void);
bool uart_can_send(void);
/* Only when uart_can_send. */
void uart_send(char c);
/* Takes a received byte; UART_NOTHING when there is none. Bytes lost before it go to the counters. */
int16_t uart_receive(void);
#define UART_NOTHING (-1)

#endif
