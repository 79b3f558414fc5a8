package org.halflight.validation;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.box.CalibratedOnTheBoard;
import org.halflight.box.DiscOnTheBoard;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.FindingPower;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.ShiftFinding;

/**
 * Writes docs/validation.md. From the root of a checkout:
 *
 * <pre>
 * mvn -q test-compile exec:java -Dexec.classpathScope=test \
 *     -Dexec.mainClass=org.halflight.validation.Validation
 * </pre>
 */
public final class Validation {
  static final long SEED = 2026;
  private static final int PAIRS = 1000;
  private static final List<MarkedSpeed> DIAL = Dial.find("leaf").orElseThrow().speeds();
  private static final MarkedSpeed FAST = MarkedSpeed.parse("1/60");
  private static final MarkedSpeed SLOW = MarkedSpeed.parse("1/8");

  private final List<String> lines = new ArrayList<>();

  private Validation() {}

  public static void main(String[] args) throws Exception {
    Path to = Path.of(args.length > 0 ? args[0] : "docs/validation.md");
    Validation validation = new Validation();
    validation.write();
    Files.writeString(to, String.join("\n", validation.lines) + "\n", StandardCharsets.UTF_8);
  }

  private void write() throws Exception {
    say("# How far the comparison of two runs can be trusted");
    say("");
    say("All figures but those of the last section are **simulated**: invented");
    say("shutters of the practice model, no camera. Seed " + SEED + ". Made by");
    say("");
    say("    mvn -q test-compile exec:java -Dexec.classpathScope=test \\");
    say("        -Dexec.mainClass=org.halflight.validation.Validation");
    say("");
    say(
        "which writes this page anew; the same seed brings the same page, but for the last digits of"
            + " the board's sections. The errors of the firings");
    say(
        "are those of the model itself, without a rig in between: only the judgements are on trial");
    say("here. A dial has ten marked speeds, each run begins after a rest and fires them all.");
    say("");
    falseAlarms();
    dirtyTrain();
    power();
    CoverageStudy.page().forEach(this::say);
    CorrectedLevels.page().forEach(this::say);
    CalibratedTimes.page().forEach(this::say);
    onTheBoard();
    published();
  }

  private void onTheBoard() throws Exception {
    CalibratedOnTheBoard.page(Files.createTempDirectory("halflight-board")).forEach(this::say);
    DiscOnTheBoard.page(Files.createTempDirectory("halflight-disc")).forEach(this::say);
  }

  private void falseAlarms() {
    say("## False alarms");
    say("");
    say(
        "Pairs of runs of the same unchanged shutter. 'Anything': the pairs in which any mean, the");
    say(
        "whole dial or any scatter was called changed. It must stay at or below 5 %; by design the");
    say(
        String.format(
            Locale.ROOT,
            "means have %.1f %% of it, the scatter of the two halves of the dial %.1f %%, the"
                + " scatter of single speeds %.1f %%.",
            100 * RunComparison.SHIFT_ALPHA,
            100 * RunComparison.GROUP_SCATTER_ALPHA,
            100 * RunComparison.SCATTER_ALPHA));
    say("");
    say("| shutter | firings | pairs | means | scatter | anything | upper 95 % limit of that |");
    say("|---|---|---|---|---|---|---|");
    for (int firings : new int[] {3, 4, 5, 6, 10}) {
      alarms("sound", InventedShutters.soundLeaf(DIAL, SEED), firings);
      alarms(
          "dirty slow-speed train, creeping and hanging",
          InventedShutters.dirtySlowTrain(DIAL, SEED),
          firings);
    }
    say("");
  }

  private void alarms(String name, LeafShutter shutter, int firings) {
    FalseAlarms found = FalseAlarms.of(shutter, firings, PAIRS);
    say(
        String.format(
            Locale.ROOT,
            "| %s | %d | %d | %s | %s | **%s** | %s |",
            name,
            firings,
            PAIRS,
            percent(found.means(), PAIRS),
            percent(found.scatters(), PAIRS),
            percent(found.anything(), PAIRS),
            percent(FalseAlarms.highest(found.anything(), PAIRS))));
  }

  private void dirtyTrain() {
    say("## A dirty train before and after cleaning");
    say("");
    say("The slow-speed train's speeds (1 s to 1/15) are 0.5 to 0.9 stop slow and scatter by 0.12");
    say("stop before, 0.06 and 0.03 stop after; the fast speeds are left as they are.");
    say("");
    say(
        "| firings | pairs | slow speeds whose shift is found | the slow speeds and no others named | "
            + "slow speeds said to run more evenly | anything called changed at the fast speeds | "
            + "runs before that point to the train | runs after in which nothing stands out |");
    say("|---|---|---|---|---|---|---|---|");
    for (int firings : new int[] {3, 5, 10}) {
      CleanedTrain cleaned = CleanedTrain.of(DIAL, SEED, firings, PAIRS);
      say(
          String.format(
              Locale.ROOT,
              "| %d | %d | %s | %s | %s | %s | %s | %s |",
              firings,
              PAIRS,
              percent(cleaned.slowShifts(), cleaned.slowSpeeds()),
              percent(cleaned.slowReach(), PAIRS),
              percent(cleaned.slowScatter(), PAIRS),
              percent(cleaned.fastCalledChanged(), PAIRS),
              percent(cleaned.signature(), PAIRS),
              percent(cleaned.quietAfter(), PAIRS)));
    }
    say("");
    say(
        "With three firings no scatter is tested (four each are the least for half a dial, seven for");
    say("one speed).");
    say("");
  }

