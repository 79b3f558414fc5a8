/* Chooses which line goes next and feeds it to the serial line. Main loop only. */
#ifndef REPORT_H
#define REPORT_H

/* Greets. */
void report_start(void);
/* One slice of the main loop: starts the next line when none is under way. */
void report_tend(void);
/* A short slice: the next character of a line under way. */
void report_continue(void);

#endif
