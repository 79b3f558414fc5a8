/* Reads fixtures/protocol/vectors.tsv: line, verdict, meaning, separated by tabs. */
#ifndef VECTORS_H
#define VECTORS_H

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct vector {
  char row[600];
  const char *line, *verdict, *meaning; /* in row */
};

/* The next vector; false at the end. Ends the test when the file is not to be read or a row has not three columns. */
static inline bool vectors_next(FILE *file, struct vector *vector) {
  while (fgets(vector->row, sizeof vector->row, file)) {
    char *row = vector->row;
    if (row[0] == '#' && row[1] == ' ') {
      continue;
    }
    row[strcspn(row, "\n")] = '\0';
    char *verdict = strchr(row, '\t');
    char *meaning = verdict ? strchr(verdict + 1, '\t') : NULL;
    if (!meaning) {
      printf("Bail out! a row of the vectors has not three columns: %s\n", row);
      exit(2);
    }
    *verdict++ = '\0';
    *meaning++ = '\0';
    vector->line = row;
    vector->verdict = verdict;
    vector->meaning = meaning;
    return true;
  }
  return false;
}

static inline FILE *vectors_open(int count, char **words) {
  FILE *file = count > 1 ? fopen(words[1], "r") : NULL;
  if (!file) {
    printf("Bail out! give the path of fixtures/protocol/vectors.tsv\n");
    exit(2);
  }
  return file;
}

#endif
