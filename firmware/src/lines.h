/* Puts together each kind of line that the rig sends, out of what the other modules know. Main loop only; each call starts
   a line, so lines_busy must be false. */
#ifndef LINES_H
#define LINES_H

#include <stdbool.h>
#include <stdint.h>

#include "block.h"
#include "curve_send.h"
#include "edges.h"
#include "reference.h"
#include "sweep.h"
#include "ticks.h"

bool lines_busy(void);
/* Next character of the line under way. */
char lines_next(void);

void lines_greeting(void);
void lines_edge(const struct edge *edge);
/* A beat of now; while edges wait, of the tick before the first of them, up to which the levels told are right. */
void lines_beat(void);
void lines_counters(void);
void lines_answer(uint16_t command_seq, uint8_t result);
void lines_echo(uint16_t token, const struct ticks *received);
void lines_thresholds(void);
void lines_trip(const struct trip *trip);
void lines_pulse(const struct reference_pulse *pulse);
void lines_block(const struct block *block);
void lines_curve(const struct curve_line *part);

#endif
