#include "store.h"

#include <avr_eeprom.h>
#include <errno.h>
#include <sim_io.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

void store_read(const struct chip *chip, unsigned char bytes[STORE_BYTES]) {
  avr_eeprom_desc_t whole = {.ee = bytes, .offset = 0, .size = STORE_BYTES};
  avr_ioctl(chip->avr, AVR_IOCTL_EEPROM_GET, &whole);
}

void store_write(const struct chip *chip, const unsigned char bytes[STORE_BYTES]) {
  unsigned char copy[STORE_BYTES];
  memcpy(copy, bytes, sizeof copy);
  avr_eeprom_desc_t whole = {.ee = copy, .offset = 0, .size = STORE_BYTES};
  avr_ioctl(chip->avr, AVR_IOCTL_EEPROM_SET, &whole);
}

bool store_load(struct store *store, const struct chip *chip) {
  store_read(chip, store->saved);
  FILE *file = store->path ? fopen(store->path, "rb") : NULL;
  if (!file) {
    return !store->path || errno == ENOENT;
  }
  unsigned char bytes[STORE_BYTES + 1];
  size_t count = fread(bytes, 1, sizeof bytes, file);
  fclose(file);
  if (count != STORE_BYTES) {
    errno = EINVAL;
    return false;
  }
  store_write(chip, bytes);
  memcpy(store->saved, bytes, STORE_BYTES);
  return true;
}

bool store_save(struct store *store, const struct chip *chip) {
  unsigned char bytes[STORE_BYTES];
  if (!store->path) {
    return true;
  }
  store_read(chip, bytes);
  if (memcmp(bytes, store->saved, sizeof bytes) == 0 && access(store->path, F_OK) == 0) {
    return true;
  }
  char beside[4096];
  snprintf(beside, sizeof beside, "%s.%ld.new", store->path, (long)getpid());
  FILE *file = fopen(beside, "wb");
  bool good = file && fwrite(bytes, 1, sizeof bytes, file) == sizeof bytes;
  good = file && fclose(file) == 0 && good && rename(beside, store->path) == 0;
  if (good) {
    memcpy(store->saved, bytes, sizeof bytes);
  }
  return good;
}
