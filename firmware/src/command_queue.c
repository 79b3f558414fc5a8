#include "command_queue.h"

#include "board.h"
#include "command.h"
#include "config.h"
#include "curve.h"
#include "identity.h"
#include "light.h"
#include "line_reader.h"
#include "lines.h"
#include "reference.h"
#include "status.h"
#include "sweep.h"
#include "thresholds.h"
#include "timebase.h"
#include "uart.h"

struct queued_command {
  struct command command;
  struct ticks received;
};

static struct line_reader reader;
static struct queued_command queue[CONFIG_COMMAND_QUEUE];
static struct ticks line_end; /* when the last line feed was taken */
static uint8_t first;
static uint8_t waiting;
static uint8_t step; /* how far the first command is */
static char serial[SERIAL_CHARS + 1]; /* of the one `i` that may wait */
static bool serial_waits;
static bool line_waits; /* a good line stands in `reader` and no byte is taken until it is read */

static uint8_t place_after(uint8_t place, uint8_t steps) {
  place = (uint8_t)(place + steps);
  return place >= CONFIG_COMMAND_QUEUE ? (uint8_t)(place - CONFIG_COMMAND_QUEUE) : place;
}

void command_queue_start(void) { line_reader_start(&reader); }

static void keep_serial(struct command *command) {
  if (serial_waits) {
    command->result = RESULT_BUSY;
    return;
  }
  serial_waits = true;
  for (uint8_t i = 0; i <= reader.body_length; i++) {
    serial[i] = reader.body[i];
  }
}

static void take_command(void) {
  if (waiting == CONFIG_COMMAND_QUEUE) {
    /* no room even for a refusal: to the host it is as if the line had not arrived */
    status_count_lost_bytes(1);
    return;
  }
  struct queued_command *queued = &queue[place_after(first, waiting)];
  queued->received = line_end;
  command_read(&queued->command, &reader);
  if (queued->command.result == RESULT_NO_COMMAND) {
    return;
  }
  if (queued->command.kind == 'i' && queued->command.result == RESULT_DONE) {
    keep_serial(&queued->command);
  }
  waiting++;
}

static void take_byte(void) {
  uint8_t byte = uart_receive();
  if (byte == '\n') {
    timebase_now(&line_end);
  }
  switch (line_reader_take(&reader, byte)) {
    case LINE_UNFINISHED:
      break;
    case LINE_GOOD:
      line_waits = true;
      break;
    case LINE_TOO_LONG:
      status_count_long_line();
      break;
    default:
      status_count_bad_line();
      break;
  }
}

/* The end of a line is dealt with in two slices, or it would hold up the others for 900 cycles. */
void command_queue_tend(void) {
  if (line_waits) {
    line_waits = false;
    take_command();
  } else if (uart_has_received()) {
    take_byte();
  }
}

static void drop(void) {
  first = place_after(first, 1);
  waiting--;
  step = 0;
}

static bool answer(uint8_t result) {
  lines_answer(queue[first].command.seq, result);
  drop();
  return true;
}

/* `v`: step 0 begins to read, 1 waits for the readings, 2 answers. */
static bool go_on_reading_thresholds(void) {
  switch (step) {
    case 0:
      if (!light_ask_thresholds()) {
        return answer(RESULT_BUSY);
      }
      step = 1;
      return false;
    case 1:
      if (!light_thresholds_ready()) {
        return false;
      }
      lines_thresholds();
      step = 2;
      return true;
    default:
      return answer(RESULT_DONE);
  }
}

/* `m`: a curve has to be out of the memory first. Stopping needs none. */
static bool go_on_asking_blocks(const struct command *command) {
  if (!(CHANNELS_MASK >> command->first & 1)) {
    return answer(RESULT_NOT_ON_THIS_RIG);
  }
  if (command->number != 0) {
    curve_suspend();
    if (curve_waiting()) {
      return false;
    }
  }
  return answer(light_ask_blocks(command->first, command->number) ? RESULT_DONE : RESULT_BUSY);
}

/* `c`: curves of another sensor are one curve long. */
static uint8_t set_curves(uint8_t mode) {
  if (mode >= CURVES_NEXT_OF_OUTER_A && !(CHANNELS_MASK >> CHANNEL_OUTER_A & 1)) {
    return RESULT_NOT_ON_THIS_RIG;
  }
  curve_enable(mode != CURVES_OFF);
  if (mode == CURVES_NEXT_LONG) {
    curve_ask_long();
  }
  light_watch(mode == CURVES_NEXT_OF_OUTER_A   ? CHANNEL_OUTER_A
              : mode == CURVES_NEXT_OF_OUTER_B ? CHANNEL_OUTER_B
                                               : CHANNEL_CENTRE_LOW);
  return RESULT_DONE;
}

/* `w` is answered at the end of the sweep (transmit.c); other commands do not wait for that. */
static bool begin_sweep(const struct command *command) {
  if (!(CHANNELS_MASK >> command->first & 1)) {
    return answer(RESULT_NOT_ON_THIS_RIG);
  }
  if (!sweep_ask(command->first, (uint16_t)command->wide, command->number, command->seq)) {
    return answer(RESULT_BUSY);
  }
  drop();
  return false;
}

/* Thresholds that can be set, and a reference LED. */
static bool is_on_this_rig(char kind) { return !CONFIG_STARTER_RIG || (kind != 't' && kind != 'w' && kind != 'r'); }

/* These would take threshold or converter from a sweep. */
static bool disturbs_sweep(char kind) { return kind == 't' || kind == 'v' || kind == 'm'; }

/* `i`: step 0 waits for the store and begins to write, 1 waits for the writing, 2 answers. */
static bool go_on_storing(void) {
  if (step != 2 && identity_writing()) {
    return false;
  }
  switch (step) {
    case 0:
      identity_store(serial);
      serial_waits = false;
      step = 1;
      return false;
    case 1:
      if (!identity_stored_well()) {
        return answer(RESULT_STORE_FAILED);
      }
      lines_greeting();
      step = 2;
      return true;
    default:
      return answer(RESULT_DONE);
  }
}

bool command_queue_start_line(void) {
  if (waiting == 0) {
    return false;
  }
  const struct command *command = &queue[first].command;
  if (command->result != RESULT_DONE) {
    return answer(command->result);
  }
  if (!is_on_this_rig(command->kind)) {
    return answer(RESULT_NOT_ON_THIS_RIG);
  }
  if (sweep_running() && disturbs_sweep(command->kind)) {
    return answer(RESULT_BUSY);
  }
  switch (command->kind) {
    case 'w':
      return begin_sweep(command);
    case 'v':
      return go_on_reading_thresholds();
    case 'i':
      return go_on_storing();
    case 't':
      thresholds_set(command->first, (uint8_t)command->number);
      return answer(RESULT_DONE);
    case 'c':
      return answer(set_curves(command->first));
    case 'r':
      reference_ask(command->first, command->wide, command->number);
      return answer(RESULT_DONE);
    case 'm':
      return go_on_asking_blocks(command);
    default:
      break;
  }
  /* h, s and p: their lines, then the answer */
  switch (step++) {
    case 0:
      if (command->kind == 'h') {
        lines_greeting();
      } else if (command->kind == 's') {
        lines_beat();
      } else {
        lines_echo(command->number, &queue[first].received);
      }
      return true;
    case 1:
      if (command->kind == 's') {
        lines_counters();
        return true;
      }
      return answer(RESULT_DONE);
    default:
      return answer(RESULT_DONE);
  }
}
