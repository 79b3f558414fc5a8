#ifndef BENCH_OUTPUTS_H
#define BENCH_OUTPUTS_H

struct bench;

/* Lets the board's own outputs show on its input registers, as on silicon and unlike in simavr: PWM on D3 (PIND bit 3) and
   D11 (PINB bit 3), the UART on D1 and D0. The firmware has to mask them out. */
void outputs_begin(struct bench *bench);

#endif
