#ifndef BENCH_WIRE_H
#define BENCH_WIRE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "chip.h"
#include "journal.h"

/* The serial line at the board's end: bytes go in at the speed of the line (start, eight data, one stop bit), what the board
   sends is cut into lines for the log and handed on byte by byte.

   simavr 1.6 counts a parity bit that is not there, has no buffer in front of the transmitter's shift register, and lets a
   backlog in the receiver be read no faster than the line. The bench sets the byte time right, tells the board when the
   buffer is empty, and hands a received byte over when its stop bit ends. */
struct wire {
  struct chip *chip;
  struct journal *journal;
  void (*out)(void *context, unsigned char byte); /* what the board sends, after corruption; may be NULL */
  void *out_context;

  unsigned char *queue; /* to the board, not yet on the line */
  size_t first, count, room;
  bool sending;
  bool in_flight; /* in_byte is on the line and not yet in the receiver */
  bool holding;
  bool stopped;     /* simavr's receiver said that it is full or off */
  uint64_t held;    /* bytes that had to wait because the receiver still held three */
  uint64_t unheard; /* bytes sent while the board's receiver was off */

  char line[256]; /* from the board, so far */
  size_t length;
  uint32_t corrupt_lines; /* lines still to be corrupted */
  uint32_t corrupted;
  bool corrupting;

  struct sent_byte {
    uint8_t byte;
    cycles_t begun; /* start bit; 0 when there was none yet */
  } out_last, out_before, in; /* for the levels of the two pins */
  cycles_t out_free; /* when the stop bit of the last byte ends */
  uint8_t (*read_data)(struct avr_t *avr, avr_io_addr_t address, void *uart);
};

void wire_begin(struct wire *wire, struct chip *chip, struct journal *journal);
void wire_free(struct wire *wire);
/* After a reset of the board, which drops simavr's timers. */
void wire_rearm(struct wire *wire);
void wire_send(struct wire *wire, const unsigned char *bytes, size_t count);
/* Forces an overrun: all bytes at once, faster than any line. The receiver keeps three, the rest is lost. */
void wire_overrun(struct wire *wire, const unsigned char *bytes, size_t count);
/* Levels of TXD and RXD as a pin read would see them. */
bool wire_txd(const struct wire *wire, cycles_t now);
bool wire_rxd(const struct wire *wire, cycles_t now);

#endif
