/* Edges from the interrupts to the main loop, and what happens when they come too fast. */
#ifndef CAPTURE_H
#define CAPTURE_H

#include <stdbool.h>
#include <stdint.h>

void capture_start(void);
/* One slice of the main loop: fills the hands of edges.h, ends floods. Bounded, about 150 cycles. */
void capture_tend(void);
/* The same for the knob contact, which has no interrupt. Right before lines are begun. */
void capture_tend_knob(void);
/* True when rings and hands are empty. The handlers run within some ten cycles of an edge, so pins that were read before
   this call hold no edge that is still unknown. */
bool capture_quiet(void);

#endif
