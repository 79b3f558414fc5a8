/* Options of the build. Each states effect, cost and range; all may be overridden with -D on the compiler's line. */
#ifndef CONFIG_H
#define CONFIG_H

/* Version in the greeting. A word of docs/protocol.md: letters, digits, '.', '_', '-'. */
#define FIRMWARE_VERSION "1.4.0"

#ifndef F_CPU
#define F_CPU 16000000UL
#endif
/* Everything that counts ticks counts this clock. Other clocks would need other timer settings, not only this number. */
#if F_CPU != 16000000UL
#error "the rig is built around a 16 MHz clock"
#endif

/* Which rig: 0 the full rig, 1 the small rig of one photodiode and no other part than its amplifier.
   Effect: with 1 the chip's own comparator (AIN0 against AIN1) feeds the input capture, and the high level, the outer
   sensors and the flash contact do not exist; the greeting says `small`. Cost: none. */
#ifndef CONFIG_SMALL_RIG
#define CONFIG_SMALL_RIG 0
#endif

/* The starter rig: a photodiode and a resistor on A0 and D7, and nothing else.
   Effect: with 1 the chip's comparator holds its own bandgap against AIN1 and feeds the input capture, turned round, as light makes
   its output fall. There is one level, which cannot be set, and no sound, flash contact or reference LED; the greeting says
   `starter`. The bandgap is read where other rigs read a threshold back. Cost: none. Not together with CONFIG_SMALL_RIG. */
#ifndef CONFIG_STARTER_RIG
#define CONFIG_STARTER_RIG 0
#endif

/* Readings of the bandgap that are thrown away after it was chosen, in blocks of 16 (1 ms each): its source is weak, and the
   converter's capacitor has to settle on it, 70 us by the data sheet (from memory). Range: 1 to 15. */
#ifndef CONFIG_BANDGAP_SETTLING_BLOCKS
#define CONFIG_BANDGAP_SETTLING_BLOCKS 2
#endif

/* Serial speed.
   Effect: an edge line of 25 bytes takes 1 ms at 250000, 0.5 ms at 500000, 2.2 ms at 115200 (which is 2.1 % off).
   Cost: at 500000 the loop has 40 us from byte to byte, which a flood of edges exceeds (UARTLOST then counts).
   Range: 115200, 250000, 500000. A host tries these three. */
#ifndef CONFIG_BAUD
#define CONFIG_BAUD 250000
#endif

/* Ticks from an edge to the reading of Timer1 in the snapshot handler, subtracted from every snapshot.
   Effect: centres the error of the software channels against the hardware capture. How it was found stands in
   capture_isr.S. Cost: none. Range: 0 to 255; changes with every instruction before that reading. */
#ifndef CONFIG_SNAPSHOT_LATENCY_TICKS
#define CONFIG_SNAPSHOT_LATENCY_TICKS 22
#endif

/* Half periods of Timer1 (2.048 ms each) after which a beat is sent when nothing goes before it.
   Effect: a host widens 32-bit ticks by beats. Cost: 28 bytes a beat. Range: 1 to CONFIG_BEAT_FORCED_HALVES - 1. */
#ifndef CONFIG_BEAT_HALVES
#define CONFIG_BEAT_HALVES 120
#endif

/* Half periods after which a beat goes even before waiting edges, of the time before them, so that beats stay within 2^22 ticks.
   Range: CONFIG_BEAT_HALVES + 1 to 126 (128 is 2^22 ticks; a line under way takes up to 3 ms). */
#ifndef CONFIG_BEAT_FORCED_HALVES
#define CONFIG_BEAT_FORCED_HALVES 126
#endif

/* Ringing of the click sensor, thinned when snapshots wait for the serial line.
   TICKS (0.5 ms): an edge of the click sensor that lies between two others of it which are told, and these are nearer to each other than
   this, may be left out. Effect: a click that rings for 3 ms takes 6 ms of the serial line whatever its frequency, and not 48
   at 8 kHz, for which the ring has no room; quiet longer than this is told with both its ends. Range: 0 (no thinning) to 16000.
   WAITING: only when so many snapshots wait. Range: 4 to 40. */
#ifndef CONFIG_RINGING_TICKS
#define CONFIG_RINGING_TICKS 8000
#endif
#ifndef CONFIG_RINGING_WAITING
#define CONFIG_RINGING_WAITING 10
#endif

/* Half periods of Timer1 (2.048 ms each) for which the knob contact is not looked at after an edge of it.
   Effect: a foil that chatters takes at most a quarter of the serial line, and no room where other edges wait; the edge that
   ends its rest is stamped when the rest is over, up to 6.1 ms late. Cost: none. Range: 1 to 100. */
#ifndef CONFIG_KNOB_REST_HALVES
#define CONFIG_KNOB_REST_HALVES 3
#endif

/* Light blocks that wait for the serial line.
   Effect: a block is made every 1 ms and its line takes 1.3 ms at 250000 baud, so 118 blocks bridge a request of 500
   without a gap. Cost: 7 bytes of RAM each, in the memory of the light curve (828 bytes) and so free. Range: 2 to 118. */
#ifndef CONFIG_BLOCK_QUEUE
#define CONFIG_BLOCK_QUEUE 118
#endif

/* Light curve, in blocks of 16 readings (256 us).
   OPENING: the opening window. Effect: an opening that is over within OPENING - BEFORE - AFTER blocks (4.6 ms) has its whole
   curve in it. Cost: 16 bytes of RAM each. Range: BEFORE + AFTER + 1 to 250.
   BEFORE: of these, whole blocks before the one in which the light reaches the low threshold. Range: 1 to 100.
   AFTER: dark blocks behind the last light. Range: 1 to 15.
   REST: it must have been dark for so long (64 ms) before a curve begins, or light that rests near the threshold would
   fill the line with curves. Range: AFTER to 255. */
#ifndef CONFIG_CURVE_OPENING_BLOCKS
#define CONFIG_CURVE_OPENING_BLOCKS 24
#endif
#ifndef CONFIG_CURVE_BEFORE_BLOCKS
#define CONFIG_CURVE_BEFORE_BLOCKS 4
#endif
#ifndef CONFIG_CURVE_AFTER_BLOCKS
#define CONFIG_CURVE_AFTER_BLOCKS 2
#endif
#ifndef CONFIG_CURVE_REST_BLOCKS
#define CONFIG_CURVE_REST_BLOCKS 250
#endif

/* Values of the plateau.
   Effect: how fine a plateau is; one of a second is left with spans of 16 ms. Cost: 2 bytes of RAM each. Range: even, 4 to 250. */
#ifndef CONFIG_CURVE_PLATEAU_VALUES
#define CONFIG_CURVE_PLATEAU_VALUES 64
#endif

/* Commands that wait for their turn. Cost: 13 bytes of RAM each. Range: 1 to 8. */
#ifndef CONFIG_COMMAND_QUEUE
#define CONFIG_COMMAND_QUEUE 4
#endif

/* Threshold codes after a start: (code + 1) / 256 of the supply. Range: low below high, both 0 to 255. On the starter rig the low one
   is the bandgap, 1.1 V, until it has been read. */
#if CONFIG_STARTER_RIG
#define CONFIG_LOW_CODE 0x37
#define CONFIG_HIGH_CODE 0xFF
#else
#define CONFIG_LOW_CODE 0x2B
#define CONFIG_HIGH_CODE 0xA1
#endif

#endif
