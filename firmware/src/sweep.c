#include "sweep.h"

#include "board.h"
#include "fine.h"
#include "light.h"
#include "timebase.h"

/* In cycles of the PWM, 16 us each. */
#define STEP_CYCLES 312    /* 5 ms */
#define SETTLE_CYCLES 2000 /* 32 ms: two filters of 1 ms have come within a millionth of a step of any size */
#define SETTLE_HALVES 17   /* the same in half periods of Timer1, once the whole codes are back */
#define LIGHT_CYCLES 188   /* 3 ms: one whole millisecond of light after the thresholds were read */

enum { IDLE, SETTLES, WATCHES, WANTS_LEVEL, READS_LEVEL, READS_LIGHT, TELLS, SETTLES_BACK, OVER };

uint8_t sweep_state;
static struct trip trip;
static bool watched; /* on this way the comparator stood where it could switch, and has not been told to have done so */
static uint16_t from;
static uint16_t to;
static uint16_t code;
static uint16_t cycles; /* since the last step, or since the wait began */
static uint8_t halves_before; /* half count, low byte, when the whole codes were put back */
static uint16_t command_seq;

static void wait_in(uint8_t state) {
  cycles = 0;
  sweep_state = state;
}

/* True: more light than the threshold. */
static bool lit(void) { return board_all_levels() & (1 << trip.channel); }

bool sweep_ask(uint8_t channel, uint16_t first, uint16_t last, uint16_t seq) {
  if (sweep_running() || !light_ask_thresholds()) { /* the first readback is not used; it is over before the wait */
    return false;
  }
  light_watch_once(); /* a sweep needs the main loop quick and the handlers rare */
  trip.channel = channel;
  from = first;
  to = last;
  code = first;
  command_seq = seq;
  fine_start(channel == CHANNEL_CENTRE_HIGH, code);
  wait_in(SETTLES);
  return true;
}

static void begin_way(uint8_t rising) {
  trip.rising = rising;
  trip.code = 0;
  watched = lit() == rising;
  wait_in(WATCHES);
}

static bool way_done(void) { return code == (trip.rising ? to : from); }

static void end_way(void) {
  if (trip.rising) {
    begin_way(0);
  } else {
    fine_stop();
    halves_before = (uint8_t)timebase_halves;
    sweep_state = SETTLES_BACK;
  }
}

static void step(void) {
  if (way_done()) {
    if (trip.code == 0) {
      sweep_state = WANTS_LEVEL; /* not switched: that is told, too */
    } else {
      end_way();
    }
    return;
  }
  cycles -= STEP_CYCLES;
  code = (uint16_t)(trip.rising ? code + 1 : code - 1);
  fine_set(code);
}

void sweep_go_on(void) {
  if (sweep_state < SETTLES_BACK) {
    cycles += fine_tend();
  }
  switch (sweep_state) {
    case SETTLES:
      if (cycles >= SETTLE_CYCLES) {
        begin_way(1);
      }
      break;
    case WATCHES:
      if (watched && lit() != trip.rising) {
        watched = false;
        trip.code = code;
        sweep_state = WANTS_LEVEL;
      } else if (cycles >= STEP_CYCLES) {
        step();
      }
      break;
    case WANTS_LEVEL:
      if (light_ask_thresholds()) {
        sweep_state = READS_LEVEL;
      }
      break;
    case READS_LEVEL:
      if (light_thresholds_ready()) {
        trip.level = trip.channel == CHANNEL_CENTRE_HIGH ? light_high_threshold() : light_low_threshold();
        wait_in(READS_LIGHT);
      }
      break;
    case READS_LIGHT:
      if (cycles >= LIGHT_CYCLES) {
        trip.light = light_centre();
        sweep_state = TELLS;
      }
      break;
    case SETTLES_BACK:
      if ((uint8_t)((uint8_t)timebase_halves - halves_before) >= SETTLE_HALVES) {
        sweep_state = OVER;
      }
      break;
    default:
      break;
  }
}

bool sweep_trip_waiting(void) { return sweep_state == TELLS; }
const struct trip *sweep_trip(void) { return &trip; }

void sweep_trip_told(void) {
  if (way_done()) {
    end_way();
  } else {
    wait_in(WATCHES);
  }
}

bool sweep_over(void) { return sweep_state == OVER; }
uint16_t sweep_command_seq(void) { return command_seq; }

void sweep_answered(void) {
  sweep_state = IDLE;
  light_watch_on();
}
