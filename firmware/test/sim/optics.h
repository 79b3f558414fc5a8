#ifndef BENCH_OPTICS_H
#define BENCH_OPTICS_H

#include <stdbool.h>
#include <stdint.h>

#include "curve.h"
#include "pins.h"
#include "threshold.h"

/* Lamp, shutter, photodiodes with their front end, and the comparators behind them.

   The signal of a sensor is  dark + (full - dark) * z(t) * ripple(t) + noise(t), kept between 0 and the supply, where z is
   opening times lamp level behind the one-pole lag. The lag does not delay the ripple (100 Hz against microseconds), the
   noise is added behind it and redrawn every microsecond. Between two knots of a curve z is known in closed form, so
   crossings are found to one cycle by halving, and a bench at rest costs nothing. */

#define SENSORS 3
enum { SENSOR_CENTRE, SENSOR_OUTER_A, SENSOR_OUTER_B, SENSOR_ALL = -1 };

struct comparator {
  enum pin pin;
  bool level; /* true: more light than the threshold */
};

struct sensor {
  double dark_mv, full_mv;
  double lag_cycles;
  double noise_mv;
  uint64_t noise_seed;

  const struct curve *curve; /* NULL: the opening stays at `resting` */
  cycles_t curve_start;
  size_t cursor;
  double resting;

  /* The step under way, from `begun` up to `ends`: z(begun + s) = straight + slope * s + transient * exp(-s / lag). */
  cycles_t begun, ends;
  double straight, slope, transient;
  cycles_t due; /* when this sensor next has to be looked at */

  struct comparator comparators[2];
  int comparator_count;
};

struct optics {
  struct sensor sensors[SENSORS];
  struct threshold low, high;
  double lamp;
  double ripple_hz, ripple_depth;
  double hysteresis_mv;
  void (*switched)(void *context, enum pin pin, bool level);
  void *context;
};

void optics_begin(struct optics *optics, void (*switched)(void *context, enum pin pin, bool level), void *context);
/* Call after anything in optics or its sensors was changed. The change counts from `at`, which may lie a few cycles back:
   the bench gets to it only between two instructions. */
void optics_changed(struct optics *optics, cycles_t at);
void optics_fire(struct optics *optics, cycles_t start, int sensor, const struct curve *curve);
void optics_hold(struct optics *optics, cycles_t at, double open);
void optics_lamp(struct optics *optics, cycles_t at, double fraction);
/* Switches the comparators that have to switch by `now`. */
void optics_advance(struct optics *optics, cycles_t now);
/* When optics_advance has to be called next, NEVER while all is at rest. */
cycles_t optics_due(const struct optics *optics);
/* Output of a sensor's front end in millivolts. */
double optics_sensor_mv(const struct optics *optics, int sensor, cycles_t now);

#endif
