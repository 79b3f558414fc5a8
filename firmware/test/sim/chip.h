#ifndef BENCH_CHIP_H
#define BENCH_CHIP_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <sim_avr.h>

#include "pins.h"
#include "quirks.h"
#include "simtime.h"

/* Registers of the ATmega328P that the bench looks at, as data addresses (data sheet, register summary). */
enum {
  REG_PINB = 0x23,
  REG_PINC = 0x26,
  REG_DDRB = 0x24,
  REG_PORTB = 0x25,
  REG_PIND = 0x29,
  REG_DDRD = 0x2A,
  REG_PORTD = 0x2B,
  REG_TIFR0 = 0x35,
  REG_TIFR1 = 0x36,
  REG_TCNT0 = 0x46,
  REG_GPIOR1 = 0x4A,
  REG_ACSR = 0x50,
  REG_MCUSR = 0x54,
  REG_ADCSRA = 0x7A,
  REG_ADCSRB = 0x7B,
  REG_TCCR1A = 0x80,
  REG_TCCR1B = 0x81,
  REG_TCNT1L = 0x84,
  REG_TCNT1H = 0x85,
  REG_OCR1AL = 0x88,
  REG_OCR1BL = 0x8A,
  REG_TCCR2A = 0xB0,
  REG_TCNT2 = 0xB2,
  REG_OCR2A = 0xB3,
  REG_OCR2B = 0xB4,
  REG_UCSR0A = 0xC0,
  REG_UCSR0B = 0xC1,
  REG_UBRR0L = 0xC4,
  REG_UBRR0H = 0xC5,
  REG_UDR0 = 0xC6
};

/* Byte addresses in flash: the bootloader of 512 bytes, and a word in it that it does not use. */
enum { BOOT_START = 0x7E00, BOOT_SPARE = 0x7FFC };

enum { COMPARES_BANDGAP = 0x40 }; /* ACBG of ACSR */
enum { VECTOR_TIMER0_COMPA = 14, VECTOR_ADC = 21 };

/* How far simavr may run between two looks at the bench when none of its timers is due: a quarter of a millisecond. */
#define RUN_LIMIT 4000

/* The simulated ATmega328P with the firmware in its flash. */
struct chip {
  avr_t *avr;
  struct quirks quirks;
  bool has_bootloader;
  bool reset_seen; /* the chip went through a reset since the flag was last cleared */
  bool levels[PINS]; /* logical */
  avr_irq_t *pin_irq[PINS];
  avr_irq_t *comparator_irq[2];
  void (*reset_by_core)(struct avr_t *);
  struct {
    char *name;
    uint32_t address;
  } *symbols;
  size_t symbol_count;
};

/* Loads the ELF. Returns NULL, or what is wrong and what to do about it, in one sentence. */
const char *chip_load(struct chip *chip, const char *elf_path);
void chip_free(struct chip *chip);
/* Puts a bootloader of 512 bytes on top of the flash and lets the chip start there. NULL, or what is wrong, in one sentence. */
const char *chip_add_bootloader(struct chip *chip, const char *hex_path);
/* Whether the chip can go on after a program that ran wild: with a bootloader it stands still until it is reset. */
bool chip_stands(struct chip *chip);

/* Puts a logical level on a pin, between two instructions. */
void chip_set_pin(struct chip *chip, enum pin pin, bool level);
/* What a reset takes from the bench: simavr zeroes the input registers and drops all timers. */
void chip_restore_pins(struct chip *chip);
/* Reset by the reset pin. RAM and EEPROM stay. Not to be called from within a cycle timer. */
void chip_external_reset(struct chip *chip);

/* Writes a register as an instruction would. */
void chip_write(struct chip *chip, uint16_t address, uint8_t value);
/* Data address of a firmware variable, 0 when the ELF has none of that name. */
uint16_t chip_variable(const struct chip *chip, const char *name);
uint32_t chip_read32(const struct chip *chip, uint16_t address);

/* Sets the board's 48-bit tick counter. False when the ELF has no `timebase_halves`. */
bool chip_preset_ticks(struct chip *chip, uint64_t ticks48);
/* The 48-bit tick counter now, from Timer1 and `timebase_halves` (which may lag by one half). */
uint64_t chip_ticks(const struct chip *chip);
/* Stops the clock of Timer1, as a fault: the firmware must let the watchdog bite. */
void chip_stall(struct chip *chip);

#endif
