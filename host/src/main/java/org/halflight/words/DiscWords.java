package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.DiscTrouble;
import org.halflight.profile.ClockRate;
import org.halflight.stats.Student;
import org.halflight.uncertainty.DiscComparison;

/** What a slotted disc says of a rig, in sentences. */
public final class DiscWords {
  /** A hole that is so far off is worth a sentence, our choice. */
  private static final double SWING_SAID_MILLIMETRES = 0.5;

  private DiscWords() {}

  /** Why there is no reading, and what to do. */
  public static String trouble(DiscTrouble trouble) {
    if (trouble instanceof DiscTrouble.NoEdges) {
      return Words.say("disc.trouble.noEdges");
    }
    if (trouble instanceof DiscTrouble.NeverFullLight) {
      return Words.say("disc.trouble.neverFull");
    }
    if (trouble instanceof DiscTrouble.TooFewTurns few) {
      return Words.say("disc.trouble.tooFew", few.turns(), DiscReading.LEAST_TURNS);
    }
    if (trouble instanceof DiscTrouble.AllAlike alike) {
      return Words.say("disc.trouble.alike", String.format(Locale.ROOT, "%.0f", alike.hertz()));
    }
    if (trouble instanceof DiscTrouble.OtherNumber other) {
      return Words.say("disc.trouble.number", other.slots());
    }
    if (trouble instanceof DiscTrouble.OtherDisc) {
      return Words.say("disc.trouble.otherDisc");
    }
    if (trouble instanceof DiscTrouble.Wanders wanders) {
      return Words.say("disc.trouble.wanders", Numbers.percent(wanders.share()));
    }
    if (trouble instanceof DiscTrouble.OffCentre off) {
      return Words.say("disc.trouble.offCentre", tenths(off.millimetres()));
    }
    return trouble instanceof DiscTrouble.TooFast fast
        ? Words.say("disc.trouble.tooFast", Math.round(fast.turnsAMinute()))
        : Words.say("disc.trouble.levels");
  }

  /** What came of it: the verdict first, then what it rests on. */
  public static List<String> lines(DiscComparison comparison) {
    DiscReading reading = comparison.reading();
    List<String> lines = new ArrayList<>(List.of(verdict(comparison), offset(reading)));
    lines.add(
        Words.say(
            reading.forward() ? "disc.turns.forward" : "disc.turns.backward",
            reading.turns(),
            String.format(Locale.ROOT, "%.2f", 60 / reading.turnSeconds()),
            String.format(Locale.ROOT, "%.3f", 100 * reading.turnSd() / reading.turnSeconds())));
    if (!swingsMuch(reading)) {
      lines.add(Words.say("disc.swing", hundredths(swing(reading))));
    }
    lines.addAll(remarks(reading));
    return lines;
  }

  /** The same in short: the verdict, and what there is to do. */
  public static List<String> brief(DiscComparison comparison) {
    List<String> lines =
        new ArrayList<>(List.of(verdict(comparison), offset(comparison.reading())));
    lines.addAll(remarks(comparison.reading()));
    return lines;
  }

  private static String offset(DiscReading reading) {
    double k = Student.quantile(1 - (1 - DiscReading.LEVEL) / 4, reading.edgeDegreesOfFreedom());
    return Words.say(
        "disc.offset",
        String.format(Locale.ROOT, "%+.1f", 1e6 * reading.offsetSeconds()),
        tenths(1e6 * k * reading.offsetSd()),
        signedPercent(reading.slopeError()),
        percent(k * reading.slopeSd()));
  }

  private static double swing(DiscReading reading) {
    return reading.disc().millimetres(reading.swingDegrees());
  }

  private static boolean swingsMuch(DiscReading reading) {
    return swing(reading) > SWING_SAID_MILLIMETRES;
  }

