#include "pins.h"

#include <string.h>

const struct wiring pin_wiring[PINS] = {
    [PIN_LOW] = {"low", 'B', 0, false},         [PIN_HIGH] = {"high", 'D', 6, false},
    [PIN_OUTER_A] = {"outerA", 'D', 4, false},  [PIN_OUTER_B] = {"outerB", 'D', 5, false},
    [PIN_CONTACT] = {"contact", 'D', 7, true},  [PIN_CLICK] = {"click", 'D', 2, false},
    [PIN_RELEASE] = {"release", 'B', 4, true},  [PIN_KNOB] = {"knob", 'C', 5, true},
};

enum pin pin_named(const char *name) {
  enum pin pin = 0;
  while (pin < PINS && strcmp(pin_wiring[pin].name, name) != 0) {
    pin++;
  }
  return pin;
}
