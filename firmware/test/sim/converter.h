#ifndef BENCH_CONVERTER_H
#define BENCH_CONVERTER_H

struct bench;

/* The ADC's way to the bench. simavr 1.6 starts no conversion from a timer, reads the channel only when the result is
   fetched, and scales by 1023; the bench starts it on each new compare match of Timer0, samples the channel that was
   selected then two clocks of the ADC and three of the chip later (data sheet, auto-triggered conversion), hands the result
   over at the end, and scales by 1024 as the data sheet has it. */
void converter_begin(struct bench *bench);

#endif
