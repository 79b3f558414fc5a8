#include "chip.h"

#include <avr_acomp.h>
#include <avr_extint.h>
#include <avr_ioport.h>
#include <avr_timer.h>
#include <fcntl.h>
#include <gelf.h>
#include <libelf.h>
#include <sim_elf.h>
#include <sim_hex.h>
#include <sim_io.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static struct chip *chip_of_reset; /* simavr's reset hook carries no context, and a process holds one running chip */

void avr_extint_set_strict_lvl_trig(avr_t *avr, uint8_t extint_no, uint8_t strict);

/* Settings that a reset of simavr takes back. */
static void tame(avr_t *avr) {
  /* simavr would ask for the level of INT0 and INT1 every cycle while they are low, used or not. */
  avr_extint_set_strict_lvl_trig(avr, 0, 0);
  avr_extint_set_strict_lvl_trig(avr, 1, 0);
  avr->run_cycle_limit = RUN_LIMIT;
}

static void after_reset(struct avr_t *avr) {
  struct chip *chip = chip_of_reset;
  if (chip->reset_by_core) {
    chip->reset_by_core(avr);
  }
  chip->reset_seen = true;
}

static void quiet(struct avr_t *avr, const int level, const char *format, va_list arguments) {
  (void)avr, (void)level, (void)format, (void)arguments;
}

static void read_symbols(struct chip *chip, const char *path) {
  int file = open(path, O_RDONLY);
  elf_version(EV_CURRENT);
  Elf *elf = elf_begin(file, ELF_C_READ, NULL);
  for (Elf_Scn *section = elf_nextscn(elf, NULL); section; section = elf_nextscn(elf, section)) {
    GElf_Shdr header;
    if (!gelf_getshdr(section, &header) || header.sh_type != SHT_SYMTAB || header.sh_entsize == 0) {
      continue;
    }
    Elf_Data *data = elf_getdata(section, NULL);
    size_t count = header.sh_size / header.sh_entsize;
    chip->symbols = calloc(count, sizeof *chip->symbols);
    for (size_t i = 0; i < count; i++) {
      GElf_Sym symbol;
      if (gelf_getsym(data, (int)i, &symbol) && symbol.st_name != 0) {
        chip->symbols[chip->symbol_count].name = strdup(elf_strptr(elf, header.sh_link, symbol.st_name));
        chip->symbols[chip->symbol_count++].address = (uint32_t)symbol.st_value;
      }
    }
    break;
  }
  elf_end(elf);
  close(file);
}

const char *chip_load(struct chip *chip, const char *elf_path) {
  *chip = (struct chip){0};
  avr_global_logger_set(quiet);
  elf_firmware_t firmware = {0};
  if (access(elf_path, R_OK) != 0) {
    return "cannot be read: build the firmware first, or give its path with --elf";
  }
  if (elf_read_firmware(elf_path, &firmware) != 0 || firmware.flashsize == 0) {
    return "is not an ELF file with AVR code: give the .elf that the firmware build makes";
  }
  avr_t *avr = avr_make_mcu_by_name("atmega328p");
  if (!avr) {
    return "cannot run: this simavr knows no ATmega328P; install simavr 1.6";
  }
  avr_init(avr);
  avr->frequency = CYCLES_PER_SECOND;
  avr->vcc = avr->avcc = avr->aref = 5000;
  avr_load_firmware(avr, &firmware);
  avr->frequency = CYCLES_PER_SECOND;
  read_symbols(chip, elf_path);
  quirks_mend(&chip->quirks, avr);
  chip->avr = avr;
  chip_of_reset = chip;
  chip->reset_by_core = avr->reset;
  avr->reset = after_reset;
  for (enum pin pin = 0; pin < PINS; pin++) {
    chip->pin_irq[pin] =
        avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ(pin_wiring[pin].port), IOPORT_IRQ_PIN0 + pin_wiring[pin].bit);
  }
  for (int i = 0; i < 2; i++) {
    chip->comparator_irq[i] = avr_io_getirq(avr, AVR_IOCTL_ACOMP_GETIRQ, ACOMP_IRQ_AIN0 + i);
  }
  tame(avr);
  for (enum pin pin = 0; pin < PINS; pin++) {
    chip_set_pin(chip, pin, false);
  }
  chip_restore_pins(chip);
  return NULL;
}

const char *chip_add_bootloader(struct chip *chip, const char *hex_path) {
  static const uint8_t jump_to_itself[] = {0xFF, 0xCF};
  avr_t *avr = chip->avr;
  ihex_chunk_p chunks = NULL;
  int count = access(hex_path, R_OK) == 0 ? read_ihex_chunks(hex_path, &chunks) : 0;
  bool good = count > 0;
  for (int i = 0; good && i < count; i++) {
    good = chunks[i].baseaddr >= BOOT_START && chunks[i].baseaddr + chunks[i].size <= avr->flashend + 1;
    if (good) {
      memcpy(avr->flash + chunks[i].baseaddr, chunks[i].data, chunks[i].size);
    }
  }
  if (chunks) {
    free_ihex_chunks(chunks);
  }
  if (!good) {
    return "is no bootloader of at most 512 bytes at 7E00: build it with make -C firmware box";
  }
  memcpy(avr->flash + BOOT_SPARE, jump_to_itself, sizeof jump_to_itself);
  chip->has_bootloader = true;
  avr->codeend = avr->flashend;
  avr->reset_pc = avr->pc = BOOT_START;
  return NULL;
}

