package org.halflight.validation;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.halflight.box.CalibratedOnTheBoard;
import org.halflight.box.DiscOnTheBoard;

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
    ComparisonStudy.page(SEED).forEach(this::say);
    CoverageStudy.page().forEach(this::say);
    CorrectedLevels.page().forEach(this::say);
    CalibratedTimes.page().forEach(this::say);
    onTheBoard();
    LinkageStudy.page().forEach(this::say);
    published();
  }

  private void onTheBoard() throws Exception {
    CalibratedOnTheBoard.page(Files.createTempDirectory("halflight-board")).forEach(this::say);
    DiscOnTheBoard.page(Files.createTempDirectory("halflight-disc")).forEach(this::say);
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

  private void say(String line) {
    lines.add(line);
  }
}
