package org.halflight.bench;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.halflight.bench.BenchEvent.Mark;
import org.halflight.calibration.TripEstimate;
import org.halflight.exposure.AlternatingLevels;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.SensorLight;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ComparatorTrips;
import org.halflight.session.CurtainStep;
import org.halflight.session.FiringConditions;
import org.halflight.session.LinkageStep;
import org.halflight.session.PlungerReading;
import org.halflight.session.SessionInput;
import org.halflight.session.TwoSpeeds;
import org.halflight.session.UntimedTest;
import org.halflight.session.WindState;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.jspecify.annotations.Nullable;

/**
 * What the host and the person do, as marks of a session file and as inputs of a session;
 * docs/file-formats.md lists them.
 */
public final class Marks {
  /** A run of the program begins to write; says which version. */
  public static final String BEGINS = "begins";

  /** When it begins, with its offset. */
  static final String AT = "at";

  private static final int FIRST_YEAR = 1970;
  private static final int LAST_YEAR = 9999;

  private static final String LIGHT = "light";

  /** A run begins. */
  public static final String RUN = "run";

  private static final String SPEED = "speed";
  private static final String REJECT = "reject";
  private static final String REASON = "reason";
  private static final String CHECK = "check";
  private static final String MOVE = "move";
  private static final String FIRING_UNDER = "firing-under";
  private static final String CONDITIONS = "conditions";
  private static final String COCKING = "cocking";
  private static final String PRESS = "press";
  private static final String PLUNGER = "plunger";
  private static final String CAP = "lens-cap";
  private static final String ADJUSTED = "adjusted";
  private static final String TWO = "two";
  private static final String STEP = "step";
  private static final String LIGHT_BEING_SET = "light-being-set";

  /** The session ended in order. */
  public static final String ENDS = "ends";

  private static final String RIG_AT_WORK = "rig-at-work";
  private static final String LEVEL = "level";
  private static final String LIGHT_READ = "light-read";
  private static final String LIGHT_TEST_ENDS = "light-test-ends";
  private static final String ON_ITS_WAY = "on-its-way";

  /** Outer sensors by the names of their light in the mark of the light. */
  private static final Map<String, Channel> OUTER =
      new TreeMap<>(Map.of("a", Channel.OUTER_A, "b", Channel.OUTER_B));

  /** Marks whose kind says all. */
  private static final Map<String, SessionInput> WITHOUT_VALUES =
      Map.of(
          "next",
          new SessionInput.NextChosen(),
          "previous",
          new SessionInput.PreviousChosen(),
          "accept",
          new SessionInput.AcceptedAsShown(),
          "light-forgotten",
          new SessionInput.LightForgotten(),
          "closed-by-hand",
          new SessionInput.ClosedByHand(),
          "link-lost",
          new SessionInput.LinkLost(),
          ENDS,
          new SessionInput.Ends());

  private static final Set<String> WITH_VALUES =
      Set.of(
          BEGINS,
          LIGHT,
          RUN,
          SPEED,
          REJECT,
          REASON,
          CHECK,
          MOVE,
          FIRING_UNDER,
          CONDITIONS,
          COCKING,
          PRESS,
          PLUNGER,
          CAP,
          ADJUSTED,
          TWO,
          STEP,
          LIGHT_BEING_SET,
          RIG_AT_WORK,
          LEVEL,
          LIGHT_READ,
          LIGHT_TEST_ENDS,
          ProfileMarks.PROFILE,
          ProfileMarks.CHECK,
          ProfileMarks.CLOCK,
          UndoMarks.UNDO,
          UndoMarks.REDO);

  private Marks() {}

