/* The bench in a box: command line and main loop. README.md is the manual. */

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "bench.h"
#include "pace.h"
#include "port.h"
#include "published.h"
#include "scenario.h"
#include "store.h"

#define SLICE CYCLES_PER_MILLISECOND
#define CATCH_UP_SLICES 20 /* run between two looks at the terminal when late */
#define FACTOR_LEAST 0.01
#define FACTOR_MOST 100
#define HOST_WAITS 60000 /* of a millisecond and more, for a host that reads nothing */
#define STORE_EVERY (50 * CYCLES_PER_MILLISECOND)

static const char usage[] =
    "usage: bench --elf FILE [--scenario FILE] [--log FILE] [--eeprom FILE] [--link PATH] [--clock FILE] [--pace TIMES] "
    "[--boot FILE] [--paced | --unpaced] [--uart FILE]\n";

struct options {
  const char *elf, *scenario, *log, *eeprom, *link, *uart, *clock, *pace, *boot;
  double factor; /* of real time */
  bool unpaced;
};

static volatile sig_atomic_t interrupted;

static void on_signal(int number) {
  (void)number;
  interrupted = 1;
}

static void refuse(const char *about, const char *why) {
  fprintf(stderr, "bench: %s %s\n", about, why);
  exit(2);
}

static struct options read_options(int count, char **words) {
  struct options o = {0};
  struct {
    const char *name;
    const char **value;
  } valued[] = {{"--elf", &o.elf},       {"--scenario", &o.scenario}, {"--log", &o.log},
                {"--eeprom", &o.eeprom}, {"--link", &o.link},         {"--uart", &o.uart},
                {"--clock", &o.clock},   {"--pace", &o.pace},         {"--boot", &o.boot}};
  for (int i = 1; i < count; i++) {
    bool known = strcmp(words[i], "--paced") == 0;
    if (strcmp(words[i], "--unpaced") == 0) {
      known = o.unpaced = true;
    }
    for (size_t v = 0; v < sizeof valued / sizeof *valued; v++) {
      if (strcmp(words[i], valued[v].name) == 0) {
        if (i + 1 == count) {
          refuse(words[i], "needs something behind it");
        }
        *valued[v].value = words[++i];
        known = true;
        break;
      }
    }
    if (!known) {
      fprintf(stderr, "bench: unknown option %s\n%s", words[i], usage);
      exit(2);
    }
  }
  if (!o.elf) {
    fprintf(stderr, "bench: no firmware given\n%s", usage);
    exit(2);
  }
  if (o.unpaced && o.link) {
    refuse("--link", "goes with --paced only: an unpaced bench has no pseudo-terminal");
  }
  if (o.unpaced && (o.clock || o.pace)) {
    refuse(o.clock ? "--clock" : "--pace", "goes with --paced only: an unpaced bench waits for nobody");
  }
  o.factor = 1;
  if (o.pace) {
    char *end;
    o.factor = strtod(o.pace, &end);
    if (*end || !(o.factor >= FACTOR_LEAST && o.factor <= FACTOR_MOST)) {
      refuse("--pace", "is how many times faster than life, 0.01 to 100, such as 3");
    }
  }
  if (!o.unpaced && o.uart) {
    refuse("--uart", "goes with --unpaced only: a paced bench sends to its pseudo-terminal");
  }
  return o;
}

static void read_scenario(struct scenario *scenario, const char *path) {
  FILE *file = strcmp(path, "-") == 0 ? stdin : fopen(path, "r");
  if (!file) {
    refuse(path, strerror(errno));
  }
  char *line = NULL;
  size_t room = 0;
  int number = 0;
  bool good = true;
  while (good && getline(&line, &room, file) >= 0) {
    number++;
    good = scenario_line(scenario, line);
  }
  if (!good || !scenario_finished(scenario)) {
    fprintf(stderr, "%s:%d: %s\n", path, number, scenario->trouble);
    exit(2);
  }
  free(line);
  if (file != stdin) {
    fclose(file);
  }
}

/* Statements that come while the bench runs. A wrong one is reported and skipped: it must not end a session. */
struct live {
  struct scenario scenario;
  char line[4096];
  size_t length;
  int number;
  bool open;
};

static void take_live(struct live *live, const char *bytes, ssize_t got) {
  for (ssize_t i = 0; i < got; i++) {
    if (bytes[i] != '\n') {
      if (live->length + 1 < sizeof live->line) {
        live->line[live->length++] = bytes[i];
      }
      continue;
    }
    live->line[live->length] = 0;
    live->length = 0;
    live->number++;
    if (!scenario_line(&live->scenario, live->line)) {
      fprintf(stderr, "standard input:%d: %s\n", live->number, live->scenario.trouble);
    }
  }
}

/* All that is there at once: times of lines that were written together count from the same moment. */
static void read_live(struct live *live) {
  char bytes[1024];
  ssize_t got;
  while ((got = read(STDIN_FILENO, bytes, sizeof bytes)) > 0) {
    take_live(live, bytes, got);
  }
  if (got == 0 || (errno != EAGAIN && errno != EINTR)) {
    live->open = false;
  }
}

struct station {
  struct bench bench;
  struct port port;
  struct store store;
  struct published time;
};

static void announce(struct station *s) {
  printf("PORT %s\n", s->port.path);
  fflush(stdout);
  journal_write(&s->bench.journal, "port", bench_now(&s->bench), "%s", s->port.path);
}

static void plugged(void *context, bool plug) {
  struct station *s = context;
  if (!plug) {
    port_unplug(&s->port);
    journal_write(&s->bench.journal, "note", bench_now(&s->bench), "unplugged");
  } else if (s->port.master < 0) {
    if (port_plug(&s->port)) {
      announce(s);
    } else {
      fprintf(stderr, "bench: no pseudo-terminal to be had: %s\n", strerror(errno));
    }
  }
}

