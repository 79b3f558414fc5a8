package org.halflight.validation;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.box.CalibratedOnTheBoard;
import org.halflight.box.DiscOnTheBoard;

/**
 * Writes docs/validation.md, all of it or some of its parts. From the root of a checkout:
 *
 * <pre>
 * mvn -q test-compile exec:java -Dexec.classpathScope=test \
 *     -Dexec.mainClass=org.halflight.validation.Validation -Dexec.args="intervals cases"
 * </pre>
 */
public final class Validation {
  static final long SEED = 2026;

  private static final Path PAGE = Path.of("docs/validation.md");

  private static final String MARK = "<!-- part: %s -->";

  /** What the page is made of, in its order. */
  enum Part {
    INTERVALS,
    CASES,
    DECISIONS,
    COMPARISONS,
    EARLIER,
    LEVELS,
    CALIBRATION,
    BOARD,
    LINKAGE,
    STAGES,
    QUICK,
    CLICKS,
    STARTER,
    CURTAINS,
    MUTANTS,
    PUBLISHED;

    private String label() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }

    private List<String> written() throws IOException {
      return switch (this) {
        case INTERVALS -> CellPage.cells();
        case CASES -> CellPage.cases();
        case DECISIONS -> DecisionStudy.page();
        case COMPARISONS -> ComparisonStudy.page(SEED);
        case EARLIER -> earlier();
        case LEVELS -> CorrectedLevels.page();
        case CALIBRATION -> CalibratedTimes.page();
        case BOARD -> onTheBoard();
        case LINKAGE -> CalledRight.page();
        case STAGES -> StageStudy.page();
        case QUICK -> QuickStudy.page();
        case CLICKS -> LinkageStudy.page();
        case STARTER -> starter();
        case CURTAINS -> CurtainStudy.page();
        case MUTANTS -> mutants();
        case PUBLISHED -> published();
      };
    }
  }

  private Validation() {}

  /**
   * Writes the page.
   *
   * @param args parts to write anew, such as {@code intervals}; none for all. The others stay as
   *     they stand on the page
   */
  public static void main(String[] args) throws IOException {
    Set<Part> wanted =
        args.length == 0
            ? EnumSet.allOf(Part.class)
            : Arrays.stream(args)
                .map(arg -> Part.valueOf(arg.toUpperCase(java.util.Locale.ROOT)))
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Part.class)));
    List<String> page = new ArrayList<>(beginning());
    Map<Part, List<String>> kept = Files.exists(PAGE) ? kept() : Map.of();
    for (Part part : Part.values()) {
      page.add(String.format(MARK, part.label()));
      page.add("");
      page.addAll(wanted.contains(part) ? trimmed(part.written()) : kept.get(part));
      page.add("");
    }
    Files.writeString(PAGE, String.join("\n", trimmed(page)) + "\n", StandardCharsets.UTF_8);
  }

  private static Map<Part, List<String>> kept() throws IOException {
    Map<Part, List<String>> kept = new EnumMap<>(Part.class);
    List<String> lines = new ArrayList<>();
    for (String line : Files.readAllLines(PAGE)) {
      for (Part part : Part.values()) {
        if (line.equals(String.format(MARK, part.label()))) {
          lines = new ArrayList<>();
          kept.put(part, lines);
        }
      }
      if (!line.startsWith("<!-- part: ")) {
        lines.add(line);
      }
    }
    kept.replaceAll((part, all) -> trimmed(all));
    return kept;
  }

  /** Without empty lines at either end. */
  private static List<String> trimmed(List<String> lines) {
    int from = 0;
    int to = lines.size();
    while (from < to && lines.get(from).isBlank()) {
      from++;
    }
    while (from < to && lines.get(to - 1).isBlank()) {
      to--;
    }
    return lines.subList(from, to);
  }

  private static List<String> beginning() {
    return List.of(
        "# How far the figures can be trusted",
        "",
        "All figures but those of the last section are **simulated**: invented shutters and rigs,"
            + " no camera. Seed "
            + SEED
            + ". This command makes them and rewrites this page:",
        "",
        "    mvn -q test-compile exec:java -Dexec.classpathScope=test \\",
        "        -Dexec.mainClass=org.halflight.validation.Validation",
        "",
        "The same seed gives the same page, whatever the number of processors, except for the last digits of the board's sections. With"
            + " `-Dexec.args=\"intervals cases\"` it writes only those parts; comments in this file name the others.",
        "",
        "The shutters of the first two parts share no class with the method under test"
            + " (`validation.invented`; a test holds that). They are numbers and lines, made from [protocol.md](protocol.md) and [file-formats.md](file-formats.md) alone.",
        "");
  }

  private static List<String> starter() throws IOException {
    List<String> page = new ArrayList<>(StarterStudy.page());
    try {
      page.addAll(StarterStudy.onTheBoard(Files.createTempDirectory("halflight-starter")));
    } catch (IOException | RuntimeException e) {
      throw e;
    } catch (Exception e) {
      throw new IllegalStateException("the starter rig did not get through its section", e);
    }
    return page;
  }

  private static List<String> onTheBoard() throws IOException {
    List<String> page = new ArrayList<>();
    try {
      page.addAll(CalibratedOnTheBoard.page(Files.createTempDirectory("halflight-board")));
      page.addAll(DiscOnTheBoard.page(Files.createTempDirectory("halflight-disc")));
    } catch (IOException | RuntimeException e) {
      throw e;
    } catch (Exception e) {
      throw new IllegalStateException("the board did not get through its sections", e);
    }
    return page;
  }

  /** What rules said that are gone, so that it cannot be counted anew. */
  private static List<String> earlier() throws IOException {
    try (InputStream kept = Validation.class.getResourceAsStream("rules-of-method-2.md")) {
      return new String(kept.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    }
  }

  /** What was found by a command of its own; see DEVELOPERS.md. */
  private static List<String> mutants() {
    return List.of(
        "## Would a test notice?",
        "",
        "Mutation testing (PIT) changes one operator, condition or returned value of a package at a"
            + " time and runs the tests of that package and of `uncertainty`. DEVELOPERS.md has the command. One run was reviewed, before tests were added. Its survivors:",
        "",
        "| package | mutants | noticed | survivors: bounds of a comparison | arithmetic |"
            + " conditions inverted | returned values | calls left out |",
        "|---|---|---|---|---|---|---|---|",
        "| `stats` | 972 | 849 | 56 | 32 | 4 | 8 | 23 |",
        "| `verdict` | 857 | 587 | 64 | 51 | 58 | 94 | 3 |",
        "| `exposure` | 485 | 355 | 49 | 49 | 15 | 15 | 2 |",
        "",
        "* Calls left out of `stats` were checks of a level: no test asked for a level of 0 or 1."
            + " All of them are asked for now.",
        "* Bounds of a comparison (`<` for `<=`) differ only where two computed numbers are equal"
            + " to the last digit. Where such a number is a count of firings it is tested now; the"
            + " rest is left.",
        "* Arithmetic left in `stats` is that of second passes against rounding and of brackets for"
            + " a search, which another start does not harm. Lack of fit with unequal numbers, many"
            + " ties and more than 60 firings had no test and have one now.",
        "* In `verdict` most conditions and returned values are in the summing up of firings, the calibration status, tables of smaller apertures and the judging of a run. Only tests of words, pages and commands went through them, and these are not run here. `SummedUpFiringsTest` holds them now.",
        "* Of `exposure` only the eight largest classes were run, against its own tests. The bounds and the"
            + " arithmetic left are those of thresholds (50 \u00b5s, 2 %, a floor of 1 %) that no"
            + " invented light comes near. What `EdgesAndCurve` remarks on an exposure has no test"
            + " here: sessions with dwelling blades go through it (`DwellingBladesTest`). When blades count as dipping is tested with one kind of dip only.",
        "");
  }

  private static List<String> published() {
    List<String> page = new ArrayList<>();
    page.add("## Statistics checked against published values");
    page.add("");
    page.add("Data and printed answers are in `fixtures/published`, each file with its source.");
    page.add("");
    page.add("| what | published | test |");
    page.add("|---|---|---|");
    page.add(
        "| pooled and Welch t | NIST/SEMATECH auto83b: T -12.62059 with 326, -12.94627 with 136.87"
            + " degrees of freedom | `stats.MeanShiftTest` |");
    page.add(
        "| Brown-Forsythe, Bartlett | NIST/SEMATECH gear data: W 1.7059, T 20.7859 |"
            + " `stats.ScatterTest` |");
    page.add(
        "| generalised ESD | Rosner 1983: 3 outliers, tables of R and lambda |"
            + " `stats.GeneralisedEsdTest` |");
    page.add(
        "| rank test, Hodges-Lehmann | Hollander and Wolfe, permeability: W 35, p 0.1272, shift"
            + " 0.305 | `stats.RankTestTest` |");
    page.add("| ties in ranks | counted over all ways to deal them | `stats.RankTestTest` |");
    page.add("| Theil-Sen | Sen 1968: slope 4, 93 % interval 3.71 to 4.38 | `stats.TrendTest` |");
    page.add(
        "| tolerance factors | Howe 2.2173, Natrella 1.8752, exact 4.4111 and others |"
            + " `stats.ToleranceFactorTest` |");
    page.add(
        "| mean and standard deviation | NIST StRD Mavro, Michelso, PiDigits, NumAcc 1 to 3 |"
            + " `stats.SampleTest` |");
    page.add(
        "| uncertainty budget | JCGM 100 H.1 (u_c 31.66 nm, 16.75 degrees of freedom), table G.2;"
            + " JCGM 101, 9.2 (3.92 and 3.88) | `uncertainty.UncertaintyBudgetTest` |");
    page.add(
        "| probability of conformity | JCGM 106, two examples (0.92, 0.99), from memory |"
            + " `uncertainty.UncertaintyBudgetTest` |");
    page.add(
        "| line, covariance, prediction | NIST StRD Norris; JCGM 100 H.3: -0.1712 (0.0029), 0.00218"
            + " (0.00067), -0.1494 (0.0041) at 30 degrees; common error: 145.38 degrees of freedom"
            + " | `stats.LineFitTest` |");
    page.add(
        "| hull line | a linear programme for the same 60 stamps: 411.578 ppm |"
            + " `calibration.ClockFitTest` |");
    page.add(
        "| control charts | NIST/SEMATECH flow rates 45.8159 and 55.8041; EWMA 47.4115 and 52.5884"
            + " | `calibration.RigCheckTest` |");
    page.add(
        "| gauge study | AIAG, 4th edition: 7.76 % of the variance, 27.86 % of the spread, 4 kinds"
            + " | `calibration.GaugeStudyTest` |");
    return page;
  }
}
