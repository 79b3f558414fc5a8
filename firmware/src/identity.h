/* Serial number of the rig and count of its starts, kept in the EEPROM (eeprom_record.h). Main loop only; writing goes on byte by
   byte (3.4 ms each) while everything else runs. */
#ifndef IDENTITY_H
#define IDENTITY_H

#include <stdbool.h>
#include <stdint.h>

/* Reads the store, counts this start and begins to write that down; a damaged store is left as it is until a new serial
   number is given. */
void identity_start(void);
/* One slice of the main loop. */
void identity_tend(void);

/* Serial number; empty when there is none. */
const char *identity_serial(void);
/* There may be one, but the store is damaged. */
bool identity_damaged(void);
uint32_t identity_boots(void);

bool identity_writing(void);
/* Begins to store a serial number of 1 to SERIAL_CHARS characters; only while not writing. */
void identity_store(const char *serial);
/* After writing: the store reads back as it was written. */
bool identity_stored_well(void);

#endif