  private void power() {
    FindingPower power = new FindingPower(DIAL.size() + 1, DIAL.size());
    say("## Power");
    say("");
    say("The shift of one speed among ten that is found in 8 of 10 cases. 'Stated' is what the");
    say("program says: Welch's test on drawn samples of equal scatter at the first step of Holm's");
    say(
        "method, in standard deviations of one firing. 'Simulated' is counted in whole comparisons");
    say(
        "("
            + PAIRS
            + " pairs) at 1/60 of the sound shutter, which scatters by 0.02 stop, and at 1/8 of");
    say("the dirty one, which scatters by 0.12 stop and creeps.");
    say("");
    say(
        "| firings | stated, in sd | scatter 0.02 stop: stated | simulated | scatter 0.12 stop: stated | simulated |");
    say("|---|---|---|---|---|---|");
    for (int firings : new int[] {3, 5, 10}) {
      double sds = power.shiftInSds(firings);
      double fast =
          new ShiftPowerRuns(InventedShutters.soundLeaf(DIAL, SEED), FAST, firings, PAIRS)
              .foundInEightOfTen(4 * 0.02 * sds);
      double slow =
          new ShiftPowerRuns(InventedShutters.dirtySlowTrain(DIAL, SEED), SLOW, firings, PAIRS)
              .foundInEightOfTen(4 * 0.12 * sds);
      say(
          String.format(
              Locale.ROOT,
              "| %d | %.1f | %.3f stop | %.3f stop | %.2f stop | %.2f stop |",
              firings,
              sds,
              0.02 * sds,
              fast,
              0.12 * sds,
              slow));
    }
    say("");
    say(
        "'Less than a tenth of a stop' where the true change is exactly that, at 1/60 of the sound");
    say("shutter; it may be said in 5 % of cases:");
    say("");
    say("| firings | said |");
    say("|---|---|");
    for (int firings : new int[] {3, 5, 10}) {
      double said =
          new ShiftPowerRuns(InventedShutters.soundLeaf(DIAL, SEED), FAST, firings, PAIRS)
              .part(0.1, ShiftFinding.LESS_THAN_A_TENTH, ShiftFinding.CHANGED_BY_LITTLE);
      say(String.format(Locale.ROOT, "| %d | %s |", firings, percent(said)));
    }
    say("");
    say(
        "A threefold change of the scatter of one speed among ten, by Brown and Forsythe; the test is");
    say("made from seven firings up:");
    say("");
    say("| firings | found |");
    say("|---|---|");
    for (int firings : new int[] {7, 10, 15, 20, 30}) {
      say(
          String.format(
              Locale.ROOT, "| %d | %s |", firings, percent(power.scatterChance(firings))));
    }
    say("");
    say(
        "Firings each that find it in 8 of 10 cases: "
            + power.scatterFirings().orElseThrow()
            + ".");
    say("");
  }

  private void published() {
    say("## Where the statistics are held against published values");
    say("");
    say("Data and printed answers are in `fixtures/published`, each file with its source.");
    say("");
    say("| what | published | test |");
    say("|---|---|---|");
    say(
        "| pooled and Welch t | NIST/SEMATECH auto83b: T -12.62059 with 326, -12.94627 with 136.87 degrees of freedom | `stats.MeanShiftTest` |");
    say(
        "| Brown-Forsythe, Bartlett | NIST/SEMATECH gear data: W 1.7059, T 20.7859 | `stats.ScatterTest` |");
    say(
        "| generalised ESD | Rosner 1983: 3 outliers, tables of R and lambda | `stats.GeneralisedEsdTest` |");
    say(
        "| rank test, Hodges-Lehmann | Hollander and Wolfe, permeability: W 35, p 0.1272, shift 0.305 | `stats.RankTestTest` |");
    say("| ties in ranks | counted over all ways to deal them | `stats.RankTestTest` |");
    say("| Theil-Sen | Sen 1968: slope 4, 93 % interval 3.71 to 4.38 | `stats.TrendTest` |");
    say(
        "| tolerance factors | Howe 2.2173, Natrella 1.8752, exact 4.4111 and others | `stats.ToleranceFactorTest` |");
    say(
        "| mean and standard deviation | NIST StRD Mavro, Michelso, PiDigits, NumAcc 1 to 3 | `stats.SampleTest` |");
    say(
        "| uncertainty budget | JCGM 100 H.1 (u_c 31.66 nm, 16.75 degrees of freedom), table G.2; JCGM 101, 9.2 (3.92 and 3.88) | `uncertainty.UncertaintyBudgetTest` |");
    say(
        "| chance of conformity | JCGM 106, two examples (0.92, 0.99), from memory | `uncertainty.UncertaintyBudgetTest` |");
    say("| quantiles | NIST/SEMATECH wafers, R6 to R8 | `stats.QuantileRuleTest` |");
    say(
        "| line, covariance, prediction | NIST StRD Norris; JCGM 100 H.3: -0.1712 (0.0029), 0.00218 (0.00067), -0.1494 (0.0041) at 30 degrees; common error: 145.38 degrees of freedom | `stats.LineFitTest` |");
    say(
        "| hull line | a linear programme for the same 60 stamps: 411.578 ppm | `calibration.ClockFitTest` |");
    say(
        "| control charts | NIST/SEMATECH flow rates 45.8159 and 55.8041; EWMA 47.4115 and 52.5884 | `calibration.RigCheckTest` |");
    say(
        "| gauge study | AIAG, 4th edition: 7.76 % of the variance, 27.86 % of the spread, 4 kinds | `calibration.GaugeStudyTest` |");
    say(
        "| Allan deviations | NBS Monograph 140, ten phases: 91.22945, 115.8082, 85.95287 | `calibration.AllanDeviationTest` |");
  }

  private static String percent(int found, int of) {
    return percent((double) found / of);
  }

  private static String percent(double part) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * part);
  }

  private void say(String line) {
    lines.add(line);
  }
}
