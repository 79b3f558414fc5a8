package org.halflight.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.halflight.session.Assembly;
import org.halflight.session.Assembly.Cells;
import org.halflight.session.Assembly.Place;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.validation.invented.Draws;
import org.halflight.validation.invented.Repair;
import org.halflight.validation.invented.Repair.Fault;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.Stage;
import org.halflight.verdict.Stage.Seen;
import org.halflight.verdict.StageChange;
import org.halflight.verdict.StageChange.Suspect;

/** Whether stages of assembly, each compared with the one before, find what went wrong. */
final class StageStudy {
  private static final MarkedSpeed SLOW = MarkedSpeed.parse("1/2");
  private static final MarkedSpeed TOP = MarkedSpeed.parse("1/500");
  private static final List<Place> PLACES = List.of(Place.values());
  private static final int REPAIRS = 300;
  private static final int OTHERS = 1000;
  private static final int FIRST_OTHER = 1_000_000;
  private static final double[] SIZES = {0.15, 0.2, 0.3, 0.5, 1};

  private StageStudy() {}

  /**
   * What is reported of a repair.
   *
   * @param isFound whether the fault was reported at the stage in which it came, with its cause
   *     among what to check
   * @param isFalse whether a change was reported at any other stage
   */
  record Reported(Repair repair, boolean isFound, boolean isFalse) {}

  /** Of repairs with a fault of any size. */
  static List<Reported> reported(Fault fault, int repairs) {
    return reported(fault, 0, repairs);
  }

  private static List<Reported> reported(Fault fault, int first, int repairs) {
    return IntStream.range(first, first + repairs)
        .mapToObj(i -> reported(Repair.drawn(fault, draws(fault, i))))
        .toList();
  }

  private static List<Reported> reported(Fault fault, double sizeStops) {
    return IntStream.range(0, REPAIRS)
        .mapToObj(i -> reported(Repair.of(fault, sizeStops, draws(fault, REPAIRS + i))))
        .toList();
  }

  private static Draws draws(Fault fault, int number) {
    long seed = Validation.SEED + 7919L * number;
    return new Draws(seed * 0x9E3779B97F4A7C15L + List.of(Fault.values()).indexOf(fault));
  }

  private static Reported reported(Repair repair) {
    List<StageChange> changes =
        AssemblyStages.of(repair.stages().stream().map(StageStudy::stage).toList()).changes();
    boolean isFound = false;
    boolean isFalse = false;
    for (int i = 0; i < changes.size(); i++) {
      StageChange change = changes.get(i);
      if (repair.stages().get(i + 1).isFaulty()) {
        isFound |= change.suspects().contains(suspect(repair.fault()));
      } else {
        isFalse |= change.isFound();
      }
    }
    return new Reported(repair, isFound, isFalse);
  }

  private static Suspect suspect(Fault fault) {
    return switch (fault) {
      case PINCHED_CASE -> Suspect.PINCHED_CASE;
      case TOUCHING_CELL -> Suspect.TOUCHING_CELL;
      case WRONG_COVER -> Suspect.WRONG_COVER;
      case NOTHING -> throw new IllegalArgumentException("nothing is wrong");
    };
  }

  private static Stage stage(Repair.Stage stage) {
    Cells cells =
        stage.rear()
            ? stage.front() ? Cells.BOTH : Cells.REAR
            : stage.front() ? Cells.FRONT : Cells.NONE;
    return new Stage(
        new Assembly(stage.cover(), cells, PLACES.get(stage.place())),
        true,
        Optional.of(
            new Stage.Bulb(Seen.RIGHT, Seen.RIGHT, stage.closesAtOnce() ? Seen.RIGHT : Seen.WRONG)),
        Stage.Fired.of(SLOW, stage.slowStops(), stage.slowFailed()),
        Stage.Fired.of(TOP, stage.topStops(), 1 - stage.topStops().size()));
  }

