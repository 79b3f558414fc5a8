#ifndef BENCH_SCENARIO_H
#define BENCH_SCENARIO_H

#include <stdbool.h>

#include "bench.h"

/* Reader of scenario statements (README.md, "Scenario"), from a file or line by line from standard input. */
struct scenario {
  struct bench *bench;
  struct curve *open_curve; /* between `curve` and `end-curve` */
  bool has_end;
  char trouble[200]; /* what is wrong with the last line and what to do */
};

/* One line, which is taken apart. False when it is wrong: then `trouble` says why. */
bool scenario_line(struct scenario *scenario, char *line);
/* At the end of the text: false when a curve is still open. */
bool scenario_finished(struct scenario *scenario);

#endif
