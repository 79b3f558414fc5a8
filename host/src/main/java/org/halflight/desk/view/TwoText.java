package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.session.DialSetting;
import org.halflight.session.TwoSpeeds;
import org.halflight.verdict.TwoAtOnce;
import org.halflight.words.Numbers;
import org.halflight.words.TwoWords;
import org.halflight.words.Words;

/**
 * Two speeds that are adjusted at once, side by side in large figures.
 *
 * @param sides the slower speed at the left
 * @param enough that no more adjusting is needed; empty until then
 */
public record TwoText(List<Side> sides, String enough) {
  /**
   * One of the two speeds.
   *
   * @param speed as engraved
   * @param word what the last adjustment did, such as closer; enough once both are within
   *     tolerance; empty where nothing is known
   * @param figure mean error in stops since the last adjustment; a hyphen where nothing was fired
   * @param detail how well it is known, and what it was before
   * @param isShown whether it is to be fired now
   * @param isWithin whether it is within tolerance
   */
  public record Side(
      String speed, String word, String figure, String detail, boolean isShown, boolean isWithin) {
    private String spoken() {
      return Stream.of(speed, figure, word, detail)
          .filter(part -> !part.isBlank())
          .collect(Collectors.joining(", "));
    }
  }

  public TwoText {
    sides = List.copyOf(sides);
  }

  /** The two speeds of a view; empty where the last firing itself says more than both. */
  public static Optional<TwoText> of(BenchView view) {
    NumeralsText.Tone tone = NumeralsText.of(view).tone();
    boolean plain =
        tone == NumeralsText.Tone.SETTLED
            || tone == NumeralsText.Tone.PROVISIONAL
            || tone == NumeralsText.Tone.NOTHING;
    return view.two()
        .filter(two -> plain && view.openSeconds().isEmpty())
        .map(
            two ->
                new TwoText(
                    Stream.of(two.first(), two.second()).map(side -> side(side, view)).toList(),
                    two.isEnough() ? Words.say("two.enough") : ""));
  }

  private static Side side(TwoAtOnce.Side side, BenchView view) {
    String before =
        side.beforeStops().isPresent()
            ? Words.say("desk.two.before", Numbers.bareStops(side.beforeStops().getAsDouble()))
            : "";
    String known =
        side.plusMinusStops().isPresent()
            ? Words.say(
                "desk.two.known",
                side.firings(),
                Numbers.bareSize(side.plusMinusStops().getAsDouble()))
            : Words.say("desk.two.fired", side.firings(), TwoSpeeds.FIRINGS);
    return new Side(
        Numbers.speed(side.speed()),
        view.two().filter(TwoAtOnce::isEnough).isPresent()
            ? Words.say("desk.two.enough")
            : TwoWords.change(side),
        side.errorStops().isPresent()
            ? Numbers.bareStops(side.errorStops().getAsDouble())
            : Words.say("desk.two.none"),
        Stream.of(known, before)
            .filter(part -> !part.isEmpty())
            .collect(Collectors.joining(Words.say("desk.two.join"))),
        view.shown().flatMap(DialSetting::speed).equals(Optional.of(side.speed())),
        side.isWithin());
  }

  /** Both in one line, as it is read aloud. */
  public String spoken() {
    return Stream.concat(sides.stream().map(Side::spoken), Stream.of(enough))
        .filter(part -> !part.isBlank())
        .collect(Collectors.joining("; "));
  }
}
