/* Wiring of all rigs. The only file that names a port bit; docs/full-rig.md shows the same tables as drawings.
   Also read by the assembler (capture_isr.S) and, for board_levels, by the native tests. */
#ifndef BOARD_H
#define BOARD_H

#include "config.h"

/* Channel numbers of docs/protocol.md. */
#define CHANNEL_CENTRE_LOW 0
#define CHANNEL_CENTRE_HIGH 1
#define CHANNEL_OUTER_A 2
#define CHANNEL_OUTER_B 3
#define CHANNEL_CONTACT 4
#define CHANNEL_CLICK 5
#define CHANNEL_RELEASE 6
#define CHANNEL_KNOB 7
#if CONFIG_STARTER_RIG
#define BOARD_KIND "starter"
#define CHANNELS_MASK 0xC1
#elif CONFIG_SMALL_RIG
#define BOARD_KIND "small"
#define CHANNELS_MASK 0xE1
#else
#define BOARD_KIND "full"
#define CHANNELS_MASK 0xFF
#endif
/* The channels that a snapshot carries; the others are the hardware capture and the knob contact, which the main loop looks at. */
#define SNAPSHOT_CHANNELS_MASK (CHANNELS_MASK & ~(1 << CHANNEL_CENTRE_LOW | 1 << CHANNEL_KNOB))

/* Port D: D0 RXD, D1 TXD and D3 (OC2B, low threshold) also move but are no inputs of ours. */
#define BOARD_CLICK_BIT 2
#define BOARD_OUTER_A_BIT 4
#define BOARD_OUTER_B_BIT 5
#define BOARD_CENTRE_HIGH_BIT 6
#define BOARD_CONTACT_BIT 7
#if CONFIG_STARTER_RIG
#define BOARD_PORTD_MASK 0x00
#elif CONFIG_SMALL_RIG
/* D6 is AIN0, the light, and D7 AIN1, the threshold: analogue, never looked at as pins. */
#define BOARD_PORTD_MASK 0x04
#else
#define BOARD_PORTD_MASK 0xF4
#endif
#define BOARD_LOW_THRESHOLD_BIT 3 /* OC2B */

/* Port B: D8 is ICP1, D11 is OC2A (high threshold), D12 the release; D9 (OC1A) and D10 (OC1B) drive the reference LED. */
#define BOARD_CAPTURE_BIT 0
/* The chip's own comparator takes the place of the capture pin. Against the bandgap its output falls with light. */
#define BOARD_COMPARES (CONFIG_SMALL_RIG || CONFIG_STARTER_RIG)
#define BOARD_CAPTURE_TURNED CONFIG_STARTER_RIG
/* Where the level of the capture stands when both names are used as I/O addresses. */
#if BOARD_COMPARES
#define BOARD_CAPTURE_LEVEL ACSR
#define BOARD_CAPTURE_LEVEL_BIT ACO
#else
#define BOARD_CAPTURE_LEVEL PINB
#define BOARD_CAPTURE_LEVEL_BIT BOARD_CAPTURE_BIT
#endif
#define BOARD_LED_BIT 1        /* OC1A: square pulses */
#define BOARD_RAMPED_LED_BIT 2 /* OC1B: the same through a low-pass filter */
#define BOARD_HIGH_THRESHOLD_BIT 3 /* OC2A */
#define BOARD_RELEASE_BIT 4
#define BOARD_PORTB_MASK 0x10

/* Port C: A0 to A4 are analogue; A5 is the knob contact. */
#define BOARD_KNOB_BIT 5

/*
 * Contact, release and knob contact close to ground: closed is a low pin. Release and knob contact have the chip's own pull-up;
 * on the board of the rig the knob contact has a stronger one, for a current that a foil needs. The flash contact has one on
 * the board of the rig alone: behind the 22 k that protect the pin, the chip's own (20 k to 50 k) would hold a closed
 * contact at 2 to 3 V, which is no low level.
 */
#if BOARD_COMPARES
#define BOARD_ACTIVE_LOW_D 0
#else
#define BOARD_ACTIVE_LOW_D (1 << BOARD_CONTACT_BIT)
#endif
#define BOARD_PULLUPS_B (1 << BOARD_RELEASE_BIT)
#define BOARD_PULLUPS_C (1 << BOARD_KNOB_BIT)
/* Nothing is wired to D2 to D6 of the starter rig: held high, they do not float. */
#define BOARD_UNUSED_D 0x7C