  static List<String> page() {
    List<String> page = new ArrayList<>();
    page.add("## Stages of assembly: is the fault found where it comes in?");
    page.add("");
    page.add(
        "**Simulated.** "
            + REPAIRS
            + " invented repairs of each kind, most of them with six stages: bare, cover, one cell, both, loose in the camera, ring tight. Each stage has a test of B, three firings at 1/2 and one at 1/500. All figures of them are our own:");
    page.add("");
    page.add(
        "* Slow firings scatter by 0.03 stop (median, up to 0.08), top ones by 0.025; one in twenty is two and a half times as far off.");
    page.add(
        "* Between two stages the slow speed wanders by 0.02 stop and runs in. The first firing of a stage is up to 0.08 stop slower.");
    page.add(
        "* Where a cell goes in, light is set again and the top speed moves by 0.12 stop (standard deviation), as another pupil moves it. One firing in 300 fails by accident.");
    page.add(
        "* The fault moves the slow speed by 0.15 to 1 stop, evenly in the logarithm. A pinched case hardly moves the top speed, a touching cell by half to one and a half times as much. A cover shifts all speeds, either way. Beyond half a stop firings begin to hang. The larger the drag, the more often B closes late.");
    page.add("");
    page.add(
        "Found: reported at the stage in which the fault comes in, with its cause among what to check. False: any change reported at another stage of the same repair.");
    page.add("");
    StringBuilder head = new StringBuilder("| fault | found, all sizes |");
    StringBuilder rule = new StringBuilder("|---|---|");
    for (int i = 0; i + 1 < SIZES.length; i++) {
      head.append(String.format(Locale.ROOT, " %.2f to %.2f stop |", SIZES[i], SIZES[i + 1]));
      rule.append("---|");
    }
    page.add(head + " false |");
    page.add(rule + "---|");
    for (Fault fault : Fault.values()) {
      List<Reported> all = reported(fault, REPAIRS);
      StringBuilder row = new StringBuilder("| " + fault.words() + " | ");
      row.append(fault == Fault.NOTHING ? "" : found(all, 0, 9));
      for (int i = 0; i + 1 < SIZES.length; i++) {
        row.append(" | ").append(fault == Fault.NOTHING ? "" : found(all, SIZES[i], SIZES[i + 1]));
      }
      page.add(row + String.format(Locale.ROOT, " | %.1f %% |", 100 * falsely(all)));
    }
    page.add("");
    page.add(
        "Limits of the method were chosen with these repairs in view. "
            + OTHERS
            + " others of each kind, which had no part in that:");
    page.add("");
    page.add("| fault | found, all sizes | false |");
    page.add("|---|---|---|");
    for (Fault fault : Fault.values()) {
      List<Reported> others = reported(fault, FIRST_OTHER, OTHERS);
      page.add(
          String.format(
              Locale.ROOT,
              "| %s | %s | %.1f %% |",
              fault.words(),
              fault == Fault.NOTHING ? "" : found(others, 0, 9),
              100 * falsely(others)));
    }
    page.add("");
    page.add("![Share found, against the size of the fault](images/stages-found.svg)");
    double[] sizes = IntStream.rangeClosed(1, 20).mapToDouble(i -> i / 20.0).toArray();
    PlotSvg plot =
        new PlotSvg(
                "Faults found at their stage (simulated)",
                "size of the fault at the slow speed, stops",
                "found",
                0,
                1,
                0.1)
            .zone(0.15, 1, 90, 100);
    for (Fault fault : EnumSet.complementOf(EnumSet.of(Fault.NOTHING))) {
      plot.line(
          fault.words(),
          sizes,
          Arrays.stream(sizes).map(size -> 100 * found(reported(fault, size))).toArray());
    }
    plot.write("stages-found.svg");
    return page;
  }

  private static String found(List<Reported> all, double least, double below) {
    List<Reported> its =
        all.stream()
            .filter(each -> each.repair().sizeStops() >= least)
            .filter(each -> each.repair().sizeStops() < below)
            .toList();
    return String.format(Locale.ROOT, "%.1f %%", 100 * found(its));
  }

  static double found(List<Reported> all) {
    return all.stream().filter(Reported::isFound).count() / (double) all.size();
  }

  static double falsely(List<Reported> all) {
    return all.stream().filter(Reported::isFalse).count() / (double) all.size();
  }

  /** Prints the section alone. */
  public static void main(String[] args) {
    page().forEach(System.out::println);
  }
}
