/* What stays in the flash, as RAM is scarce: constants marked FLASH take none of it. On this computer, for the native tests,
   the mark says nothing. */
#ifndef FLASH_H
#define FLASH_H

#ifdef __AVR__
#define FLASH __flash
#else
#define FLASH
#endif

#endif
