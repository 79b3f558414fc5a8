/* Chooses which line goes next and feeds it to the serial line. Main loop only. */
#ifndef TRANSMIT_H
#define TRANSMIT_H

/* Greets. */
void transmit_start(void);
/* One slice of the main loop: starts the next line when none is under way. */
void transmit_tend(void);
/* A short slice: the next character of a line under way. */
void transmit_continue(void);

#endif
