#include "bench.h"

#include <stdlib.h>

#include "converter.h"
#include "led_drive.h"
#include "outputs.h"
#include "pwm.h"

cycles_t bench_now(const struct bench *bench) {
  return bench->chip.avr->cycle;
}

void bench_pin(struct bench *bench, enum pin pin, bool level) {
  if (bench->chip.levels[pin] == level) {
    return;
  }
  chip_set_pin(&bench->chip, pin, level);
  journal_write(&bench->journal, "edge", bench_now(bench), "%s %d", pin_wiring[pin].name, level);
  if (bench->on_edge) {
    bench->on_edge(bench->context, bench_now(bench), bench->edge_due, pin, level);
  }
}

static void comparator_switched(void *context, cycles_t at, enum pin pin, bool level) {
  struct bench *bench = context;
  bench->edge_due = at;
  bench_pin(context, pin, level);
}

static avr_cycle_count_t optics_timer(struct avr_t *avr, avr_cycle_count_t when, void *context) {
  (void)when;
  struct bench *bench = context;
  optics_advance(&bench->optics, avr->cycle);
  cycles_t due = optics_due(&bench->optics);
  return due == NEVER ? 0 : due;
}

void bench_watch_optics(struct bench *bench) {
  cycles_t due = optics_due(&bench->optics), now = bench_now(bench);
  if (due == NEVER) {
    avr_cycle_timer_cancel(bench->chip.avr, optics_timer, bench);
  } else {
    avr_cycle_timer_register(bench->chip.avr, due > now ? due - now : 0, optics_timer, bench);
  }
}

void bench_optics_changed(struct bench *bench) {
  optics_changed(&bench->optics, bench_now(bench));
  bench_watch_optics(bench);
}

static avr_cycle_count_t agenda_timer(struct avr_t *avr, avr_cycle_count_t when, void *context);

static void watch_agenda(struct bench *bench) {
  cycles_t due = agenda_next(&bench->agenda), now = bench_now(bench);
  if (due != NEVER) {
    avr_cycle_timer_register(bench->chip.avr, due > now ? due - now : 0, agenda_timer, bench);
  }
}

static void burst(struct bench *bench, struct event event) {
  bench_pin(bench, event.subject, event.number % 2 == 0);
  if (++event.number < event.size) {
    event.at = event.begun + (cycles_t)((double)event.number * event.value + 0.5);
    agenda_add(&bench->agenda, event);
  }
}

static void perform(struct bench *bench, struct event event) {
  cycles_t now = bench_now(bench);
  bench->edge_due = event.at;
  switch (event.deed) {
    case DEED_LAMP:
      optics_lamp(&bench->optics, event.at, event.value);
      bench_watch_optics(bench);
      break;
    case DEED_FIRE:
      optics_fire(&bench->optics, event.at, event.subject, event.curve, board_clock_rate(&bench->clock, event.at));
      bench_watch_optics(bench);
      break;
    case DEED_HOLD:
      optics_hold(&bench->optics, event.at, event.value);
      bench_watch_optics(bench);
      break;
    case DEED_PIN:
      bench_pin(bench, event.subject, event.level);
      break;
    case DEED_BURST:
      burst(bench, event);
      break;
    case DEED_RING:
      /* Ringings that overlap make one signal: it is over the threshold while any of them is. */
      bench->swings[event.subject] += event.level;
      bench_pin(bench, event.subject, bench->swings[event.subject] > 0);
      break;
    case DEED_SEND:
      wire_send(&bench->wire, event.bytes, event.size);
      break;
    case DEED_OVERRUN:
      wire_overrun(&bench->wire, event.bytes, event.size);
      break;
    case DEED_PRESET:
      if (chip_preset_ticks(&bench->chip, event.number)) {
        journal_write(&bench->journal, "note", now, "tick counter set to %012llX", (unsigned long long)event.number);
      } else {
        journal_write(&bench->journal, "note", now, "tick counter not set: this firmware has no timebase_halves");
      }
      break;
    case DEED_STALL:
      chip_stall(&bench->chip);
      journal_write(&bench->journal, "note", now, "clock of Timer1 stopped");
      break;
    case DEED_UNPLUG:
    case DEED_PLUG:
      if (bench->on_plug) {
        bench->on_plug(bench->context, event.deed == DEED_PLUG);
      }
      break;
    case DEED_RESET:
      bench->reset_wanted = true;
      break;
    case DEED_CORRUPT:
      bench->wire.corrupt_lines += (uint32_t)event.number;
      break;
    case DEED_END:
      bench->ended = true;
      break;
  }
  free(event.bytes);
}

static avr_cycle_count_t agenda_timer(struct avr_t *avr, avr_cycle_count_t when, void *context) {
  (void)when;
  struct bench *bench = context;
  while (agenda_next(&bench->agenda) <= avr->cycle) {
    perform(bench, agenda_take(&bench->agenda));
  }
  cycles_t due = agenda_next(&bench->agenda);
  return due == NEVER ? 0 : due;
}

void bench_add(struct bench *bench, struct event event) {
  agenda_add(&bench->agenda, event);
  watch_agenda(bench);
}

/* A reset drops every timer of simavr, the bench's own ones too, and floats the outputs. */
static void rearm(struct bench *bench) {
  bench->chip.reset_seen = false;
  bench->trigger_flag = false;
  chip_restore_pins(&bench->chip);
  wire_rearm(&bench->wire);
  pwm_reset(bench);
  led_drive_reset(bench);
  watch_agenda(bench);
  journal_write(&bench->journal, "note", bench_now(bench), "the board was reset, cause %02X",
                bench->chip.avr->data[REG_MCUSR]);
}

void bench_run_until(struct bench *bench, cycles_t cycle) {
  avr_t *avr = bench->chip.avr;
  while (avr->cycle < cycle && !bench->ended && !bench->stopped) {
    int state = avr_run(avr);
    if (bench->reset_wanted) {
      bench->reset_wanted = false;
      chip_external_reset(&bench->chip);
    }
    if (bench->chip.reset_seen) {
      rearm(bench);
    } else if (state == cpu_Crashed && chip_stands(&bench->chip)) {
      journal_write(&bench->journal, "note", bench_now(bench), "the program ran wild: the board stands until it is reset");
    } else if (state == cpu_Crashed) {
      bench->stopped = "the firmware ran into an instruction or address that does not exist";
    } else if (state == cpu_Done && !chip_stands(&bench->chip)) {
      bench->stopped = "the firmware went to sleep with interrupts off";
    }
  }
}

static void no_sleep(struct avr_t *avr, avr_cycle_count_t how_long) {
  (void)avr, (void)how_long;
}

const char *bench_open(struct bench *bench, const char *elf_path) {
  const char *trouble = chip_load(&bench->chip, elf_path);
  if (trouble) {
    return trouble;
  }
  avr_t *avr = bench->chip.avr;
  avr->sleep = no_sleep;
  wire_begin(&bench->wire, &bench->chip, &bench->journal);
  optics_begin(&bench->optics, comparator_switched, bench);
  outputs_begin(bench);
  led_drive_begin(bench);
  converter_begin(bench);
  pwm_begin(bench);
  bench->chip.reset_seen = false;
  bench_watch_optics(bench);
  watch_agenda(bench);
  return NULL;
}

void bench_close(struct bench *bench) {
  agenda_free(&bench->agenda);
  wire_free(&bench->wire);
  for (size_t i = 0; i < bench->curve_count; i++) {
    curve_free(bench->curves[i]);
  }
  free(bench->curves);
  chip_free(&bench->chip);
}
