package org.halflight.session;

import java.util.Comparator;
import java.util.List;
import org.halflight.stored.StoredWords;

/**
 * Where firings come from. Figures from an invented shutter or a simulator carry that wherever they
 * are printed.
 */
public enum Source {
  /** A rig that somebody built, with a real shutter on it. */
  RIG,
  /** The practice rig: an invented shutter inside this program. */
  PRACTICE,
  /** The real firmware in a simulator, with a simulated shutter. */
  SIMULATOR;

  /** As files store them. */
  public static final StoredWords<Source> WORDS =
      StoredWords.of(
          Source.class,
          source ->
              switch (source) {
                case RIG -> "rig";
                case PRACTICE -> "practice";
                case SIMULATOR -> "simulator";
              });

  /** The serial number that the practice rig alone bears. */
  public static final String PRACTICE_SERIAL = "PRACTICE";

  /** Serial numbers that start like this belong to simulated boards. */
  public static final String SIMULATOR_PREFIX = "BOX-";

  /** The least trustworthy source among firings; RIG where there are none. */
  public static Source of(List<FiringResult> firings) {
    return firings.stream()
        .map(firing -> of(firing.key().rigSerial()))
        .max(Comparator.comparing(source -> source == RIG ? 0 : source == SIMULATOR ? 1 : 2))
        .orElse(RIG);
  }

  /** The source by the serial number of its rig. */
  public static Source of(String rigSerial) {
    if (rigSerial.equals(PRACTICE_SERIAL)) {
      return PRACTICE;
    }
    return rigSerial.startsWith(SIMULATOR_PREFIX) ? SIMULATOR : RIG;
  }
}
