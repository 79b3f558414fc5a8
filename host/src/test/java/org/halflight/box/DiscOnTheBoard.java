package org.halflight.box;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.bench.DiscEdges;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.PrintedDisc;
import org.halflight.export.DiscEdgesTable;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.uncertainty.RigKnowledge;

/**
 * A slotted disc before the real firmware in its simulator, read by the command through a
 * pseudo-terminal. The disc's geometry is the truth, which neither the board's clock nor its light
 * know. All figures are simulated; which turns are read depends on the machine.
 */
public final class DiscOnTheBoard {
  /** The clock of the board is fast, and every slot of the disc must come out the same. */
  static final double FAST_PPM = 3450;

  /** How the edges are said to be cut. */
  static final double CUT_MILLIMETRES = 0.05;

  static final TurningDisc DISC = TurningDisc.invented(11);

  /** A comparator that a fault makes switch far too early. */
  static final String FAULT = "offset low -300";

  static final String HEADING = "## A slotted disc in front of a rig on its real firmware";

  /** Turns of the script: five minutes, of which the reading takes a few seconds. */
  private static final int TURNS = 3000;

  /** As many different turns are scripted, one after the other and again. */
  private static final int DIFFERENT_TURNS = 16;

  private static final double FIRST_TURN_SECONDS = 0.5;

  /**
   * What came of it.
   *
   * @param code exit status of the command
   * @param said by the command
   */
  record Outcome(int code, List<String> said, DiscReading reading, DiscComparison comparison) {
    /** By what a slot came out too long against the geometry that was put in. */
    double errorSeconds(int slot) {
      return reading.slots().get(slot).effectiveSeconds() - trueSeconds(slot);
    }

    double trueSeconds(int slot) {
      return reading.turnSeconds() * DISC.degreesSeen(slot) / 360;
    }
  }

  private DiscOnTheBoard() {}

  /**
   * Turns the disc and reads it.
   *
   * @param folder an empty folder
   * @param faults further lines of the scenario
   */
  static Outcome run(Path folder, List<String> faults) throws Exception {
    Path file = folder.resolve("edges.csv");
    List<String> said = new ArrayList<>();
    int code;
    try (BenchInABox box = BenchInABox.start(folder, scenario(faults))) {
      code =
          TypedCommand.execute(
              box,
              folder,
              said,
              (line, keyboard) -> {
                if (line.matches("[1-5]\\. .*")) {
                  keyboard.type("");
                }
              },
              "disc",
              "read",
              "--port",
              box.port(),
              "--seconds",
              "4",
              "--cut",
              String.valueOf(CUT_MILLIMETRES),
              "--rpm",
              String.format(Locale.ROOT, "%.4f", turnsAMinute()),
              "--rpm-ppm",
              "20",
              "--edges",
              file.toString());
    }
    if (!Files.exists(file)) {
      throw new AssertionError(String.join("\n", said));
    }
    DiscEdges edges = DiscEdgesTable.read(file);
    DiscReading.Outcome read =
        edges.read(
            new PrintedDisc(PrintedDisc.SLOT_DEGREES, CUT_MILLIMETRES, 63), Optional.empty());
    if (!(read instanceof DiscReading.Found found)) {
      throw new AssertionError(read + "\n" + String.join("\n", said));
    }
    return new Outcome(
        code,
        List.copyOf(said),
        found.reading(),
        DiscComparison.of(found.reading(), RigKnowledge.UNCALIBRATED));
  }

  static double turnsAMinute() {
    double sum = 0;
    for (int turn = 0; turn < DIFFERENT_TURNS; turn++) {
      sum += DISC.turnSeconds(turn);
    }
    return 60 * DIFFERENT_TURNS / sum;
  }

