package org.halflight.desk.view;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.bench.LightPlan;
import org.halflight.extratest.FNumber;
import org.halflight.session.StopsAsked;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * What a stop check is about, as it is typed.
 *
 * @param markings the stops as engraved, with commas or spaces between
 * @param tolerance in stops, as {@link StopsAsked#tolerance} reads it; empty for trade custom
 */
public record StopsForm(String markings, String tolerance) {
  /** The form of what is asked. */
  public static StopsForm of(StopsAsked asked) {
    return new StopsForm(String.join(", ", asked.markings()), asked.toleranceText());
  }

  /** The stops as they are typed, one by one. */
  public List<String> written() {
    return Arrays.asList(markings.strip().split("[,;\\s]+"));
  }

  /**
   * What is asked.
   *
   * @throws Trouble where something cannot be understood, with a sentence for the person
   */
  public StopsAsked read() {
    OptionalDouble stops = StopsAsked.tolerance(tolerance);
    if (stops.isEmpty()) {
      throw new Trouble(Words.say("stops.badTolerance", tolerance));
    }
    return new StopsAsked(
        LightPlan.numbers(written()).stream().map(FNumber::engraved).toList(), stops.getAsDouble());
  }
}
