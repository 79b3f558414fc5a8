/* Interrupt handlers of the edges. In assembler because their length is the timing error: a handler that is running delays
   the reading of the clock by the next one. None of their instructions changes a flag in SREG, so SREG is not saved.

   Snapshot (pin change of port D or of the release): all pins and Timer1 as they are now, into snapshot_ring. The main
   loop finds out what changed.
   Capture (Timer1 input capture, D8): the tick that the hardware latched, into capture_ring.
   Reading (compare match of Timer0, which has just started the next conversion): the result of the ADC, into stream_ring.

   GPIOR0  snapshot write offset      written here
   GPIOR1  low seven bits of the half count, bit 7 clear       written by timebase.c
   GPIOR2  snapshot read offset       written by capture.c
   half_count_release_pin  GPIOR1 with bit 7 set               written by timebase.c

   Cycles from the edge until Timer1 is read, alone:
                                                        data sheet    bench
     pin synchroniser and interrupt flag                    3           0
     end of the instruction under way                    0 to 3         0
     interrupt response                                     4           4
     jump of the vector                                     3           3
     push push push in ldi out ldi in                      11          11
     st, then lds up to its read                            3           2
   The instruction under way is the jitter. Beside it stands the capture unit's own synchroniser and edge detector, 2 to 3
   cycles on silicon and none on the bench, which come off: a software channel reads 21 to 25 ticks later than the capture
   on silicon (by the data sheet, not measured), 20 on the bench (measured). CONFIG_SNAPSHOT_LATENCY_TICKS is 22.
   An edge that comes while a handler runs is stamped by the next look at the pins, 30 cycles after the last one; an edge
   just before a look that another edge caused is stamped up to 20 ticks early. */

#define __SFR_OFFSET 0
#include <avr/io.h>

#include "board.h"
#include "ring.h"
#include "stream_ring.h"

#define CAPTURE_RISING (1 << ICES1 | 1 << CS10)
#define CAPTURE_FALLING (1 << CS10)
#define READINGS_ON (1 << OCIE0A)

/* First object of the link and in .data, so that the rings stand on the start of RAM (0x100), which is a 256-byte
   boundary, and no byte is lost to alignment. */
  .data
  .balign RING_BYTES
  .global snapshot_ring
  .size snapshot_ring, RING_BYTES
snapshot_ring:
  .fill RING_BYTES, 1, 0
  .global capture_ring
  .size capture_ring, RING_BYTES
capture_ring:
  .fill RING_BYTES, 1, 0
/* A section of its own, or the assembler would fill this one up to 256 bytes. It comes next, at 0x300: bit 6 of its
   addresses is clear. */
  .section .data.stream_ring, "aw"
  .balign STREAM_BYTES
  .global stream_ring
  .size stream_ring, STREAM_BYTES
stream_ring:
  .fill STREAM_BYTES, 1, 0

  .text
  .global PCINT0_vect
  .global PCINT2_vect
  .global capture_snapshot_now
PCINT0_vect:
PCINT2_vect:
capture_snapshot_now: /* main loop: cli, call this; its reti enables interrupts again */
  push r30
  push r31
  push r24
snapshot_again:
  in r30, GPIOR0
  ldi r31, 1 << PCIF0 | 1 << PCIF2
  out PCIFR, r31 /* what changed up to here is in this look at the pins */
  ldi r31, hi8(snapshot_ring)
  in r24, PIND
  st Z+, r24
  lds r24, TCNT1L
  st Z+, r24
  lds r24, TCNT1H
  st Z+, r24
  in r24, GPIOR1
  sbic PINB, BOARD_RELEASE_BIT
  lds r24, half_count_release_pin
  st Z+, r24
  in r24, GPIOR2
  cpse r30, r24
  rjmp snapshot_store
  /* Full: this one is lost. Off until the main loop has emptied the ring, or a fast input would starve it. */
  ldi r24, 0
  sts PCICR, r24
  rjmp snapshot_end
snapshot_store:
  out GPIOR0, r30
  /* Changed again meanwhile: going round is 24 cycles shorter than leaving and coming back. Ends at the latest when the ring
     is full. */
  sbic PCIFR, PCIF2
  rjmp snapshot_again
