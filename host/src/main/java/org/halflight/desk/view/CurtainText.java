package org.halflight.desk.view;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.exposure.CurtainCurve;
import org.halflight.exposure.CurtainRun;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Place;
import org.halflight.session.DialSetting;
import org.halflight.session.OwnTravel;
import org.halflight.session.RunOption;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.verdict.CurtainLimits;
import org.halflight.verdict.Evenness;
import org.halflight.words.CurtainWords;
import org.halflight.words.Numbers;
import org.halflight.words.Words;

/**
 * The last firing of a curtain shutter in large figures: first and second curtain, and the end of
 * the frame against its start.
 *
 * @param sides first, second, end
 * @param centre time and error at the centre, in one line
 */
public record CurtainText(List<TwoText.Side> sides, String centre) {
  /** Travels that differ by less than this part are called alike. Our own choice. */
  private static final double ALIKE = 0.005;

  public CurtainText {
    sides = List.copyOf(sides);
  }

  /** The figures of a view; empty where the last firing itself says more, or has no curtains. */
  public static Optional<CurtainText> of(BenchView view) {
    NumeralsText plain = NumeralsText.of(view);
    boolean isPlain =
        plain.tone() == NumeralsText.Tone.SETTLED || plain.tone() == NumeralsText.Tone.PROVISIONAL;
    return view.last()
        .filter(last -> isPlain && view.openSeconds().isEmpty() && view.two().isEmpty())
        .flatMap(
            last ->
                CurtainBench.travel(last).map(travel -> of(view, plain, travel, last.setting())));
  }

  private static CurtainText of(
      BenchView view, NumeralsText plain, CurtainTravel travel, Optional<DialSetting> setting) {
    Optional<OwnTravel> own =
        view.setup().flatMap(setup -> setup.criteria().get(RunOption.OWN_TRAVEL));
    Optional<MarkedSpeed> speed = setting.flatMap(DialSetting::speed);
    String centre =
        plain.word().isEmpty()
            ? plain.large() + " " + plain.unit()
            : Words.say("desk.curtain.centre", plain.large(), plain.word(), plain.time());
    return new CurtainText(
        List.of(
            first(travel, own),
            second(travel, own),
            end(travel, speed.map(Numbers::speed).orElse(""), speed)),
        Words.say("desk.curtain.centreOf", centre.strip()));
  }

  private static TwoText.Side first(CurtainTravel travel, Optional<OwnTravel> own) {
    Optional<String> judged = own.flatMap(its -> judged(travel.firstCurve(), its));
    return side(
        "desk.curtain.first",
        judged.orElse(""),
        time(travel.first()),
        judged.filter(Words.say("desk.curtain.right")::equals).isPresent());
  }

  private static TwoText.Side second(CurtainTravel travel, Optional<OwnTravel> own) {
    Optional<String> judged = own.flatMap(its -> judged(travel.secondCurve(), its));
    OptionalDouble less = travel.travelDifferenceSeconds();
    String against =
        less.isEmpty()
            ? ""
            : Math.abs(less.getAsDouble()) < ALIKE * travel.first().orElseThrow().outerSeconds()
                ? Words.say("desk.curtain.alike")
                : Words.say(
                    less.getAsDouble() < 0 ? "desk.curtain.quicker" : "desk.curtain.slower",
                    String.format(Locale.ROOT, "%.2f", 1e3 * Math.abs(less.getAsDouble())));
    return side("desk.curtain.second", against, time(travel.second()), judged.isEmpty());
  }

  /** Against the camera's own figure, over the way that belongs to it. */
  private static Optional<String> judged(Optional<CurtainCurve> curve, OwnTravel own) {
    return curve.map(
        its -> {
          double share = own.excessShare(its.secondsOver(own.spanMillimetres()));
          return Math.abs(share) <= CurtainLimits.TRAVEL_SHARE
              ? Words.say("desk.curtain.right")
              : Words.say(
                  share > 0 ? "desk.curtain.slow" : "desk.curtain.quick",
                  Numbers.percent(Math.abs(share)));
        });
  }

  private static TwoText.Side end(
      CurtainTravel travel, String speed, Optional<MarkedSpeed> marked) {
    Set<Place> capped = travel.capped();
    OptionalDouble slope = travel.slopeStops();
    double limit =
        marked
            .map(its -> CurtainLimits.slopeStops(its.seconds(Reference.EXACT)))
            .orElse(CurtainLimits.slopeStops(1));
    String name =
        speed.isEmpty() ? Words.say("desk.curtain.end") : Words.say("desk.curtain.endAt", speed);
    if (!capped.isEmpty()) {
      Place place = capped.contains(Place.END) ? Place.END : capped.iterator().next();
      return new TwoText.Side(
          name,
          Words.of("desk.curtain.dark", place),
          Words.say("chart.curtain.capped"),
          "",
          false,
          false);
    }
    if (slope.isEmpty()) {
      return new TwoText.Side(name, "", Words.say("desk.curtain.notSeen"), "", false, false);
    }
    double stops = slope.getAsDouble();
    Evenness evenness = Evenness.of(stops, travel.rangeStops().orElse(Math.abs(stops)), limit);
    boolean within = evenness.kind() == Evenness.Kind.EVEN;
    String size = Numbers.bareSize(Math.abs(stops));
    return new TwoText.Side(
        name,
        Words.say(within ? "desk.curtain.within" : "desk.curtain.beyond", Numbers.bareSize(limit)),
        evenness.kind() == Evenness.Kind.UNEVEN
            ? CurtainWords.of(evenness, Numbers.bareSize(evenness.stops()))
            : Math.abs(stops) < NumeralsText.ON_TIME_STOPS
                ? Words.say("curtain.even")
                : Words.say(stops < 0 ? "desk.curtain.darker" : "desk.curtain.brighter", size),
        "",
        false,
        within);
  }

  private static TwoText.Side side(String name, String word, String figure, boolean isWithin) {
    return new TwoText.Side(Words.say(name), word, figure, "", false, isWithin);
  }

  private static String time(Optional<CurtainRun> run) {
    return run.map(its -> Numbers.time(its.edgeSeconds()))
        .orElseGet(() -> Words.say("desk.curtain.notSeen"));
  }

  /** All in one line, as it is read aloud. */
  public String spoken() {
    return Stream.concat(
            sides.stream()
                .map(
                    side ->
                        Stream.of(side.speed(), side.figure(), side.word())
                            .filter(part -> !part.isBlank())
                            .collect(Collectors.joining(", "))),
            Stream.of(centre))
        .collect(Collectors.joining("; "));
  }
}
