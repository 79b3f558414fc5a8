#ifndef BENCH_AGENDA_H
#define BENCH_AGENDA_H

#include <stddef.h>

#include "curve.h"
#include "simtime.h"

/* What a scenario statement makes happen at one moment. */
enum deed {
  DEED_LAMP,
  DEED_FIRE,
  DEED_HOLD,
  DEED_PIN,
  DEED_BURST,
  DEED_RING,
  DEED_SEND,
  DEED_OVERRUN,
  DEED_PRESET,
  DEED_STALL,
  DEED_UNPLUG,
  DEED_PLUG,
  DEED_RESET,
  DEED_CORRUPT,
  DEED_END
};

struct event {
  cycles_t at;
  uint64_t order; /* keeps statements of one moment in the order of the scenario */
  enum deed deed;
  int subject;  /* pin, or sensor (-1: all) */
  int level; /* of a pin; 1 or -1 for the start or end of one swing of a ringing */
  double value; /* lamp fraction, opening, or spacing of a burst in cycles */
  uint64_t number;
  cycles_t begun; /* start of a burst */
  const struct curve *curve;
  unsigned char *bytes; /* owned */
  size_t size;
};

/* Events by time: a binary heap. */
struct agenda {
  struct event *heap;
  size_t count;
  size_t room;
  uint64_t made;
};

void agenda_add(struct agenda *agenda, struct event event);
/* Time of the next event, NEVER when there is none. */
cycles_t agenda_next(const struct agenda *agenda);
/* Takes the next event out; the caller frees its bytes. Only when agenda_next is not NEVER. */
struct event agenda_take(struct agenda *agenda);
void agenda_free(struct agenda *agenda);

#endif
