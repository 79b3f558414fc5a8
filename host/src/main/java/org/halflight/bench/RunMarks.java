package org.halflight.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.CameraCustoms;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunPlan;
import org.halflight.session.RunSetup;
import org.halflight.session.ShutterUnderTest;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;

/** The values of a run's mark; some are only there where they say something. */
final class RunMarks {
  private static final String CHECKS = "checks";
  private static final String CUSTOMS = "customs";
  private static final String TOP_BEFORE_COCKING = "top-speed-before-cocking";
  private static final String SHUT_WHILE_COCKING = "blades-shut-while-cocking";
  private static final String REST = "rest-seconds";
  private static final String NOTED = "with.";

  private static final String MOST_TRIES = "most-tries";

  private static final String SHUTTER_KIND = "shutter";

  private RunMarks() {}

  static void put(Map<String, String> values, RunSetup setup) {
    values.put("camera", setup.camera());
    values.put("phase", Phase.WORDS.word(setup.phase()));
    values.put("dial", setup.dial());
    values.put(
        "speeds", setup.order().stream().map(MarkedSpeed::label).collect(Collectors.joining(",")));
    values.put("reference", Reference.WORDS.word(setup.reference()));
    values.put("firings", String.valueOf(setup.firingsPerSpeed()));
    if (!setup.untimedTests().isEmpty()) {
      values.put(
          CHECKS,
          setup.untimedTests().stream()
              .map(UntimedTest.MARKS::word)
              .collect(Collectors.joining(",")));
    }
    CameraCustoms customs = setup.customs();
    if (!customs.equals(CameraCustoms.NONE)) {
      values.put(
          CUSTOMS,
          customs.topSpeedBeforeCocking() && customs.bladesShutWhileCocking()
              ? TOP_BEFORE_COCKING + "," + SHUT_WHILE_COCKING
              : customs.topSpeedBeforeCocking() ? TOP_BEFORE_COCKING : SHUT_WHILE_COCKING);
    }
    setup
        .conditions()
        .restSeconds()
        .ifPresent(seconds -> values.put(REST, Double.toString(seconds)));
    setup.conditions().noted().forEach((name, words) -> values.put(NOTED + name, words));
    values.putAll(setup.criteria().written(RunOption.In.MARK));
    if (setup.mostTries() != RunPlan.TRIES_OF_OLD) {
      values.put(MOST_TRIES, String.valueOf(setup.mostTries()));
    }
    if (setup.shutter().kind() != ShutterKind.UNKNOWN) {
      values.put(SHUTTER_KIND, ShutterKind.WORDS.word(setup.shutter().kind()));
    }
  }

  /** What a run was set up for. */
  static RunSetup setup(Map<String, String> values) {
    List<MarkedSpeed> order = list(values, "speeds").stream().map(MarkedSpeed::parse).toList();
    return new RunSetup(
        new ShutterUnderTest(
            values.getOrDefault("camera", ""),
            shutterKind(values),
            values.getOrDefault("dial", ""),
            Reference.WORDS.parse(values.getOrDefault("reference", "")),
            customs(values)),
        Phase.WORDS.parse(values.getOrDefault("phase", "")),
        new RunPlan(
            order,
            Integer.parseInt(values.getOrDefault("firings", "")),
            checks(values),
            mostTries(values)),
        conditions(values),
        criteria(values));
  }

  /** Where no mark says it, the dial tells. */
  private static ShutterKind shutterKind(Map<String, String> values) {
    return values.containsKey(SHUTTER_KIND)
        ? ShutterKind.WORDS.parse(values.get(SHUTTER_KIND))
        : ShutterKind.UNKNOWN;
  }

  /** A mark without them is of a version that gave up after ten, or of a plan that does. */
  private static int mostTries(Map<String, String> values) {
    return values.containsKey(MOST_TRIES)
        ? Integer.parseInt(values.get(MOST_TRIES))
        : RunPlan.TRIES_OF_OLD;
  }

  private static AcceptanceCriteria criteria(Map<String, String> values) {
    return AcceptanceCriteria.read(values, RunOption.In.MARK);
  }

  private static List<UntimedTest> checks(Map<String, String> values) {
    return list(values, CHECKS).stream().map(UntimedTest.MARKS::parse).toList();
  }

  private static CameraCustoms customs(Map<String, String> values) {
    List<String> customs = list(values, CUSTOMS);
    return new CameraCustoms(
        customs.contains(TOP_BEFORE_COCKING), customs.contains(SHUT_WHILE_COCKING));
  }

  private static RunConditions conditions(Map<String, String> values) {
    Map<String, String> noted = new TreeMap<>();
    values.forEach(
        (name, words) -> {
          if (name.startsWith(NOTED)) {
            noted.put(name.substring(NOTED.length()), words);
          }
        });
    return new RunConditions(
        values.containsKey(REST)
            ? OptionalDouble.of(Marks.finite(values.get(REST)))
            : OptionalDouble.empty(),
        noted);
  }

  private static List<String> list(Map<String, String> values, String name) {
    String text = values.getOrDefault(name, "");
    return text.isEmpty() ? List.of() : Arrays.asList(text.split(",", -1));
  }
}
