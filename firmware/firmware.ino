/* Opens the rig's firmware as a sketch. The program is in src/ and has its own main(), so that the Arduino core's main, its
   timer interrupt and its serial port are not linked. Board: any ATmega328P at 16 MHz and 5 V (Uno, Nano). */
