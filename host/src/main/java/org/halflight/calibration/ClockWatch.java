package org.halflight.calibration;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * The rate of a clock while measuring: each ping is added, and the rate comes from the last two
 * minutes, because the rate of a ceramic resonator wanders with temperature. Not safe for use by
 * several threads.
 */
public final class ClockWatch {
  /** Stamps older than this against the newest are let go. */
  public static final double WINDOW_SECONDS = 120;

  private final StampSide side;
  private final Deque<ClockStamp> stamps = new ArrayDeque<>();

  /** Watches stamps of one side. */
  public ClockWatch(StampSide side) {
    this.side = side;
  }

  /** Adds a stamp; one whose board time does not rise begins anew (the board was restarted). */
  public void add(ClockStamp stamp) {
    if (!stamps.isEmpty() && stamp.boardSeconds() <= stamps.getLast().boardSeconds()) {
      stamps.clear();
    }
    stamps.addLast(stamp);
    while (stamp.boardSeconds() - stamps.getFirst().boardSeconds() > WINDOW_SECONDS) {
      stamps.removeFirst();
    }
  }

  /** Stamps that still count. */
  int size() {
    return stamps.size();
  }

  /** What the stamps of the window come to. */
  ClockFit.Outcome outcome() {
    return ClockFit.of(new ArrayList<>(stamps), side);
  }

  /** The rate over the window, empty while stamps are too few or contradict each other. */
  public Optional<ClockFit> rate() {
    return outcome() instanceof ClockFit.Fitted fitted
        ? Optional.of(fitted.fit())
        : Optional.empty();
  }

  /**
   * Cuts stamps into windows for a clock that drifts.
   *
   * @param windowSeconds 60 to 120 s: shorter leaves the delays in, longer the drift
   */
  public static List<List<ClockStamp>> windows(List<ClockStamp> stamps, double windowSeconds) {
    if (!(windowSeconds > 0)) {
      throw new IllegalArgumentException("no window: " + windowSeconds + " s");
    }
    List<List<ClockStamp>> windows = new ArrayList<>();
    double from = Double.NEGATIVE_INFINITY;
    for (ClockStamp stamp : stamps) {
      if (windows.isEmpty() || stamp.boardSeconds() - from >= windowSeconds) {
        windows.add(new ArrayList<>());
        from = stamp.boardSeconds();
      }
      windows.get(windows.size() - 1).add(stamp);
    }
    return windows;
  }
}