  private static List<String> scenario(List<String> faults) {
    List<String> lines = new ArrayList<>();
    lines.add(String.format(Locale.ROOT, "clock %.0f 0", FAST_PPM));
    lines.add("light all 40 4000");
    lines.add("lag all 1");
    lines.add("hysteresis 10");
    lines.addAll(faults);
    for (int turn = 0; turn < DIFFERENT_TURNS; turn++) {
      LightPath path = DISC.turn(turn, 1);
      double[] seconds = path.seconds();
      double[] open = path.open();
      lines.add("curve turn" + turn);
      for (int i = 0; i < seconds.length; i++) {
        lines.add(String.format(Locale.ROOT, "%.6f %.9f", 1e6 * seconds[i], open[i]));
      }
      lines.add("end-curve");
    }
    lines.add(BenchInABox.NAMED);
    double at = FIRST_TURN_SECONDS;
    for (int turn = 0; turn < TURNS; turn++) {
      lines.add(String.format(Locale.ROOT, "fire %.7f turn%d", at, turn % DIFFERENT_TURNS));
      at += DISC.turnSeconds(turn % DIFFERENT_TURNS);
    }
    return lines;
  }

  /**
   * Runs it and writes the section of docs/validation.md. Takes the tools of the firmware.
   *
   * @param folder an empty folder for its files
   */
  public static List<String> page(Path folder) throws Exception {
    return page(
        run(Files.createDirectory(folder.resolve("right")), List.of()),
        run(Files.createDirectory(folder.resolve("faulty")), List.of(FAULT)));
  }

  static List<String> page(Outcome right, Outcome faulty) {
    List<String> lines = new ArrayList<>();
    lines.add(HEADING);
    lines.add("");
    lines.add(
        "**Simulated**: the firmware itself in its simulator, an invented disc in front of it, read by"
            + " `halflight disc read`");
    lines.add(
        String.format(
            Locale.ROOT,
            "through a pseudo-terminal (`DiscOnTheBoardTest`). The board's clock is %.0f ppm fast,"
                + " the front end lags by",
            FAST_PPM));
    lines.add(
        "1 \u00b5s, the comparators have 10 mV of hysteresis. The disc is cut to \u00b10.05 mm, its hole 0.33 mm off centre, on a motor of 600 turns a minute that wanders by 0.05 % from turn to turn. 'Off' is measured from the geometry that was put in.");
    lines.add(
        "'Faulty': the low comparator switches 300 mV too early, which reading back the thresholds does not show. Which turns are read");
    lines.add("depends on the machine, so the last digits differ from run to run.");
    lines.add("");
    lines.add("| slot | true time | rig in order, off | faulty, off | the rig states \u00b1 |");
    lines.add("|---|---|---|---|---|");
    for (int slot = 0; slot < right.reading().slots().size(); slot++) {
      lines.add(
          String.format(
              Locale.ROOT,
              "| %.1f degrees | %.4f ms | %+.2f \u00b5s (%+.3f %%) | %+.1f \u00b5s (%+.2f %%) | %.1f \u00b5s |",
              right.reading().slots().get(slot).degrees(),
              1e3 * right.trueSeconds(slot),
              1e6 * right.errorSeconds(slot),
              100 * right.errorSeconds(slot) / right.trueSeconds(slot),
              1e6 * faulty.errorSeconds(slot),
              100 * faulty.errorSeconds(slot) / faulty.trueSeconds(slot),
              1e6 * right.comparison().rows().get(slot).rigSeconds()));
    }
    lines.add("");
    lines.add(
        String.format(
            Locale.ROOT,
            "Off centre: %.2f mm found. Clock by the known speed of the disc: %.0f ppm fast. Verdict for the rig in order: '%s';",
            right.reading().disc().millimetres(right.reading().swingDegrees()),
            right.reading().clock(turnsAMinute(), 0).orElseThrow().fastPpm(),
            word(right)));
    lines.add(
        String.format(
            Locale.ROOT,
            "for the faulty one: '%s', every slot by %.1f \u00b5s too long.",
            word(faulty),
            1e6 * faulty.reading().offsetSeconds()));
    lines.add("");
    return lines;
  }

  private static String word(Outcome outcome) {
    return switch (outcome.comparison().verdict()) {
      case AGREES -> "the rig agrees with the disc";
      case WITHIN_STATED -> "off by no more than is stated";
      case DISAGREES -> "off by more than is stated";
    };
  }
}
