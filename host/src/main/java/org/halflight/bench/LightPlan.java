package org.halflight.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.FNumber;
import org.halflight.extratest.LightLeak;
import org.halflight.session.LightReading;
import org.halflight.session.LightReading.What;
import org.halflight.session.RunSetup;
import org.halflight.session.StopsAsked;
import org.halflight.session.UntimedTest;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * The readings of a test of the light in their order, and what is asked of the person for each.
 *
 * @param kind which test it is
 * @param steps one reading each
 * @param within how far a stop may be off its marking, in stops; empty for what the run allows
 */
public record LightPlan(Kind kind, List<Step> steps, OptionalDouble within) {
  private static final int LEAST_STOPS = 2;

  /** Which test of the light. */
  public enum Kind {
    /** Light that passes the shut blades. */
    LEAK,
    /** The stops against their markings. */
    STOPS,
    /** How evenly the panel of light fills the lens; no check of the camera. */
    PANEL,
    /** Full light, to see whether it is still what it was. */
    FULL
  }

  /**
   * One reading.
   *
   * @param asked what the person is to do before it
   * @param what is read then
   * @param at the f-number as engraved; empty where it does not matter
   * @param opening whether the stop is turned towards the wider ones to get there
   * @param needed whether the others say nothing without it
   */
  public record Step(String asked, What what, String at, boolean opening, boolean needed) {
    /** Whether the shutter is opened for it, so that there must be light. */
    public boolean opensShutter() {
      return needed && (what == What.FULL || what == What.STOP || what == What.PANEL_IN_PLACE);
    }
  }

  public LightPlan {
    steps = List.copyOf(steps);
  }

  /**
   * The test of the light that a check asks for.
   *
   * @param stops what a stop check is about
   */
  public static LightPlan of(UntimedTest check, StopsAsked stops) {
    return switch (check) {
      case LEAK -> leak();
      case STOPS ->
          stops(stops.markings().stream().map(FNumber::new).toList(), OptionalDouble.empty());
      default -> throw new IllegalArgumentException("not a test of the light: " + check);
    };
  }

  /** The check that asks for it; a run asks for no test of the panel and no full light. */
  public Optional<UntimedTest> check() {
    return switch (kind) {
      case LEAK -> Optional.of(UntimedTest.LEAK);
      case STOPS -> Optional.of(UntimedTest.STOPS);
      case PANEL, FULL -> Optional.empty();
    };
  }

  /**
   * What such a test of a camera came to in a run; empty where too little was read.
   *
   * @param readings of the session
   * @param runs what its runs were set up for
   * @param run counts from 1; 0 before one was begun
   */
  public Optional<ExtraTest> found(List<LightReading> readings, List<RunSetup> runs, int run) {
    Stream<? extends ExtraTest> tests =
        switch (kind) {
          case LEAK ->
              ExtraTests.of(List.of(), readings, runs).stream().filter(LightLeak.class::isInstance);
          case STOPS -> ExtraTests.stops(readings, runs, within).stream();
          case PANEL, FULL -> Stream.empty();
        };
    return tests
        .filter(test -> test.run() == run)
        .reduce((first, second) -> second)
        .map(ExtraTest.class::cast);
  }

  /** The lamp covered, then on with the shutter shut, not cocked and cocked. */
  public static LightPlan leak() {
    return new LightPlan(
        Kind.LEAK,
        List.of(
            new Step(Words.say("leak.ask.covered"), What.LAMP_COVERED, "", false, true),
            new Step(Words.say("leak.ask.uncocked"), What.SHUT_UNCOCKED, "", false, false),
            new Step(Words.say("leak.ask.cocked"), What.SHUT_COCKED, "", false, false)),
        OptionalDouble.empty());
  }

  /** The panel in place, moved to either side, and in place again. */
  public static LightPlan panel() {
    return new LightPlan(
        Kind.PANEL,
        List.of(
            new Step(Words.say("panel.ask.inPlace"), What.PANEL_IN_PLACE, "", false, true),
            new Step(Words.say("panel.ask.left"), What.PANEL_MOVED, "", false, false),
            new Step(Words.say("panel.ask.right"), What.PANEL_MOVED, "", false, false),
            new Step(Words.say("panel.ask.again"), What.PANEL_IN_PLACE, "", false, false)),
        OptionalDouble.empty());
  }

  /** The shutter held open at the stop at which the light was set. */
  public static LightPlan full() {
    return new LightPlan(
        Kind.FULL,
        List.of(new Step(Words.say("full.ask"), What.FULL, "", false, true)),
        OptionalDouble.empty());
  }

  /**
   * Stopping down from the widest, and opening up to it again.
   *
   * @param numbers at least two, in any order
   * @param within how far one may be off its marking, in stops; empty for what the run allows
   */
  public static LightPlan stops(List<FNumber> numbers, OptionalDouble within) {
    List<FNumber> down = new ArrayList<>(numbers);
    down.sort(Comparator.comparingDouble(FNumber::exact));
    if (down.size() < LEAST_STOPS) {
      throw new IllegalArgumentException("a stop check of " + down.size() + " stops");
    }
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < down.size(); i++) {
      steps.add(stop(i == 0 ? "stops.ask.first" : "stops.ask.down", down.get(i), false, i == 0));
    }
    for (int i = down.size() - 2; i >= 0; i--) {
      steps.add(stop(i == 0 ? "stops.ask.last" : "stops.ask.up", down.get(i), true, false));
    }
    return new LightPlan(Kind.STOPS, steps, within);
  }

  private static Step stop(String key, FNumber number, boolean opening, boolean needed) {
    return new Step(
        Words.say(key, number.engraved()), What.STOP, number.engraved(), opening, needed);
  }

  /**
   * The stops of a lens as a person writes them, from the widest on.
   *
   * @throws Trouble where one is no stop, or where there are too few
   */
  public static List<FNumber> numbers(List<String> written) {
    List<FNumber> numbers = new ArrayList<>();
    for (String text : written) {
      FNumber number =
          FNumber.find(text)
              .orElseThrow(() -> new Trouble(Words.say("stops.badNumber", text.strip())));
      if (!numbers.contains(number)) {
        numbers.add(number);
      }
    }
    if (numbers.size() < LEAST_STOPS) {
      throw new Trouble(Words.say("stops.tooFew"));
    }
    numbers.sort(Comparator.comparingDouble(FNumber::exact));
    return List.copyOf(numbers);
  }
}
