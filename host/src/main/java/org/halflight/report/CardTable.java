package org.halflight.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.exposure.ByLaw;
import org.halflight.exposure.StopTable;
import org.halflight.session.Outcome;
import org.halflight.speeds.Stops;
import org.halflight.speeds.ThirdsOfStop;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Numbers;
import org.halflight.words.Words;

/** What stands on the pocket card. */
final class CardTable {
  /** How far down the stop table goes, in stops. */
  private static final int CLOSED_DOWN = 5;

  /** Speeds on which the stop makes less than a third of a stop have no row. */
  private static final double WORTH_A_ROW_STOPS = 1 / 6.0;

  private static final double[] F_NUMBERS = {1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64};

  private CardTable() {}

  /** Marked speed, true time, what to give. */
  static List<List<String>> speeds(PageInput input) {
    return input.last().run().speeds().stream().map(CardTable::speed).toList();
  }

  private static List<String> speed(SpeedSummary speed) {
    boolean hung = speed.count(Outcome.STUCK_OPEN) + speed.count(Outcome.DID_NOT_OPEN) > 0;
    if (speed.meanSeconds().isEmpty()) {
      String why =
          hung
              ? "page.card.hung"
              : speed.count(Outcome.NEVER_FULLY_OPEN) > 0 ? "page.card.never" : "page.card.none";
      return List.of(speed.speed().label(), Words.say(why), Words.say("table.nothing"), "");
    }
    return List.of(
        speed.speed().label(),
        fractionAndTarget(speed.meanSeconds().getAsDouble(), speed.referenceSeconds()),
        Numbers.thirds(ThirdsOfStop.toCompensate(speed.meanStops().orElseThrow())),
        hung ? Words.say("page.card.hung") : speed.isUneven() ? Words.say("page.card.uneven") : "");
  }

  private static String fractionAndTarget(double seconds, double targetSeconds) {
    return Numbers.isReadInSeconds(seconds)
        ? Numbers.fraction(seconds)
        : Words.say(
            "numbers.inBrackets",
            Numbers.fractionInUnit(seconds).figure(),
            Numbers.fractionInUnit(targetSeconds).figure());
  }

  /**
   * The working stops over the columns of the stop table, as closed-down stops and as words.
   *
   * @param closedDown in stops from the stop that was measured
   * @param words such as {@code f/8} or {@code 3}
   */
  record WorkingStop(double closedDown, String words) {}

  static List<WorkingStop> workingStops(OptionalDouble measuredFNumber) {
    List<WorkingStop> stops = new ArrayList<>();
    if (measuredFNumber.isEmpty()) {
      for (int closed = 0; closed <= CLOSED_DOWN; closed++) {
        stops.add(new WorkingStop(closed, String.valueOf(closed)));
      }
      return stops;
    }
    double measured = measuredFNumber.getAsDouble();
    stops.add(new WorkingStop(0, fNumber(measured)));
    for (double number : F_NUMBERS) {
      // Engraved f-numbers are rounded, so the stops between them are taken as whole ones.
      double closed = 2 * Stops.between(number, measured);
      if (closed > 0.3 && stops.size() <= CLOSED_DOWN) {
        stops.add(new WorkingStop(closed, fNumber(number)));
      }
    }
    return stops;
  }

  private static String fNumber(double number) {
    return number == Math.rint(number) ? String.valueOf((int) number) : String.valueOf(number);
  }

  /**
   * For each speed that a small stop makes longer by enough: what to give at each working stop.
   * Where the two opening laws disagree both are given.
   */
  static List<List<String>> stopTable(PageInput input) {
    List<List<String>> rows = new ArrayList<>();
    List<WorkingStop> stops = workingStops(input.measuredFNumber());
    for (SpeedSummary speed : input.last().run().speeds()) {
      StopTable table = input.stopTables().get(speed.speed());
      if (table != null && grows(table, stops)) {
        List<String> row = new ArrayList<>();
        row.add(speed.speed().label());
        for (WorkingStop stop : stops) {
          row.add(give(table, stop, speed));
        }
        rows.add(row);
      }
    }
    return rows;
  }

  private static boolean grows(StopTable table, List<WorkingStop> stops) {
    ByLaw open = table.effectiveSeconds(1.0);
    ByLaw small = table.effectiveSeconds(k(stops.get(stops.size() - 1)));
    return Math.max(
            Stops.between(small.areaLinear(), open.areaLinear()),
            Stops.between(small.radiusLinear(), open.radiusLinear()))
        >= WORTH_A_ROW_STOPS;
  }

  private static String give(StopTable table, WorkingStop stop, SpeedSummary speed) {
    ByLaw seconds = table.effectiveSeconds(k(stop));
    String one = give(seconds.areaLinear(), speed);
    String other = give(seconds.radiusLinear(), speed);
    return one.equals(other) ? one : one + ", " + other;
  }

  private static String give(double seconds, SpeedSummary speed) {
    return Numbers.thirds(
        ThirdsOfStop.toCompensate(Stops.between(seconds, speed.referenceSeconds())));
  }

  /** Measured f-number over working f-number. */
  private static double k(WorkingStop stop) {
    return Math.min(1, Stops.ratio(-stop.closedDown() / 2));
  }
}
