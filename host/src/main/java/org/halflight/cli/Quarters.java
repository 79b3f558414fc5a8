package org.halflight.cli;

import java.util.function.DoubleConsumer;
import org.halflight.words.Words;

/** Says how far a long stage is, each quarter of it once. */
final class Quarters implements DoubleConsumer {
  private final Terminal terminal;
  private int said;

  Quarters(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public void accept(double share) {
    int quarters = (int) Math.floor(4 * share + 1e-9);
    if (quarters < said) {
      // The next stage.
      said = 0;
    }
    if (quarters > said && quarters < 4) {
      terminal.say(Words.say("calibration.progress", 25 * quarters));
    }
    said = quarters;
  }
}
