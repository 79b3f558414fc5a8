#ifndef BENCH_LED_H
#define BENCH_LED_H

#include <stdbool.h>

/* Light of the reference LED at one sensor: the sum of its two drives, each 0 or 1 from the board. The square drive acts at
   once, the ramped one through a low-pass filter of one pole (resistor and capacitor at D10); both pass the lag of the
   sensor's front end. The drives are steady between two switchings, so this is known in closed form:

     square        u + (s0 - u) exp(-t / lag)
     filter        f = v + (f0 - v) exp(-t / filter)
     ramped        v + a exp(-t / filter) + (r0 - v - a) exp(-t / lag),  a = (f0 - v) filter / (filter - lag) */
struct led_light {
  double mv; /* what the lit LED adds at this sensor */
  double square, filtered, ramped; /* at the beginning of the step: s0, f0, r0 */
  double square_to, ramped_to;     /* u, v */
  double lag, filter;              /* cycles */
};

/* Millivolts, `gone` cycles after the beginning of the step. */
double led_mv(const struct led_light *light, double gone);
/* Begins a step `gone` cycles after the last one began. */
void led_step(struct led_light *light, double gone, bool square, bool ramped, double lag_cycles, double filter_cycles);
/* Whether it still has more than that to go. */
bool led_moves(const struct led_light *light, double settled_mv);

#endif
