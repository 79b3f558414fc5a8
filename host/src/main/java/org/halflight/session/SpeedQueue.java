package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The settings of a run in their order, and which is next.
 *
 * @param settings in the order in which they are to be fired
 */
record SpeedQueue(List<DialSetting> settings) {
  /** No run: nothing is next. */
  static final SpeedQueue EMPTY = new SpeedQueue(List.of());

  SpeedQueue {
    settings = List.copyOf(settings);
  }

  /** The setting behind another; the first from one that is not in the run; none at the end. */
  Optional<DialSetting> after(Optional<DialSetting> here) {
    return at(place(here) + 1);
  }

  /** The setting before another; none at the start. */
  Optional<DialSetting> before(Optional<DialSetting> here) {
    int place = place(here);
    return place < 0 ? at(0) : at(place - 1);
  }

  /** The next that is not done, from behind the one here round to it. */
  Optional<DialSetting> nextOpen(Optional<DialSetting> here, Predicate<DialSetting> done) {
    int place = place(here);
    for (int step = 1; step <= settings.size(); step++) {
      DialSetting next = settings.get(Math.floorMod(place + step, settings.size()));
      if (!done.test(next)) {
        return Optional.of(next);
      }
    }
    return Optional.empty();
  }

  private int place(Optional<DialSetting> here) {
    return here.map(settings::indexOf).orElse(-1);
  }

  private Optional<DialSetting> at(int place) {
    return place >= 0 && place < settings.size()
        ? Optional.of(settings.get(place))
        : Optional.empty();
  }
}
