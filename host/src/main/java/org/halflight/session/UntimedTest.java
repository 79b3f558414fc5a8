package org.halflight.session;

import java.util.Arrays;
import java.util.List;
import org.halflight.stored.StoredWords;

/** A setting that is tried and has no marked time to be held against. */
public enum UntimedTest {
  /** Open for as long as the release is held. */
  B("B"),
  /** Open from one press to the next. */
  T("T"),
  /** Released by the self-timer, at any speed. */
  SELF_TIMER("self-timer"),
  /** Pressed step by step, and the film advance tried after each press. */
  LINKAGE("linkage"),
  /**
   * Released with the film advance already free, at any speed, so that what the click sensor hears
   * is the shutter's own sound.
   */
  RELEASE_ALONE("release alone"),
  /** Wound and released, at any speed, to set the linkage between film advance and release. */
  WIND_AND_RELEASE("wind and release"),
  /** The light through the shut blades is read, not cocked and cocked. */
  LEAK("leak test"),
  /** The light at each marked stop is read, with the shutter held open. */
  STOPS("stop check");

  /** As tables and screens call them. */
  public static final StoredWords<UntimedTest> LABELS =
      StoredWords.of(UntimedTest.class, UntimedTest::label);

  /** As the record spells them. */
  public static final StoredWords<UntimedTest> WORDS =
      StoredWords.of(
          UntimedTest.class,
          check ->
              switch (check) {
                case B -> "b";
                case T -> "t";
                case SELF_TIMER -> "self-timer";
                case LINKAGE -> "linkage";
                case RELEASE_ALONE -> "release-alone";
                case WIND_AND_RELEASE -> "wind-and-release";
                case LEAK -> "leak";
                case STOPS -> "stops";
              });

  /** As the marks of session files spell them. */
  public static final StoredWords<UntimedTest> MARKS =
      StoredWords.of(
          UntimedTest.class,
          check ->
              switch (check) {
                case B -> "B";
                case T -> "T";
                case SELF_TIMER -> "SELF_TIMER";
                case LINKAGE -> "LINKAGE";
                case RELEASE_ALONE -> "RELEASE_ALONE";
                case WIND_AND_RELEASE -> "WIND_AND_RELEASE";
                case LEAK -> "LEAK";
                case STOPS -> "STOPS";
              });

  private final String label;

  UntimedTest(String label) {
    this.label = label;
  }

  /** Whether the click sensor listens meanwhile, so that nothing may be played. */
  public boolean isForTheEar() {
    return this == LINKAGE || isReadOnly();
  }

  /** Those that a person may choose. */
  public static List<UntimedTest> offered() {
    return Arrays.stream(values()).filter(test -> !test.isReadOnly()).toList();
  }

  /**
   * Whether it makes sense for a shutter of curtains: their wind cocks them, and the stops are the
   * lens's, which is off.
   */
  public boolean isForCurtains() {
    return this != LINKAGE && this != STOPS;
  }

  /**
   * Whether only earlier versions offered it: it is read, and not offered any more. Both timed the
   * film advance in milliseconds.
   */
  public boolean isReadOnly() {
    return this == WIND_AND_RELEASE || this == RELEASE_ALONE;
  }

  /** Whether it is a test of the light with the shutter at rest, by readings and not by firings. */
  public boolean isOfTheLight() {
    return this == LEAK || this == STOPS;
  }

  /** Whether B or T, which open, hold and close. */
  public boolean holds() {
    return this == B || this == T;
  }

  /** As it is shown. */
  public String label() {
    return label;
  }
}
