#include "quirks.h"

#include <sim_interrupts.h>
#include <sim_io.h>
#include <stdbool.h>
#include <stddef.h>

#define INTERRUPT_RESPONSE 4
#define EECR 0x3F
#define EEPE 0x02
#define EEPROM_WRITE_CYCLES 54400 /* 3.4 ms */

static const avr_io_addr_t flag_registers[] = {0x35, 0x36, 0x37, 0x3B, 0x3C};   /* TIFR0 to 2, PCIFR, EIFR */
static const avr_io_addr_t enable_registers[] = {0x6E, 0x6F, 0x70, 0x68, 0x3D}; /* TIMSK0 to 2, PCICR, EIMSK */

static void interrupt_enters(struct avr_irq_t *irq, uint32_t vector, void *context) {
  (void)irq;
  avr_t *avr = context;
  if (vector == 0) {
    return; /* the way back */
  }
  avr->cycle += INTERRUPT_RESPONSE;
  avr->run_cycle_count = avr->run_cycle_count > INTERRUPT_RESPONSE ? avr->run_cycle_count - INTERRUPT_RESPONSE : 1;
}

/* simavr carries SBI out as reading and writing back, so the bit has to be taken from the instruction. */
static uint8_t written_ones(const avr_t *avr, uint8_t value) {
  uint8_t operation = avr->flash[avr->pc + 1], operand = avr->flash[avr->pc];
  return operation == 0x9A ? (uint8_t)(1u << (operand & 7)) : value;
}

static void flags_written(struct avr_t *avr, avr_io_addr_t address, uint8_t value, void *context) {
  (void)context;
  uint8_t ones = written_ones(avr, value);
  for (int i = 0; i < avr->interrupts.vector_count; i++) {
    avr_int_vector_t *vector = avr->interrupts.vector[i];
    if (vector->raised.reg == address && (ones >> vector->raised.bit & 1) && avr_regbit_get(avr, vector->raised)) {
      avr_clear_interrupt(avr, vector);
    }
  }
}

static void enables_written(struct avr_irq_t *irq, uint32_t value, void *context) {
  (void)irq, (void)value;
  avr_t *avr = context;
  for (int i = 0; i < avr->interrupts.vector_count; i++) {
    avr_int_vector_t *vector = avr->interrupts.vector[i];
    for (size_t r = 0; r < sizeof enable_registers / sizeof *enable_registers; r++) {
      if (vector->enable.reg == enable_registers[r] && avr_regbit_get(avr, vector->enable) && vector->raised.reg &&
          avr_regbit_get(avr, vector->raised)) {
        avr_raise_interrupt(avr, vector); /* does nothing for one that is pending already */
      }
    }
  }
}

static avr_cycle_count_t eeprom_written(struct avr_t *avr, avr_cycle_count_t when, void *context) {
  (void)when, (void)context;
  avr->data[EECR] &= (uint8_t)~EEPE;
  return 0;
}

static void write_eeprom_control(struct avr_t *avr, avr_io_addr_t address, uint8_t value, void *context) {
  struct quirks *quirks = context;
  bool ready = avr->cycle >= quirks->eeprom_busy_until;
  bool begins = ready && (value & EEPE) && (avr->data[EECR] & 0x04); /* EEMPE was set before */
  quirks->write_eeprom(avr, address, ready ? value : value & (uint8_t)~EEPE, quirks->eeprom);
  if (begins) {
    quirks->eeprom_busy_until = avr->cycle + EEPROM_WRITE_CYCLES;
    avr_cycle_timer_register(avr, EEPROM_WRITE_CYCLES, eeprom_written, quirks);
  }
  if (begins || !ready) {
    avr->data[EECR] |= EEPE;
  }
}

void quirks_mend(struct quirks *quirks, avr_t *avr) {
  avr_irq_register_notify(avr_get_interrupt_irq(avr, AVR_INT_ANY) + AVR_INT_IRQ_RUNNING, interrupt_enters, avr);
  for (size_t i = 0; i < sizeof flag_registers / sizeof *flag_registers; i++) {
    avr->io[AVR_DATA_TO_IO(flag_registers[i])].w.c = flags_written;
  }
  for (size_t i = 0; i < sizeof enable_registers / sizeof *enable_registers; i++) {
    avr_irq_register_notify(avr_iomem_getirq(avr, enable_registers[i], NULL, AVR_IOMEM_IRQ_ALL), enables_written, avr);
  }
  quirks->write_eeprom = avr->io[AVR_DATA_TO_IO(EECR)].w.c;
  quirks->eeprom = avr->io[AVR_DATA_TO_IO(EECR)].w.param;
  avr->io[AVR_DATA_TO_IO(EECR)].w.c = write_eeprom_control;
  avr->io[AVR_DATA_TO_IO(EECR)].w.param = quirks;
}