snapshot_end:
  pop r24
  pop r31
  pop r30
  reti

/* Lets snapshots nest as early as possible: light that crosses the low level crosses the high level soon after, and that
   one is a snapshot. Its own interrupt stays off meanwhile, and so does the one of the readings, or the other edge would be
   armed later now and then. The reads of Timer1 by nested snapshots overwrite the
   timer's TEMP register, so ICR1 is read until two readings of its high byte agree. */
  .global TIMER1_CAPT_vect
TIMER1_CAPT_vect:
  push r24
  ldi r24, 0
  sts TIMSK1, r24
  sei
  push r25
  lds r25, TIMSK0 /* off already if this came into the handler of the readings: it must not come into itself */
  push r25
  sts TIMSK0, r24
  push r30
  push r31
capture_read:
  lds r24, ICR1L
  lds r25, ICR1H
  lds r30, ICR1L
  lds r31, ICR1H
  cpse r25, r31
  rjmp capture_read
  cpse r24, r30
  rjmp capture_read
capture_keep: /* r25:r24 is the time, ICES1 the edge */
  lds r30, capture_write
  ldi r31, hi8(capture_ring)
  st Z+, r24
  st Z+, r25
  in r24, GPIOR1
  st Z+, r24
  lds r24, TCCR1B
  st Z+, r24
  lds r25, capture_read_offset
  cpse r30, r25
  rjmp capture_store
  /* Full: this one is lost, and the interrupt stays off until the main loop has emptied the ring. */
  pop r31
  pop r30
  pop r25
  sts TIMSK0, r25
  pop r25
  pop r24
  reti
capture_store:
  sts capture_write, r30
#if CONFIG_STARTER_RIG
  pop r31 /* the main loop arms the next edge */
  pop r30
  pop r25
  sts TIMSK0, r25
  pop r25
  pop r24
  reti
#endif
  /* arm the other edge */
  ldi r25, CAPTURE_FALLING
  sbrs r24, ICES1
  ldi r25, CAPTURE_RISING
  sts TCCR1B, r25
  sbi TIFR1, ICF1 /* changing ICES1 may set the flag */
  /* The edge that is waited for may have gone by before it was armed: then the pin stands where it would lead to. */
  in r30, BOARD_CAPTURE_LEVEL
  sbrs r25, ICES1
  rjmp capture_wants_high
  sbrc r30, BOARD_CAPTURE_LEVEL_BIT
  rjmp capture_missed
  rjmp capture_end
capture_wants_high:
  sbrs r30, BOARD_CAPTURE_LEVEL_BIT
  rjmp capture_missed
capture_end:
  pop r31
  pop r30
  pop r25
  ldi r24, 1 << ICIE1
  cli
  sts TIMSK1, r24
  sts TIMSK0, r25
  pop r25
  pop r24
  reti
capture_missed:
  nop /* the flag of an edge that was just in time comes up to three cycles after the pin */
  nop
  sbic TIFR1, ICF1
  rjmp capture_late
  /* A pulse shorter than this handler. Its end is stamped now, by software: pulses of under 60 ticks read as 70. */
  cli
  lds r24, TCNT1L
  lds r25, TCNT1H
  sei
  rjmp capture_keep
capture_late:
  sbi TIFR1, ICF1
  rjmp capture_read

/* Every 256 cycles, so short, and edges go before it from its second instruction on. Its own interrupt stays off meanwhile:
   a burst of edges could hold it up for longer than that, and it must not pile up on the stack. The offset stands at the
   entry to be written next; the ring is its lower 64 of 128 bytes, so bit 6 tells its end. */
  .global TIMER0_COMPA_vect
TIMER0_COMPA_vect:
  sei
  push r24
  ldi r24, 0
  sts TIMSK0, r24
  push r30
  push r31
  lds r30, stream_write
  ldi r31, hi8(stream_ring)
  lds r24, ADCL
  st Z+, r24
  lds r24, ADCH
  st Z+, r24
  sbrc r30, STREAM_END_BIT
  ldi r30, lo8(stream_ring)
  sts stream_write, r30
  pop r31
  pop r30
  ldi r24, READINGS_ON
  sts TIMSK0, r24
  pop r24
  reti
