#include "agenda.h"

#include <stdlib.h>

static int before(const struct event *a, const struct event *b) {
  return a->at != b->at ? a->at < b->at : a->order < b->order;
}

static void swap(struct event *a, struct event *b) {
  struct event kept = *a;
  *a = *b;
  *b = kept;
}

void agenda_add(struct agenda *agenda, struct event event) {
  if (agenda->count == agenda->room) {
    agenda->room = agenda->room ? 2 * agenda->room : 64;
    agenda->heap = realloc(agenda->heap, agenda->room * sizeof *agenda->heap);
  }
  event.order = agenda->made++;
  size_t i = agenda->count++;
  agenda->heap[i] = event;
  while (i > 0 && before(&agenda->heap[i], &agenda->heap[(i - 1) / 2])) {
    swap(&agenda->heap[i], &agenda->heap[(i - 1) / 2]);
    i = (i - 1) / 2;
  }
}

cycles_t agenda_next(const struct agenda *agenda) {
  return agenda->count ? agenda->heap[0].at : NEVER;
}

struct event agenda_take(struct agenda *agenda) {
  struct event first = agenda->heap[0];
  agenda->heap[0] = agenda->heap[--agenda->count];
  for (size_t i = 0;;) {
    size_t least = i;
    for (size_t child = 2 * i + 1; child <= 2 * i + 2 && child < agenda->count; child++) {
      if (before(&agenda->heap[child], &agenda->heap[least])) {
        least = child;
      }
    }
    if (least == i) {
      return first;
    }
    swap(&agenda->heap[i], &agenda->heap[least]);
    i = least;
  }
}

void agenda_free(struct agenda *agenda) {
  for (size_t i = 0; i < agenda->count; i++) {
    free(agenda->heap[i].bytes);
  }
  free(agenda->heap);
  *agenda = (struct agenda){0};
}
