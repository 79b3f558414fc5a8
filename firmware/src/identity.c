#include "identity.h"

#include <avr/interrupt.h>
#include <avr/io.h>

#include "eeprom_record.h"

/* Not at 0, where a write during a failing supply goes astray first. */
#define PLACE_A 0x20
#define PLACE_B 0x40

static struct eeprom_record record;
static uint16_t record_crc16; /* of what is being written */
static uint8_t place;   /* of the record in force; the other one is written next */
static bool writing;
static uint8_t written; /* bytes of it already in the store */
static bool damaged;
static bool stored_well;

static uint8_t eeprom_read(uint8_t address) {
  EEAR = address;
  EECR |= 1 << EERE;
  return EEDR;
}

/* Ends within the four cycles that the data sheet gives; an edge in them is stamped up to five cycles late. */
static void eeprom_write(uint8_t address, uint8_t byte) {
  EEAR = address;
  EEDR = byte;
  cli();
  EECR |= 1 << EEMPE;
  EECR |= 1 << EEPE;
  sei();
}

static void begin_writing(void) {
  record.writes++;
  record_crc16 = eeprom_record_crc(&record);
  place = place == PLACE_A ? PLACE_B : PLACE_A;
  written = 0;
  writing = true;
  stored_well = false;
}

/* Reads one place into `record`. At the start only, where a stack frame does no harm. */
static bool load(uint8_t address, bool *blank) {
  uint8_t image[EEPROM_RECORD_BYTES];
  for (uint8_t i = 0; i < EEPROM_RECORD_BYTES; i++) {
    image[i] = eeprom_read((uint8_t)(address + i));
  }
  place = address;
  *blank = *blank && eeprom_record_blank(image);
  return eeprom_record_decode(&record, image);
}

void identity_start(void) {
  bool blank = true;
  bool good_a = load(PLACE_A, &blank);
  uint32_t writes_a = record.writes;
  bool good_b = load(PLACE_B, &blank);
  if (good_a && (!good_b || eeprom_record_newer(writes_a, record.writes))) {
    load(PLACE_A, &blank);
  }
  if (!good_a && !good_b) {
    record = (struct eeprom_record){0};
    damaged = !blank;
  }
  if (!damaged) {
    record.boots++;
    begin_writing();
  }
}

static bool verify(void) {
  for (uint8_t i = 0; i < EEPROM_RECORD_BYTES; i++) {
    if (eeprom_read((uint8_t)(place + i)) != eeprom_record_byte(&record, record_crc16, i)) return false;
  }
  return true;
}

void identity_tend(void) {
  if (!writing || (EECR & (1 << EEPE))) {
    return;
  }
  if (written == EEPROM_RECORD_BYTES) {
    stored_well = verify();
    writing = false;
    return;
  }
  uint8_t address = (uint8_t)(place + written);
  uint8_t byte = eeprom_record_byte(&record, record_crc16, written++);
  if (eeprom_read(address) != byte) {
    eeprom_write(address, byte);
  }
}

const char *identity_serial(void) { return record.serial; }

bool identity_damaged(void) { return damaged; }

uint32_t identity_boots(void) { return record.boots; }
bool identity_writing(void) { return writing; }
bool identity_stored_well(void) { return stored_well; }

void identity_store(const char *serial) {
  for (uint8_t i = 0; i < SERIAL_CHARS; i++) {
    record.serial[i] = *serial;
    if (*serial != '\0') {
      serial++;
    }
  }
  damaged = false;
  begin_writing();
}