bool chip_stands(struct chip *chip) {
  avr_t *avr = chip->avr;
  if (chip->has_bootloader) {
    avr->sreg[S_I] = 0;
    avr->pc = BOOT_SPARE;
    avr->state = cpu_Running;
  }
  return chip->has_bootloader;
}

void chip_free(struct chip *chip) {
  for (size_t i = 0; i < chip->symbol_count; i++) {
    free(chip->symbols[i].name);
  }
  free(chip->symbols);
  avr_terminate(chip->avr);
  free(chip->avr);
}

/* simavr would let the board's own pull-up win over a contact that is closed when it is switched on. */
static void keep_low_pins_low(struct chip *chip, char port) {
  avr_ioport_external_t external = {.name = (unsigned long)port};
  for (enum pin pin = 0; pin < PINS; pin++) {
    if (pin_wiring[pin].port == port && pin_wiring[pin].active_low) {
      external.mask |= 1u << pin_wiring[pin].bit;
      external.value |= (chip->levels[pin] ? 0u : 1u) << pin_wiring[pin].bit;
    }
  }
  avr_ioctl(chip->avr, AVR_IOCTL_IOPORT_SET_EXTERNAL(port), &external);
}

void chip_set_pin(struct chip *chip, enum pin pin, bool level) {
  chip->levels[pin] = level;
  if (pin_wiring[pin].active_low) {
    keep_low_pins_low(chip, pin_wiring[pin].port);
  }
  /* simavr captures the pin whether the comparator takes its place or not, and the comparator some cycles late. So the pin of the
     small and the starter rig goes with the comparator's output, which falls with light where it is held against the bandgap. */
  bool turned = pin == PIN_LOW && (chip->avr->data[REG_ACSR] & COMPARES_BANDGAP);
  avr_raise_irq(chip->pin_irq[pin], level != (pin_wiring[pin].active_low || turned));
  if (pin == PIN_LOW) {
    /* The small rig captures AIN0 against AIN1, the starter rig the bandgap of 1100 mV against AIN1. The optics have compared
       already; these voltages only carry the level. */
    avr_raise_irq(chip->comparator_irq[0], level ? 5000 : 0);
    avr_raise_irq(chip->comparator_irq[1], level ? 2000 : 0);
  }
}

void chip_restore_pins(struct chip *chip) {
  avr_t *avr = chip->avr;
  for (enum pin pin = 0; pin < PINS; pin++) {
    char port = pin_wiring[pin].port;
    uint16_t address = port == 'B' ? REG_PINB : port == 'C' ? REG_PINC : REG_PIND;
    uint8_t bit = (uint8_t)(1u << pin_wiring[pin].bit);
    avr->data[address] &= (uint8_t)~bit;
    if (chip->levels[pin] != pin_wiring[pin].active_low) {
      avr->data[address] |= bit;
    }
  }
  tame(avr);
}

void chip_external_reset(struct chip *chip) {
  avr_reset(chip->avr);
  avr_regbit_set(chip->avr, chip->avr->reset_flags.extrf);
}

void chip_write(struct chip *chip, uint16_t address, uint8_t value) {
  avr_t *avr = chip->avr;
  avr_io_addr_t io = AVR_DATA_TO_IO(address);
  if (avr->io[io].w.c) {
    avr->io[io].w.c(avr, address, value, avr->io[io].w.param);
  } else {
    avr->data[address] = value;
  }
}

uint16_t chip_variable(const struct chip *chip, const char *name) {
  for (size_t i = 0; i < chip->symbol_count; i++) {
    /* avr-gcc puts data at 0x800000 and up, to tell it from flash */
    if ((chip->symbols[i].address & 0xFF0000) == 0x800000 && strcmp(chip->symbols[i].name, name) == 0) {
      return (uint16_t)chip->symbols[i].address;
    }
  }
  return 0;
}

uint32_t chip_read32(const struct chip *chip, uint16_t address) {
  const uint8_t *at = chip->avr->data + address;
  return (uint32_t)at[0] | (uint32_t)at[1] << 8 | (uint32_t)at[2] << 16 | (uint32_t)at[3] << 24;
}

static avr_timer_t *timer1(const struct chip *chip) {
  return chip->avr->io[AVR_DATA_TO_IO(REG_TCNT1L)].r.param;
}

static uint16_t timer1_count(const struct chip *chip) {
  const avr_timer_t *timer = timer1(chip);
  return timer->tov_cycles ? (uint16_t)(chip->avr->cycle - timer->tov_base) : 0;
}

bool chip_preset_ticks(struct chip *chip, uint64_t ticks48) {
  uint16_t variable = chip_variable(chip, "timebase_halves");
  if (variable == 0) {
    return false;
  }
  uint32_t halves = (uint32_t)(ticks48 >> 15);
  for (int i = 0; i < 4; i++) {
    chip->avr->data[variable + i] = (uint8_t)(halves >> 8 * i);
  }
  chip->avr->data[REG_GPIOR1] = (uint8_t)halves;
  chip->avr->data[REG_TCNT1H] = (uint8_t)(ticks48 >> 8);
  chip_write(chip, REG_TCNT1L, (uint8_t)ticks48);
  return true;
}

uint64_t chip_ticks(const struct chip *chip) {
  uint16_t count = timer1_count(chip);
  uint64_t halves = chip_read32(chip, chip_variable(chip, "timebase_halves"));
  halves += (halves ^ (count >> 15)) & 1; /* the firmware has not yet looked since the half changed */
  return (halves << 15 | (count & 0x7FFF)) & 0xFFFFFFFFFFFF;
}

void chip_stall(struct chip *chip) {
  chip_write(chip, REG_TCCR1B, chip->avr->data[REG_TCCR1B] & 0xF8);
}
