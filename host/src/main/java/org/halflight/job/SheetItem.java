package org.halflight.job;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.halflight.stored.StoredWords;

/**
 * What the strip sheet of a visit asks. The first ones are noted before the work and asked back at
 * assembly; the others a person measures by hand. Common practice, no source.
 */
public enum SheetItem {
  SPRING_TURNS,
  SHIMS,
  HELICAL_START,
  NOTCH_MARKS,
  OTHER,
  INFINITY_FOCUS,
  FLANGE_TOP_LEFT,
  FLANGE_TOP_RIGHT,
  FLANGE_BOTTOM_LEFT,
  FLANGE_BOTTOM_RIGHT,
  RANGEFINDER_INFINITY,
  RANGEFINDER_3M,
  RANGEFINDER_1M;

  /** As files store them, and as they are typed. */
  public static final StoredWords<SheetItem> WORDS =
      StoredWords.of(
          SheetItem.class,
          item ->
              switch (item) {
                case SPRING_TURNS -> "spring-turns";
                case SHIMS -> "shims";
                case HELICAL_START -> "helical-start";
                case NOTCH_MARKS -> "notch-marks";
                case OTHER -> "other";
                case INFINITY_FOCUS -> "infinity-focus";
                case FLANGE_TOP_LEFT -> "flange-top-left";
                case FLANGE_TOP_RIGHT -> "flange-top-right";
                case FLANGE_BOTTOM_LEFT -> "flange-bottom-left";
                case FLANGE_BOTTOM_RIGHT -> "flange-bottom-right";
                case RANGEFINDER_INFINITY -> "rangefinder-infinity";
                case RANGEFINDER_3M -> "rangefinder-3m";
                case RANGEFINDER_1M -> "rangefinder-1m";
              });

  /** What is noted before the work and asked back at assembly. */
  public static List<SheetItem> askedBack() {
    return Arrays.stream(values()).filter(SheetItem::isAskedBack).toList();
  }

  /** What a person measures by hand, of which each is on a sheet once at most. */
  public static List<SheetItem> byHand() {
    return Arrays.stream(values()).filter(item -> !item.isAskedBack()).toList();
  }

  /** Whether it is asked back at assembly; otherwise a person measures it by hand. */
  public boolean isAskedBack() {
    return compareTo(OTHER) <= 0;
  }

  /** Whether it is a distance from flange to film, in mm. */
  public boolean isFlange() {
    return compareTo(FLANGE_TOP_LEFT) >= 0 && compareTo(FLANGE_BOTTOM_RIGHT) <= 0;
  }

  /**
   * What a person typed, as the sheet keeps it; empty where it cannot be read: thicknesses of shims
   * as {@link Shims} reads them, millimetres for a distance from flange to film, else any words.
   */
  public Optional<String> read(String typed) {
    if (typed.isBlank()) {
      return Optional.empty();
    }
    return switch (this) {
      case SHIMS -> Shims.read(typed).map(Shims::words);
      case FLANGE_TOP_LEFT, FLANGE_TOP_RIGHT, FLANGE_BOTTOM_LEFT, FLANGE_BOTTOM_RIGHT ->
          Shims.millimetres(typed);
      default -> Optional.of(typed.strip());
    };
  }
}
