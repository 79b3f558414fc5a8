#ifndef BENCH_OPTICS_H
#define BENCH_OPTICS_H

#include <stdbool.h>
#include <stdint.h>

#include "curve.h"
#include "led.h"
#include "pins.h"
#include "threshold.h"

/* Lamp, shutter, photodiodes with their front end, and the comparators behind them.

   The signal of a sensor is  dark + (full - dark) * z(t) * ripple(t) * dimmer(t) + led(t) + noise(t), kept between 0 and the supply, where z is
   opening times lamp level behind the one-pole lag. The lag neither delays the ripple (100 Hz against microseconds) nor
   rounds the dimmer, the noise is added behind it and redrawn every microsecond. Between two knots of a curve z is known in closed form, so
   crossings are found to one cycle by halving, and a bench at rest costs nothing. */

#define SENSORS 3
enum { SENSOR_CENTRE, SENSOR_OUTER_A, SENSOR_OUTER_B, SENSOR_ALL = -1 };

/* A comparator. Its input stands on the other side once the signal has passed threshold, offset and half the hysteresis. It
   decides when the overdrive (millivolts beyond that point), summed over the time since, has reached `need`: a step that
   goes V beyond is decided after need / V, a ramp of slope s after sqrt(2 need / s), so slow ramps take longer; an input that
   goes back before is not seen. The output follows the decision by a fixed delay. */
#define MOST_UNDER_WAY 128 /* decisions within the longest fixed delay: at most one each microsecond */

struct comparator {
  enum pin pin;
  double offset_mv; /* adds to the threshold */
  cycles_t fixed_cycles;
  double need;      /* millivolts times cycles */

  bool level;       /* decided; true: more light than the threshold */
  bool driven;      /* the input stands on the other side */
  double charge;    /* overdrive summed up to `charged_until` */
  cycles_t charged_until;
  cycles_t expected; /* when it was foreseen to cross or to decide */

  struct {
    cycles_t at;
    bool level;
  } under_way[MOST_UNDER_WAY]; /* decided, not yet at the output */
  int first, count;
};

struct sensor {
  double dark_mv, full_mv;
  double lag_cycles;
  double noise_mv;
  uint64_t noise_seed;

  const struct curve *curve; /* NULL: the opening stays at `resting` */
  cycles_t curve_start;
  double curve_rate; /* see curve_from */
  size_t cursor;
  double resting;

  /* The step under way, from `begun` up to `ends`: z(begun + s) = straight + slope * s + transient * exp(-s / lag). */
  cycles_t begun, ends;
  double straight, slope, transient;
  struct led_light led;
  cycles_t due; /* when this sensor next has to be looked at */

  struct comparator comparators[2];
  int comparator_count;
};

struct optics {
  struct sensor sensors[SENSORS];
  struct threshold low, high;
  double lamp;
  double ripple_hz, ripple_depth;
  double dimmer_cycles, dimmer_duty; /* period, 0: not dimmed; part of it that the lamp is on */
  double hysteresis_mv;
  double supply;     /* what the board has for its 5 V, as a part of it; light and bandgap do not follow it */
  double bandgap_mv;
  bool level_is_bandgap; /* the board compares the centre with it, not with the low threshold */
  bool led_square, led_ramped; /* what the board drives */
  double led_filter_cycles;
  void (*switched)(void *context, cycles_t at, enum pin pin, bool level);
  void *context;
};

/* `switched` hears of each switching, with the moment it belongs to, at most a few cycles back. */
void optics_begin(struct optics *optics, void (*switched)(void *context, cycles_t at, enum pin pin, bool level), void *context);
/* Call after anything in optics or its sensors was changed. The change counts from `at`, which may lie a few cycles back:
   the bench gets to it only between two instructions. */
void optics_changed(struct optics *optics, cycles_t at);
/* `rate`: see curve_from. */
void optics_fire(struct optics *optics, cycles_t start, int sensor, const struct curve *curve, double rate);
void optics_hold(struct optics *optics, cycles_t at, double open);
/* The board switched one of the two drives of the reference LED. */
void optics_led(struct optics *optics, cycles_t at, bool ramped, bool on);
void optics_lamp(struct optics *optics, cycles_t at, double fraction);
/* Switches the comparators that have to switch by `now`. */
void optics_advance(struct optics *optics, cycles_t now);
/* The comparator of that pin, NULL when the pin has none. */
struct comparator *optics_comparator(struct optics *optics, enum pin pin);
/* When optics_advance has to be called next, NEVER while all is at rest. */
cycles_t optics_due(const struct optics *optics);
/* Output of a sensor's front end in millivolts. */
double optics_sensor_mv(const struct optics *optics, int sensor, cycles_t now);

#endif