static void to_port(void *context, unsigned char byte) {
  port_put(context, byte);
}

static void to_file(void *context, unsigned char byte) {
  fputc(byte, context);
}

static void save(struct station *s) {
  if (!store_save(&s->store, &s->bench.chip)) {
    fprintf(stderr, "bench: cannot write %s: %s\n", s->store.path, strerror(errno));
    s->store.path = NULL; /* said once */
  }
}

static void run_unpaced(struct station *s) {
  while (!s->bench.ended && !s->bench.stopped && !interrupted) {
    bench_run_until(&s->bench, bench_now(&s->bench) + STORE_EVERY);
    save(s);
  }
}

/* Stands still while the host reads too slowly; a host that reads nothing at all loses what it was sent. */
static bool waits_for_host(struct station *s, unsigned *waits) {
  if (!port_wait(&s->port)) {
    *waits = 0;
    return false;
  }
  if (++*waits > HOST_WAITS) {
    port_give_up(&s->port);
  }
  return true;
}

static void exchange(struct station *s) {
  unsigned char in[1024];
  /* Told first, so that no line reaches a host before the time at which it was over. */
  published_tell(&s->time, board_clock_seconds(&s->bench.clock, bench_now(&s->bench)));
  size_t got = port_exchange(&s->port, in, sizeof in);
  wire_send(&s->bench.wire, in, got);
}

static void run_paced(struct station *s, double factor, bool live_input) {
  struct live live = {.scenario = {.bench = &s->bench}, .open = live_input};
  fcntl(STDIN_FILENO, F_SETFL, fcntl(STDIN_FILENO, F_GETFL) | O_NONBLOCK);
  bool alone = s->time.ns != NULL; /* the host goes by the bench's time, so real time counts for nothing */
  struct pace pace = {.factor = factor, .catches_up = !alone};
  pace_begin(&pace, &s->bench.clock, bench_now(&s->bench));
  cycles_t most_slices = alone ? 1 : CATCH_UP_SLICES;
  cycles_t save_at = STORE_EVERY;
  unsigned waits = 0;
  while (!s->bench.ended && !s->bench.stopped && !interrupted) {
    cycles_t now = bench_now(&s->bench);
    pace_wait(&pace, now + SLICE + RUN_LIMIT, live.open ? STDIN_FILENO : -1);
    if (live.open) {
      read_live(&live);
    }
    if (alone && waits_for_host(s, &waits)) {
      pace_resume(&pace, now);
    } else {
      cycles_t real = pace_reached(&pace, now);
      cycles_t reached = real > RUN_LIMIT ? real - RUN_LIMIT : 0; /* so as not to pass real time */
      cycles_t most = now + most_slices * SLICE;
      bench_run_until(&s->bench, reached < most ? reached : most);
    }
    exchange(s);
    if (bench_now(&s->bench) >= save_at) {
      save(s);
      save_at = bench_now(&s->bench) + STORE_EVERY;
    }
  }
}

int main(int count, char **words) {
  static struct station s;
  struct options options = read_options(count, words);
  s.port.master = -1;
  s.port.link = options.link;
  s.store.path = options.eeprom;
  const char *trouble = bench_open(&s.bench, options.elf);
  if (trouble) {
    refuse(options.elf, trouble);
  }
  if (options.boot && (trouble = chip_add_bootloader(&s.bench.chip, options.boot))) {
    refuse(options.boot, trouble);
  }
  if (options.log && !(s.bench.journal.file = fopen(options.log, "w"))) {
    refuse(options.log, strerror(errno));
  }
  if (!store_load(&s.store, &s.bench.chip)) {
    refuse(options.eeprom, errno == EINVAL ? "does not hold 1024 bytes: give an EEPROM file of the bench, or delete it"
                                           : strerror(errno));
  }
  struct scenario scenario = {.bench = &s.bench};
  if (options.scenario || options.unpaced) {
    read_scenario(&scenario, options.scenario ? options.scenario : "-");
  }
  if (options.unpaced && !scenario.has_end) {
    refuse(options.scenario ? options.scenario : "standard input", "has no end: add a line 'end SECONDS'");
  }
  FILE *uart = options.uart ? fopen(options.uart, "wb") : NULL;
  if (options.uart && !uart) {
    refuse(options.uart, strerror(errno));
  }
  struct sigaction action = {.sa_handler = on_signal};
  sigaction(SIGINT, &action, NULL);
  sigaction(SIGTERM, &action, NULL);
  if (options.unpaced) {
    s.bench.wire.out = uart ? to_file : NULL;
    s.bench.wire.out_context = uart;
    run_unpaced(&s);
  } else {
    s.bench.wire.out = to_port;
    s.bench.wire.out_context = &s.port;
    s.bench.on_plug = plugged;
    s.bench.context = &s;
    if (options.clock && !published_open(&s.time, options.clock)) {
      refuse(options.clock, strerror(errno));
    }
    s.port.holds = options.clock != NULL;
    plugged(&s, true);
    run_paced(&s, options.factor, !options.scenario || strcmp(options.scenario, "-") != 0);
  }
  save(&s);
  port_unplug(&s.port);
  if (s.bench.stopped) {
    fprintf(stderr, "bench: stopped at cycle %llu, program address %04X: %s\n", (unsigned long long)bench_now(&s.bench),
            (unsigned)s.bench.chip.avr->pc, s.bench.stopped);
  }
  if (uart) {
    fclose(uart);
  }
  bool failed = s.bench.stopped;
  if (s.bench.journal.file) {
    fclose(s.bench.journal.file);
  }
  bench_close(&s.bench);
  return failed ? 1 : 0;
}
