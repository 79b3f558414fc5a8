/* Commands of the host, from received bytes to their answers, one after the other in the order they came. Main loop only. */
#ifndef COMMAND_QUEUE_H
#define COMMAND_QUEUE_H

#include <stdbool.h>

void command_queue_start(void);
/* One slice of the main loop: takes a received byte. */
void command_queue_tend(void);
/* Starts the next line that a command is owed (its lines first, its answer last). False when there is none now. Only while
   no line is under way. */
bool command_queue_start_line(void);

#endif
