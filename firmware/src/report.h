/* Chooses which line goes next and feeds it to the serial line. Main loop only. */
#ifndef REPORT_H
#define REPORT_H

/* Greets. */
void report_start(void);
/* One slice of the main loop: at most one character. */
void report_tend(void);

#endif