  /**
   * The first mark of a stretch of work on a session file.
   *
   * @param version of this program
   * @param at the date and time with its offset
   * @param sessionName a name that no other session has, for a new file; empty when an old one is
   *     gone on with
   */
  public static Mark begins(String version, OffsetDateTime at, Optional<String> sessionName) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("version", version);
    values.put(AT, at.toString());
    sessionName.ifPresent(name -> values.put("session", name));
    return new Mark(0, BEGINS, values);
  }

  /**
   * The date and time of a mark that says that the program begins; empty for all else, and where
   * they cannot have been meant: only years from 1970 to 9999 are.
   */
  public static Optional<OffsetDateTime> beganAt(BenchEvent event) {
    if (!(event instanceof Mark mark) || !mark.kind().equals(BEGINS)) {
      return Optional.empty();
    }
    try {
      return Optional.of(OffsetDateTime.parse(mark.values().getOrDefault(AT, "")))
          .filter(at -> at.getYear() >= FIRST_YEAR && at.getYear() <= LAST_YEAR);
    } catch (DateTimeException noDate) {
      return Optional.empty();
    }
  }

  /** The mark of an input that does not come from a line of the rig. */
  public static Mark of(long hostNanos, SessionInput input) {
    Map<String, String> values = new LinkedHashMap<>();
    if (input instanceof SessionInput.LightSet set) {
      values.put("dark", number(set.levels().darkCounts()));
      values.put("full", number(set.levels().fullCounts()));
      values.put("low", number(set.levels().lowCounts()));
      values.put("high", number(set.levels().highCounts()));
      if (!set.trips().equals(TripPoints.EXACT)) {
        values.put("low-offset", number(set.trips().low().offsetCounts()));
        values.put("low-hysteresis", number(set.trips().low().hysteresisCounts()));
        values.put("high-offset", number(set.trips().high().offsetCounts()));
        values.put("high-hysteresis", number(set.trips().high().hysteresisCounts()));
      }
      OUTER.forEach(
          (name, sensor) -> {
            SensorLight read = set.outer().get(sensor);
            if (read != null) {
              values.put(name + "-dark", number(read.darkCounts()));
              values.put(name + "-full", number(read.fullCounts()));
            }
          });
      return new Mark(hostNanos, LIGHT, values);
    }
    if (input instanceof SessionInput.RunBegins begins) {
      RunMarks.put(values, begins.setup());
      return new Mark(hostNanos, RUN, values);
    }
    if (input instanceof SessionInput.SpeedChosen chosen) {
      return new Mark(hostNanos, SPEED, Map.of("is", chosen.speed().label()));
    }
    if (input instanceof SessionInput.FiringRejected rejected) {
      values.put("because", rejected.reason());
      values.put("firing", FiringKeys.format(List.of(rejected.firing())));
      return new Mark(hostNanos, REJECT, values);
    }
    if (input instanceof SessionInput.ReasonChanged changed) {
      values.put("because", changed.reason());
      values.put("firing", FiringKeys.format(List.of(changed.firing())));
      return new Mark(hostNanos, REASON, values);
    }
    if (input instanceof SessionInput.LastRejected rejected) {
      return new Mark(hostNanos, REJECT, Map.of("because", rejected.reason()));
    }
    if (input instanceof SessionInput.UntimedTestChosen chosen) {
      return new Mark(hostNanos, CHECK, Map.of("is", UntimedTest.MARKS.word(chosen.test())));
    }
    if (input instanceof SessionInput.FiringsMoved moved) {
      values.put("firings", FiringKeys.format(moved.firings()));
      values.put("to", moved.to().label());
      return new Mark(hostNanos, MOVE, values);
    }
    if (input instanceof SessionInput.FiringUnder under) {
      values.put("firing", FiringKeys.format(List.of(under.firing())));
      values.put("are", under.conditions().words());
      return new Mark(hostNanos, FIRING_UNDER, values);
    }
    if (input instanceof SessionInput.ConditionsAre are) {
      return new Mark(hostNanos, CONDITIONS, Map.of("are", are.lasting().words()));
    }
    if (input instanceof SessionInput.CockingLearnt learnt) {
      return new Mark(hostNanos, COCKING, Map.of("learning", learnt.begins() ? "begins" : "ends"));
    }
    if (input instanceof SessionInput.PressJudged press) {
      values.put("step", LinkageStep.WORDS.word(press.step()));
      values.put("wind", WindState.WORDS.word(press.wind()));
      return new Mark(hostNanos, PRESS, values);
    }
    if (input instanceof SessionInput.PlungerRead read) {
      values.put("advance-mm", number(read.reading().advanceMm()));
      values.put("shutter-mm", number(read.reading().shutterMm()));
      return new Mark(hostNanos, PLUNGER, values);
    }
    if (input instanceof SessionInput.LightBeingSet being) {
      return new Mark(hostNanos, LIGHT_BEING_SET, Map.of("is", being.begins() ? "begun" : "ended"));
    }
    if (input instanceof SessionInput.RigAtWork work) {
      return new Mark(hostNanos, RIG_AT_WORK, Map.of("is", work.begins() ? "begun" : "ended"));
    }
    if (input instanceof SessionInput.LevelStands stands) {
      return new Mark(
          hostNanos,
          LEVEL,
          Map.of("is", stands.level().map(AlternatingLevels.Level.WORDS::word).orElse(ON_ITS_WAY)));
    }
    if (input instanceof SessionInput.LightRead read) {
      return new Mark(hostNanos, LIGHT_READ, ReadingMarks.values(read.reading()));
    }
    if (input instanceof SessionInput.LightTestEnds test) {
      return new Mark(
          hostNanos, LIGHT_TEST_ENDS, Map.of("is", UntimedTest.MARKS.word(test.test())));
    }
    if (input instanceof SessionInput.Adjusted adjusted) {
      return new Mark(hostNanos, ADJUSTED, Map.of("words", adjusted.words()));
    }
    if (input instanceof SessionInput.StepChosen chosen) {
      return new Mark(hostNanos, STEP, Map.of("is", CurtainStep.WORDS.word(chosen.step())));
    }
    if (input instanceof SessionInput.TwoChosen chosen) {
      chosen
          .two()
          .ifPresentOrElse(
              two -> {
                values.put("first", two.first().label());
                values.put("second", two.second().label());
              },
              () -> values.put("is", "off"));
      return new Mark(hostNanos, TWO, values);
    }
    if (input instanceof SessionInput.LensCap cap) {
      return new Mark(hostNanos, CAP, Map.of("is", cap.on() ? "on" : "off"));
    }
    return WITHOUT_VALUES.entrySet().stream()
        .filter(mark -> mark.getValue().equals(input))
        .map(mark -> new Mark(hostNanos, mark.getKey(), values))
        .findFirst()
        .or(() -> ProfileMarks.of(hostNanos, input, values))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "comes from a line of the rig, not from a mark: " + input));
  }

  /** Whether this version knows a kind of mark; what it does not know it passes over. */
  static boolean isKnown(String kind) {
    return WITH_VALUES.contains(kind) || WITHOUT_VALUES.containsKey(kind);
  }

  /** The input of a mark; empty for one that results do not depend on, or that is damaged. */
  public static Optional<SessionInput> input(Mark mark) {
    Map<String, String> values = mark.values();
    try {
      return switch (mark.kind()) {
        case LIGHT ->
            Optional.of(
                new SessionInput.LightSet(
                    new LightLevels(
                        finite(values.getOrDefault("dark", "")),
                        finite(values.getOrDefault("full", "")),
                        finite(values.getOrDefault("low", "")),
                        finite(values.getOrDefault("high", ""))),
                    trips(values),
                    outer(values)));
        case RUN -> Optional.of(new SessionInput.RunBegins(RunMarks.setup(values)));
        case SPEED ->
            MarkedSpeed.find(values.getOrDefault("is", "")).map(SessionInput.SpeedChosen::new);
        case REJECT -> Optional.of(rejected(values));
        case REASON ->
            Optional.of(
                new SessionInput.ReasonChanged(
                    FiringKeys.parseOne(values.getOrDefault("firing", "")),
                    values.getOrDefault("because", "")));
        case CHECK ->
            Optional.of(
                new SessionInput.UntimedTestChosen(
                    UntimedTest.MARKS.parse(values.getOrDefault("is", ""))));
        case MOVE ->
            Optional.of(
                new SessionInput.FiringsMoved(
                    FiringKeys.parse(values.getOrDefault("firings", "")),
                    MarkedSpeed.parse(values.getOrDefault("to", ""))));
        case FIRING_UNDER ->
            Optional.of(
                new SessionInput.FiringUnder(
                    FiringKeys.parseOne(values.getOrDefault("firing", "")), conditions(values)));
        case CONDITIONS -> Optional.of(new SessionInput.ConditionsAre(conditions(values)));
        case COCKING ->
            oneOf(values.get("learning"), "begins", "ends").map(SessionInput.CockingLearnt::new);
        case PRESS ->
            Optional.of(
                new SessionInput.PressJudged(
                    LinkageStep.WORDS.parse(values.getOrDefault("step", "")),
                    WindState.WORDS.parse(values.getOrDefault("wind", ""))));
        case PLUNGER ->
            Optional.of(
                new SessionInput.PlungerRead(
                    new PlungerReading(
                        finite(values.getOrDefault("advance-mm", "")),
                        finite(values.getOrDefault("shutter-mm", "")))));
        case LIGHT_BEING_SET ->
            oneOf(values.get("is"), "begun", "ended").map(SessionInput.LightBeingSet::new);
        case RIG_AT_WORK ->
            oneOf(values.get("is"), "begun", "ended").map(SessionInput.RigAtWork::new);
        case LEVEL ->
            Optional.of(new SessionInput.LevelStands(level(values.getOrDefault("is", ""))));
        case LIGHT_READ -> Optional.of(new SessionInput.LightRead(ReadingMarks.reading(values)));
        case LIGHT_TEST_ENDS ->
            Optional.of(
                new SessionInput.LightTestEnds(
                    UntimedTest.MARKS.parse(values.getOrDefault("is", ""))));
        case ADJUSTED -> Optional.of(new SessionInput.Adjusted(values.getOrDefault("words", "")));
        case TWO -> Optional.of(new SessionInput.TwoChosen(two(values)));
        case STEP ->
            Optional.of(
                new SessionInput.StepChosen(
                    CurtainStep.WORDS.parse(values.getOrDefault("is", ""))));
        case CAP -> oneOf(values.get("is"), "on", "off").map(SessionInput.LensCap::new);
        case ProfileMarks.PROFILE -> ProfileMarks.profile(values);
        case ProfileMarks.CHECK -> ProfileMarks.check(values);
        case ProfileMarks.CLOCK -> ProfileMarks.clock(values);
        default -> Optional.ofNullable(WITHOUT_VALUES.get(mark.kind()));
      };
    } catch (IllegalArgumentException damaged) {
      return Optional.empty();
    }
  }

  private static FiringConditions conditions(Map<String, String> values) {
    String words = values.get("are");
    if (words == null) {
      throw new IllegalArgumentException("says no conditions");
    }
    return FiringConditions.parse(words);
  }

  /** Marks of earlier versions mean the last firing and do not name it. */
  private static SessionInput rejected(Map<String, String> values) {
    String reason = values.getOrDefault("because", "");
    return values.containsKey("firing")
        ? new SessionInput.FiringRejected(FiringKeys.parseOne(values.get("firing")), reason)
        : new SessionInput.LastRejected(reason);
  }

  private static Optional<TwoSpeeds> two(Map<String, String> values) {
    return values.getOrDefault("is", "").equals("off")
        ? Optional.empty()
        : Optional.of(
            new TwoSpeeds(
                MarkedSpeed.parse(values.getOrDefault("first", "")),
                MarkedSpeed.parse(values.getOrDefault("second", ""))));
  }

  private static Optional<AlternatingLevels.Level> level(String word) {
    return word.equals(ON_ITS_WAY)
        ? Optional.empty()
        : Optional.of(AlternatingLevels.Level.WORDS.parse(word));
  }

  /** A light that was set without looking at the comparators has none of these values. */
  private static TripPoints trips(Map<String, String> values) {
    return new TripPoints(comparator(values, "low"), comparator(values, "high"));
  }

  private static Map<Channel, SensorLight> outer(Map<String, String> values) {
    Map<Channel, SensorLight> read = new EnumMap<>(Channel.class);
    OUTER.forEach(
        (name, sensor) -> {
          if (values.containsKey(name + "-full")) {
            read.put(
                sensor,
                new SensorLight(
                    finite(values.getOrDefault(name + "-dark", "")),
                    finite(values.getOrDefault(name + "-full", ""))));
          }
        });
    return read;
  }

  private static ComparatorTrips comparator(Map<String, String> values, String level) {
    String offset = values.get(level + "-offset");
    return offset != null
        ? ComparatorTrips.around(
            finite(offset),
            finite(values.getOrDefault(level + "-hysteresis", "0")),
            TripEstimate.STANDARD_UNCERTAINTY_COUNTS)
        : ComparatorTrips.EXACT;
  }

  private static Optional<Boolean> oneOf(@Nullable String value, String yes, String no) {
    return yes.equals(value)
        ? Optional.of(true)
        : no.equals(value) ? Optional.of(false) : Optional.empty();
  }

  /**
   * A number of a mark.
   *
   * @throws IllegalArgumentException where it is none, or has no end
   */
  static double finite(String text) {
    double value = Double.parseDouble(text);
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("not a number of a mark: " + text);
    }
    return value;
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.4f", value);
  }
}
