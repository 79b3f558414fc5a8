#ifndef BENCH_PWM_H
#define BENCH_PWM_H

struct bench;

/* The two PWM outputs of Timer2 that make the thresholds. A new code comes into force with the next cycle of the timer, as the
   double buffering of fast PWM has it (data sheet); simavr takes it at once. The log gets codes that stood for a
   millisecond: within a sweep they change too often. */
void pwm_begin(struct bench *bench);
/* After a reset, which floats the outputs. */
void pwm_reset(struct bench *bench);

#endif
