package org.halflight.session;

import java.util.Arrays;
import org.halflight.stored.StoredWords;

/** A step of the linkage test, in the order in which they are led. */
public enum LinkageStep {
  /** Cocked and tapped, not pressed: it must stay cocked. */
  REST(1),
  /** Pressed slowly, held at the first sound, light or movement, and let go. */
  STOP(5),
  /** Pressed slowly to the end. */
  SQUEEZE(5),
  /** Pressed quickly to the end, and once more without winding. */
  TAP(3);

  /** As files and the record spell them. */
  public static final StoredWords<LinkageStep> WORDS =
      StoredWords.of(
          LinkageStep.class,
          step ->
              switch (step) {
                case REST -> "rest";
                case STOP -> "stop";
                case SQUEEZE -> "squeeze";
                case TAP -> "tap";
              });

  /** Presses of a whole test. */
  public static final int PRESSES = Arrays.stream(values()).mapToInt(LinkageStep::presses).sum();

  private final int presses;

  LinkageStep(int presses) {
    this.presses = presses;
  }

  /** How often it is asked. */
  public int presses() {
    return presses;
  }

  /** Whether the button goes to the end of its stroke, so that both have to come. */
  public boolean isFullPress() {
    return this == SQUEEZE || this == TAP;
  }
}
