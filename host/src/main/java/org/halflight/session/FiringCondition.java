package org.halflight.session;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.halflight.stored.StoredWords;

/**
 * Something special about a firing that nothing measures: the person says it. Of one {@link Kind} a
 * firing has one at most.
 */
public enum FiringCondition {
  /** The shutter had rested, wherever in the run that was. */
  FIRST_AFTER_REST(Kind.REST),
  /** It had not, although the run began with this firing. */
  NOT_AFTER_REST(Kind.REST),
  /** Warmed in the hand or in a bag. */
  WARMED(Kind.WARMTH),
  /** The lens looks ahead. */
  LENS_LEVEL(Kind.ATTITUDE),
  /** The lens looks up. */
  LENS_UP(Kind.ATTITUDE),
  /** The lens looks down. */
  LENS_DOWN(Kind.ATTITUDE),
  /** The camera lies on its side, the lens looks ahead. */
  ON_ITS_SIDE(Kind.ATTITUDE),
  /** The camera is upside down, the lens looks ahead. */
  UPSIDE_DOWN(Kind.ATTITUDE),
  /** The dial was turned to its speed from the other side than usual. */
  DIAL_FROM_OTHER_SIDE(Kind.DIAL),
  /** The release was tapped and let go at once. */
  QUICK_TAP(Kind.PRESS),
  /** The release was held down for long. */
  LONG_PRESS(Kind.PRESS),
  /** The aperture was wide open. */
  WIDE_OPEN(Kind.APERTURE),
  /** The aperture was stopped down. */
  STOPPED_DOWN(Kind.APERTURE);

  /** What a condition is about: two of one kind contradict each other. */
  public enum Kind {
    REST(false),
    WARMTH(true),
    ATTITUDE(true),
    DIAL(false),
    PRESS(false),
    APERTURE(true);

    private final boolean lasting;

    Kind(boolean lasting) {
      this.lasting = lasting;
    }

    /** Whether it stays as it is from firing to firing; the others are of one firing alone. */
    public boolean isLasting() {
      return lasting;
    }
  }

  /** As files store them, and as they are typed. Attitudes are called as in a run's set-up. */
  public static final StoredWords<FiringCondition> WORDS =
      StoredWords.of(
          FiringCondition.class,
          condition ->
              switch (condition) {
                case FIRST_AFTER_REST -> "first-after-rest";
                case NOT_AFTER_REST -> "not-after-rest";
                case WARMED -> "warmed";
                case LENS_LEVEL -> "lens-level";
                case LENS_UP -> "lens-up";
                case LENS_DOWN -> "lens-down";
                case ON_ITS_SIDE -> "on-its-side";
                case UPSIDE_DOWN -> "upside-down";
                case DIAL_FROM_OTHER_SIDE -> "dial-from-other-side";
                case QUICK_TAP -> "quick-tap";
                case LONG_PRESS -> "long-press";
                case WIDE_OPEN -> "wide-open";
                case STOPPED_DOWN -> "stopped-down";
              });

  private final Kind kind;

  FiringCondition(Kind kind) {
    this.kind = kind;
  }

  /** What it is about. */
  public Kind kind() {
    return kind;
  }

  /** What a run says of the same thing, as a default; empty where it says nothing. */
  static Optional<RunOption<String>> ofRun(Kind kind) {
    return switch (kind) {
      case ATTITUDE -> Optional.of(RunOption.ATTITUDE);
      case PRESS -> Optional.of(RunOption.RELEASE);
      case APERTURE -> Optional.of(RunOption.STOP);
      case REST, WARMTH, DIAL -> Optional.empty();
    };
  }

  /** All of one kind. */
  public static List<FiringCondition> of(Kind kind) {
    return Arrays.stream(values()).filter(each -> each.kind == kind).toList();
  }
}
