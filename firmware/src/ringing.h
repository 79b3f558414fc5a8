/* Which entries of the snapshot ring are ringing of the click sensor and may be left out. No AVR header: also compiled by
   the native tests. Main loop only. */
#ifndef RINGING_H
#define RINGING_H

#include <stdbool.h>

#include "edges.h"

/* Whether four entries in a row are changes of the click sensor alone (the first one may be any change), all within
   CONFIG_RINGING_TICKS: then the two in the middle tell nothing that the outer two do not, and levels still alternate
   without them. */
bool ringing_covers(const struct entry *first, const struct entry *second, const struct entry *third,
                    const struct entry *last);

#endif
