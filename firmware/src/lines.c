#include "lines.h"

#include "board.h"
#include "capture.h"
#include "config.h"
#include "edges.h"
#include "identity.h"
#include "light.h"
#include "line_writer.h"
#include "status.h"
#include "thresholds.h"
#include "timebase.h"

#define PROTOCOL_VERSION 1

static struct line_writer line;
static uint16_t next_seq;
static struct ticks now; /* static, as a stack frame for it would make the compiler close interrupts around its making */

bool lines_busy(void) { return line_writer_busy(&line); }
char lines_next(void) { return line_writer_next(&line); }

static void begin(char kind) { line_writer_begin(&line, kind, next_seq++); }
static void hex(uint16_t value, uint8_t digits) { line_writer_hex(&line, value, digits); }
static void hex32(uint32_t value) { line_writer_hex32(&line, value); }
static void word(const FLASH char *text) { line_writer_flash_word(&line, text); }

static void serial(void) {
  static const FLASH char none[] = "none";
  static const FLASH char damaged[] = "damaged";
  if (identity_damaged()) {
    word(damaged);
  } else if (identity_serial()[0] == '\0') {
    word(none);
  } else {
    line_writer_word(&line, identity_serial());
  }
}

void lines_greeting(void) {
  static const FLASH char kind[] = BOARD_KIND;
  static const FLASH char version[] = FIRMWARE_VERSION;
  timebase_now(&now);
  begin('H');
  hex(PROTOCOL_VERSION, 2);
  hex32(F_CPU);
  word(kind);
  hex(CHANNELS_MASK, 2);
  serial();
  hex32(identity_boots());
  word(status_cause());
  word(version);
  line_writer_ticks(&line, &now);
}

void lines_edge(const struct edge *edge) {
  status_count_edge();
  begin('E');
  hex(edge->channel, 1);
  hex(edge->level, 1);
  hex32(edge->ticks32);
}

/* Levels as the edges told so far add up to; the pins themselves only when no edge can be under way, so that a difference
   always means a lost edge. The knob contact may rest on another level than its pin, so it is always as told. */
static uint8_t levels_now(void) {
  uint8_t pins = board_all_levels();
  uint8_t told = edges_levels();
  return capture_quiet() ? pins | (told & 1 << CHANNEL_KNOB) : told;
}

void lines_beat(void) {
  uint8_t levels = levels_now();
  timebase_now(&now);
  if (edges_waiting()) {
    ticks_back(&now, ticks_low32(now) - edges_next_ticks32() + 1);
  }
  begin('B');
  line_writer_ticks(&line, &now);
  hex(levels, 2);
  hex(light_centre(), 4);
}

void lines_counters(void) {
  const struct status *status = status_now();
  begin('L');
  hex32(status->edges);
  hex(status->snapshots_lost, 4);
  hex(status->captures_lost, 4);
  hex(status->floods, 4);
  hex(status->bad_lines, 4);
  hex(status->long_lines, 4);
  hex(status->lost_bytes, 4);
  status_told();
}

void lines_answer(uint16_t command_seq, uint8_t result) {
  begin('A');
  hex(command_seq, 4);
  hex(result, 2);
}

void lines_echo(uint16_t token, const struct ticks *received) {
  timebase_now(&now);
  begin('Q');
  hex(token, 4);
  line_writer_ticks(&line, received);
  line_writer_ticks(&line, &now);
}

void lines_thresholds(void) {
  begin('V');
  hex(thresholds_low_code(), 2);
  hex(thresholds_high_code(), 2);
  hex(light_low_threshold(), 4);
  hex(light_high_threshold(), 4);
}

void lines_pulse(const struct reference_pulse *pulse) {
  begin('R');
  hex(pulse->index, 4);
  hex(pulse->kind, 1);
  hex32(pulse->begin);
  hex32(pulse->end);
}

void lines_trip(const struct trip *trip) {
  begin('W');
  hex(trip->channel, 1);
  hex(trip->rising, 1);
  hex(trip->code, 4);
  hex(trip->level, 4);
  hex(trip->light, 4);
}

void lines_block(const struct block *block) {
  begin('M');
  hex(light_block_channel(), 1);
  hex(block->index, 4);
  hex(block->sum, 4);
  hex(block->least, 3);
  hex(block->most, 3);
}

void lines_curve(const struct curve_line *part) {
  begin(part->byte_count == 0 ? 'C' : 'D');
  hex(part->curve, 2);
  if (part->byte_count != 0) {
    hex(part->number, 4);
    line_writer_bytes(&line, part->bytes, part->byte_count);
    return;
  }
  hex(part->part, 1);
  hex32(part->first);
  hex32(part->period);
  hex(part->number, 4);
  hex(part->flags, 2);
}
