package org.halflight.profile;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.halflight.signal.Channel;

/** A profile as named values, and back; every number is written so that it comes back the same. */
public final class ProfileValues {
  private ProfileValues() {}

  /** The values of a profile, in the order in which a person reads them. */
  public static Map<String, String> of(RigProfile profile) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("rig", profile.rig().serial());
    values.put("kind", profile.rig().kind());
    values.put("firmware", profile.rig().firmware());
    values.put("date", profile.date().toString());
    LightRange light = profile.light();
    values.put(
        "light-counts",
        numbers(light.darkCounts(), light.leastFullCounts(), light.greatestFullCounts()));
    profile
        .thresholds()
        .ifPresent(t -> values.put("threshold-counts", numbers(t.lowCounts(), t.highCounts())));
    profile
        .clock()
        .ifPresent(
            clock ->
                values.put(
                    "clock-fast-ppm",
                    numbers(
                            clock.fastPpm(),
                            clock.standardUncertaintyPpm(),
                            clock.degreesOfFreedom())
                        + ' '
                        + ClockRate.Source.WORDS.word(clock.source())));
    profile
        .lag()
        .ifPresent(
            lag ->
                values.put(
                    "lag-seconds", numbers(lag.seconds(), lag.standardUncertaintySeconds())));
    profile
        .shortestTrustworthySeconds()
        .ifPresent(shortest -> values.put("shortest-pulse-seconds", numbers(shortest)));
    profile
        .tripPoints()
        .forEach(
            (channel, trip) ->
                values.put(
                    "trip-counts." + channel.label(),
                    numbers(
                        trip.risingCounts(),
                        trip.fallingCounts(),
                        trip.standardUncertaintyCounts())));
    profile
        .delays()
        .forEach(
            (channel, delays) ->
                values.put(
                    "delay-seconds." + channel.label(),
                    numbers(
                        delays.riseSeconds(),
                        delays.riseStandardUncertaintySeconds(),
                        delays.fallSeconds(),
                        delays.fallStandardUncertaintySeconds())));
    profile
        .lines()
        .forEach(
            (channel, line) ->
                values.put(
                    "width-line." + channel.label(),
                    numbers(
                        line.interceptSeconds(),
                        line.slope(),
                        line.interceptVariance(),
                        line.slopeVariance(),
                        line.covariance(),
                        line.residualSdSeconds(),
                        line.degreesOfFreedom())));
    return values;
  }

  /** The profile of values; empty where they make none. */
  public static Optional<RigProfile> profile(Map<String, String> values) {
    try {
      double[] light = numbers(values, "light-counts", 3).orElseThrow(Missing::new);
      Optional<double[]> shortest = numbers(values, "shortest-pulse-seconds", 1);
      return Optional.of(
          new RigProfile(
              new ProfiledRig(word(values, "rig"), word(values, "kind"), word(values, "firmware")),
              LocalDate.parse(word(values, "date")),
              new LightRange(light[0], light[1], light[2]),
              numbers(values, "threshold-counts", 2).map(n -> new ThresholdCounts(n[0], n[1])),
              byChannel(values, "trip-counts.", 3, n -> new ComparatorTrips(n[0], n[1], n[2])),
              clock(values),
              numbers(values, "lag-seconds", 2).map(n -> new FrontEndLag(n[0], n[1])),
              byChannel(values, "delay-seconds.", 4, n -> new EdgeDelays(n[0], n[1], n[2], n[3])),
              byChannel(
                  values,
                  "width-line.",
                  7,
                  n -> new WidthLine(n[0], n[1], n[2], n[3], n[4], n[5], n[6])),
              shortest.isPresent()
                  ? OptionalDouble.of(shortest.get()[0])
                  : OptionalDouble.empty()));
    } catch (IllegalArgumentException | DateTimeException damaged) {
      return Optional.empty();
    }
  }

  private static final class Missing extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
  }

  private static Optional<ClockRate> clock(Map<String, String> values) {
    String text = values.get("clock-fast-ppm");
    if (text == null) {
      return Optional.empty();
    }
    int last = text.lastIndexOf(' ');
    double[] n = parsed(text.substring(0, Math.max(0, last)), 3);
    ClockRate.Source source = ClockRate.Source.WORDS.parse(text.substring(last + 1));
    return Optional.of(new ClockRate(n[0], n[1], n[2], source));
  }

  private static <V> Map<Channel, V> byChannel(
      Map<String, String> values, String before, int count, Function<double[], V> make) {
    Map<Channel, V> made = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      numbers(values, before + channel.label(), count)
          .ifPresent(n -> made.put(channel, make.apply(n)));
    }
    return made;
  }

  private static String word(Map<String, String> values, String name) {
    return Optional.ofNullable(values.get(name)).orElseThrow(Missing::new);
  }

  private static Optional<double[]> numbers(Map<String, String> values, String name, int count) {
    return Optional.ofNullable(values.get(name)).map(text -> parsed(text, count));
  }

  private static double[] parsed(String text, int count) {
    double[] numbers =
        Arrays.stream(text.split(" ", -1)).mapToDouble(Double::parseDouble).toArray();
    if (numbers.length != count) {
      throw new IllegalArgumentException(count + " numbers, not '" + text + "'");
    }
    return numbers;
  }

  private static String numbers(double... numbers) {
    return Arrays.stream(numbers).mapToObj(Double::toString).collect(Collectors.joining(" "));
  }
}
