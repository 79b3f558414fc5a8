#ifndef BENCH_STORE_H
#define BENCH_STORE_H

#include <stdbool.h>

#include "chip.h"

/* The EEPROM of the board as a file. */
#define STORE_BYTES 1024

struct store {
  const char *path; /* NULL: the EEPROM starts erased and is forgotten */
  unsigned char saved[STORE_BYTES];
};

/* Fills the EEPROM from the file, if it exists. False with errno set when it cannot be read or has another size. */
bool store_load(struct store *store, const struct chip *chip);
/* Writes the file when the EEPROM has changed, in one step. False with errno set when that fails. */
bool store_save(struct store *store, const struct chip *chip);

void store_read(const struct chip *chip, unsigned char bytes[STORE_BYTES]);
void store_write(const struct chip *chip, const unsigned char bytes[STORE_BYTES]);

#endif
