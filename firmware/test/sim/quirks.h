#ifndef BENCH_QUIRKS_H
#define BENCH_QUIRKS_H

#include <sim_avr.h>

#include "simtime.h"

/* Faults of simavr 1.6 that would falsify what the bench is there to show, set right from outside. Each was seen in its
   source and measured:
   - entering an interrupt takes no time; the data sheet has four cycles before the vector's instruction;
   - a flag that rose while its interrupt was disabled is forgotten when the interrupt is enabled;
   - writing to a timer's flag register clears all its flags, and writing to PCIFR or EIFR sets them; a one written must
     clear that flag, and SBI must touch no other;
   - writing a byte of the EEPROM takes no time; EEPE must stay set for 3.4 ms.
   Those of the ADC and of the UART are dealt with in converter.h and wire.h. */
struct quirks {
  avr_io_write_t write_eeprom; /* simavr's own */
  void *eeprom;
  cycles_t eeprom_busy_until;
};

void quirks_mend(struct quirks *quirks, avr_t *avr);

#endif
