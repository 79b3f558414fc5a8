/* Sizes of the ring between the handler of the ADC readings and the main loop. Also read by the assembler. */
#ifndef STREAM_RING_H
#define STREAM_RING_H

/* Two batches of 16 readings of two bytes, on a boundary of twice the size. */
#define STREAM_BATCH_READINGS 16
#define STREAM_BATCH_BYTES 32
#define STREAM_BYTES 64
#define STREAM_END_BIT 6

#endif
