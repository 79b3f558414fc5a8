#ifndef BENCH_PINS_H
#define BENCH_PINS_H

#include <stdbool.h>

/* Inputs of the board in the order of the channels of docs/protocol.md. */
enum pin { PIN_LOW, PIN_HIGH, PIN_OUTER_A, PIN_OUTER_B, PIN_CONTACT, PIN_CLICK, PIN_RELEASE, PIN_KNOB, PINS };

/* Those before it have an interrupt that stamps their edges; the knob contact is looked at by the main loop. */
#define HANDLED_PINS PIN_KNOB

/* Where a pin sits and what it carries. The only place of the bench that knows the wiring; it mirrors
   firmware/src/board.h. */
struct wiring {
  const char *name; /* as in a scenario */
  char port;
  int bit;
  bool active_low; /* light, closed, sound, pressed, touched pulls the pin low */
};

extern const struct wiring pin_wiring[PINS];

/* Pin of that name, PINS when there is none. */
enum pin pin_named(const char *name);

#endif