  private static List<String> remarks(DiscReading reading) {
    List<String> lines = new ArrayList<>();
    if (swingsMuch(reading)) {
      lines.add(Words.say("disc.swing.much", hundredths(swing(reading))));
    }
    if (!reading.leftOut().isEmpty()) {
      lines.add(
          Words.say(
              "disc.leftOut",
              reading.leftOut().stream().map(DiscWords::tenths).collect(Collectors.joining(", ")),
              tenths(reading.disc().millimetres(reading.beamDegrees()))));
    }
    if (reading.isCutWorse()) {
      double found = reading.foundEdgeSdDegrees().getAsDouble() * Math.sqrt(3);
      lines.add(
          Words.say(
              "disc.cutWorse",
              hundredths(reading.disc().millimetres(found)),
              hundredths(reading.disc().edgeMillimetres())));
    }
    return lines;
  }

  private static String verdict(DiscComparison comparison) {
    String of =
        Words.say(comparison.calibrated() ? "disc.rig.calibrated" : "disc.rig.uncalibrated");
    if (comparison.verdict() == DiscComparison.Verdict.AGREES) {
      DiscComparison.Row narrow = comparison.rows().get(0);
      return Words.say(
          "disc.verdict.agrees",
          percent(narrow.discSeconds() / narrow.slot().expectedSeconds()),
          Numbers.time(narrow.slot().expectedSeconds()));
    }
    return Words.of("disc.verdict", comparison.verdict(), of);
  }

  /** The rate of the clock by the speed of the disc, and whether the profile's agrees. */
  public static String clock(
      DiscReading reading,
      double turnsAMinute,
      double standardUncertaintyPpm,
      Optional<ClockRate> profile) {
    Optional<ClockRate> known = reading.clock(turnsAMinute, standardUncertaintyPpm);
    if (known.isEmpty()) {
      return Words.say(
          "disc.clock.impossible", tenths(60 / reading.turnSeconds()), tenths(turnsAMinute));
    }
    ClockRate rate = known.get();
    String found = ProfileWords.clock(rate);
    if (profile.isEmpty()) {
      return found;
    }
    double apart = Math.abs(rate.fastPpm() - profile.get().fastPpm());
    double most =
        Math.hypot(rate.standardUncertaintyPpm(), profile.get().standardUncertaintyPpm())
            * Student.quantile((1 + DiscReading.LEVEL) / 2, Double.POSITIVE_INFINITY);
    return found
        + " "
        + Words.say(
            apart <= most ? "disc.clock.agrees" : "disc.clock.disagrees",
            String.format(Locale.ROOT, "%.0f", apart),
            String.format(Locale.ROOT, "%.0f", most));
  }

  /** Headings of the table. */
  public static List<String> headings() {
    return List.of(
        Words.say("disc.table.slot"),
        Words.say("disc.table.expected"),
        Words.say("disc.table.measured"),
        Words.say("disc.table.micros"),
        Words.say("disc.table.error"),
        Words.say("disc.table.disc"),
        Words.say("disc.table.rig"));
  }

  /** A row of the table for each slot. */
  public static List<List<String>> rows(DiscComparison comparison) {
    return comparison.rows().stream().map(DiscWords::row).toList();
  }

  private static List<String> row(DiscComparison.Row row) {
    double expected = row.slot().expectedSeconds();
    return List.of(
        String.format(Locale.ROOT, "%.2f", row.slot().degrees()),
        millis(expected),
        millis(row.slot().effectiveSeconds()),
        ProfileWords.micros(row.errorSeconds()),
        String.format(Locale.ROOT, "%+.2f", 100 * row.slot().error()),
        String.format(Locale.ROOT, "%.2f", 100 * row.discSeconds() / expected),
        String.format(Locale.ROOT, "%.2f", 100 * row.rigSeconds() / expected));
  }

  private static String millis(double seconds) {
    return String.format(Locale.ROOT, "%.4f", 1e3 * seconds);
  }

  private static String tenths(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  private static String hundredths(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.2f", 100 * share);
  }

  private static String signedPercent(double share) {
    return String.format(Locale.ROOT, "%+.2f", 100 * share);
  }
}