/* Analogue inputs, as numbers of the ADC multiplexer. */
#define BOARD_ADC_CENTRE 0
#define BOARD_ADC_OUTER_A 1
#define BOARD_ADC_OUTER_B 2
#if CONFIG_STARTER_RIG
#define BOARD_ADC_LOW_THRESHOLD 14 /* the bandgap */
#else
#define BOARD_ADC_LOW_THRESHOLD 3
#endif
#if BOARD_COMPARES
#define BOARD_ADC_HIGH_THRESHOLD BOARD_ADC_LOW_THRESHOLD /* there is one threshold; V shows it twice */
#else
#define BOARD_ADC_HIGH_THRESHOLD 4
#endif
#define BOARD_ADC_DIGITAL_OFF 0x1F /* DIDR0: no digital input stage on A0 to A4 */

#ifndef __ASSEMBLER__
#include <stdbool.h>
#include <stdint.h>

/* Levels (1 = light, closed, sound, pressed) of channels 1 to 6, as the mask of docs/protocol.md. */
static inline uint8_t board_levels(uint8_t pind, bool release_pin) {
  uint8_t pins = pind ^ BOARD_ACTIVE_LOW_D;
  uint8_t levels = 0;
#if !BOARD_COMPARES
  if (pins & (1 << BOARD_CENTRE_HIGH_BIT)) levels |= 1 << CHANNEL_CENTRE_HIGH;
  if (pins & (1 << BOARD_OUTER_A_BIT)) levels |= 1 << CHANNEL_OUTER_A;
  if (pins & (1 << BOARD_OUTER_B_BIT)) levels |= 1 << CHANNEL_OUTER_B;
  if (pins & (1 << BOARD_CONTACT_BIT)) levels |= 1 << CHANNEL_CONTACT;
#endif
  if ((CHANNELS_MASK & 1 << CHANNEL_CLICK) && (pins & (1 << BOARD_CLICK_BIT))) levels |= 1 << CHANNEL_CLICK;
  if (!release_pin) levels |= 1 << CHANNEL_RELEASE;
  return levels;
}

#ifdef __AVR__
#include <avr/io.h>

#if BOARD_COMPARES
static inline bool board_capture_pin(void) { return ACSR & (1 << ACO); }
#else
static inline bool board_capture_pin(void) { return PINB & (1 << BOARD_CAPTURE_BIT); }
#endif
static inline bool board_release_pin(void) { return PINB & (1 << BOARD_RELEASE_BIT); }
static inline bool board_knob_touched(void) { return !(PINC & (1 << BOARD_KNOB_BIT)); }

/* All levels but that of the knob contact, read now. */
static inline uint8_t board_all_levels(void) {
  uint8_t levels = board_levels(PIND, board_release_pin());
  return board_capture_pin() != BOARD_CAPTURE_TURNED ? levels | 1 << CHANNEL_CENTRE_LOW : levels;
}

static inline void board_start(void) {
  PORTB = BOARD_PULLUPS_B;
  PORTC = BOARD_PULLUPS_C;
#if CONFIG_STARTER_RIG
  PORTD = BOARD_UNUSED_D;
  DIDR1 = 1 << AIN1D;
  ACSR = 1 << ACBG | 1 << ACIC; /* the bandgap against AIN1 */
#elif CONFIG_SMALL_RIG
  DDRD = 1 << BOARD_LOW_THRESHOLD_BIT;
  DIDR1 = 1 << AIN1D | 1 << AIN0D;
  ACSR = 1 << ACIC; /* the comparator takes the place of the capture pin */
  DDRB = 1 << BOARD_LED_BIT | 1 << BOARD_RAMPED_LED_BIT;
#else
  DDRD = 1 << BOARD_LOW_THRESHOLD_BIT;
  DDRB = 1 << BOARD_HIGH_THRESHOLD_BIT | 1 << BOARD_LED_BIT | 1 << BOARD_RAMPED_LED_BIT;
#endif
  DIDR0 = BOARD_ADC_DIGITAL_OFF;
}
#endif
#endif
#endif
