#ifndef BENCH_LED_DRIVE_H
#define BENCH_LED_DRIVE_H

struct bench;

/* Listens to the two pins that drive the reference LED, D9 (square) and D10 (ramped). simavr moves a pin behind the
   instruction under way, up to three cycles after the timer's match; on silicon it moves with the timer. The light follows
   the match. */
void led_drive_begin(struct bench *bench);
/* After a reset, which lets the pins float: the LED's pull-down resistors hold it off. */
void led_drive_reset(struct bench *bench);

#endif
