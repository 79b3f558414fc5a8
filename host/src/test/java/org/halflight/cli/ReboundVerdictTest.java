package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.export.CsvTable;
import org.halflight.fixtures.LightLines;
import org.junit.jupiter.api.Test;

/**
 * Light after the closing from session lines to the verdict, through the commands. All light is
 * trapezoids, whose areas are worked out by hand.
 */
class ReboundVerdictTest extends CommandTests {
  private static final double S125 = 1 / 128.0;
  private static final double S250 = 1 / 256.0;
  private static final double S500 = 1 / 512.0;

  private CsvTable firings = new CsvTable(List.of("none"), List.of());
  private CsvTable speeds = firings;

  @Test
  void aReboundOfOneHundredAndTwentyFifthIsExposure() throws IOException {
    LightLines lines = new LightLines("speeds=1/125 firings=5 tolerance=1/3");
    for (double scatter : new double[] {-0.02, -0.01, 0, 0.01, 0.02}) {
      // Main opening 0.20 stop slow; a full rebound of 4.4 ms, a triangle of 2.2 ms of light.
      lines
          .light(S125 * stops(0.2 + scatter), 1e-3, 1)
          .dark(1.5e-3)
          .light(2.2e-3, 2.2e-3, 1)
          .over();
    }
    export(lines);

    // log2(2^0.2 + 2.2 ms * 128): the main opening alone would be within a third of a stop.
    assertThat(number(speeds, "mean_error_stops")).isCloseTo(0.516, within(2e-3));
    assertThat(cell(speeds, "placement")).isEqualTo("slow");
    assertThat(number(speeds, "main_ms")).isCloseTo(1e3 * S125 * stops(0.2), within(2e-3));
    assertThat(number(speeds, "rebound_ms")).isCloseTo(2.2, within(2e-3));
    assertThat(cell(speeds, "rebound_look")).isEqualTo("seen");
    assertThat(number(firings, "effective_ms"))
        .isCloseTo(number(firings, "main_ms") + number(firings, "rebound_ms"), within(1e-5));
    assertThat(replayed())
        .contains("1/125 runs 0.52 stop slow. Main opening 8.97 ms, rebound 2.20 ms; the error")
        .contains("Rebound: main opening")
        .doesNotContain("not checked");
  }

  @Test
  void aReboundOfOneFiveHundredthIsExposure() throws IOException {
    LightLines lines = new LightLines("speeds=1/500 firings=5 tolerance=1/2");
    for (double scatter : new double[] {-0.02, -0.01, 0, 0.01, 0.02}) {
      lines
          .light(S500 * stops(0.3 + scatter), 0.8e-3, 1)
          .dark(1.5e-3)
          .light(0.675e-3, 0.675e-3, 1)
          .over();
    }
    export(lines);

    assertThat(number(speeds, "mean_error_stops")).isCloseTo(0.657, within(2e-3));
    assertThat(cell(speeds, "placement")).isNotEqualTo("within");
    assertThat(number(speeds, "rebound_ms")).isCloseTo(0.675, within(1e-3));
  }

  @Test
  void lightLaterThanTenMillisecondsIsADoubleAndNeverWithin() throws IOException {
    LightLines lines = new LightLines("speeds=1/125 firings=3 tolerance=1/3");
    for (int i = 0; i < 3; i++) {
      // A second opening of 0.1 ms, little more than a hundredth of the first.
      lines.light(S125, 1e-3, 1).dark(12e-3).light(0.1e-3, 0.05e-3, 1).over();
    }
    export(lines);

    assertThat(firings.rows()).hasSize(3);
    assertThat(firings.rows())
        .allMatch(row -> row.get(firings.headings().indexOf("outcome")).equals("double"));
    assertThat(cell(firings, "remarks")).contains("light-apart");
    assertThat(cell(speeds, "placement")).isEqualTo("too-few");
    assertThat(cell(speeds, "double")).isEqualTo("3");
  }

  @Test
  void aSecondOpeningWithinTenMillisecondsIsExposureWhateverItsShare() throws IOException {
    LightLines lines = new LightLines("speeds=1/500 firings=3 tolerance=1/2");
    for (double scatter : new double[] {-0.01, 0, 0.01}) {
      lines.light(S500 * stops(scatter), 0.4e-3, 1).dark(3e-3).light(S500 / 2, 0.4e-3, 1).over();
    }
    export(lines);

    assertThat(cell(firings, "outcome")).isEqualTo("timed");
    assertThat(number(speeds, "mean_error_stops")).isCloseTo(0.585, within(2e-3));
    assertThat(cell(speeds, "placement")).isNotEqualTo("within");
  }

  @Test
  void aFaintReboundWidensTheUncertainty() throws IOException {
    // Two triangles of nearly the same light: one passes the high level, the other does not.
    export(rebounds(0.3e-3, 0.3e-3, 1));
    double bright = number(speeds, "expanded_stops");
    export(rebounds(0.3e-3, 1e-3, 0.3));

    assertThat(number(firings, "rebound_ms")).isCloseTo(0.98 * 0.3, within(5e-3));
    assertThat(cell(firings, "remarks")).isEqualTo("late-light low-level-only");
    assertThat(number(firings, "outside_light_bound_ms"))
        .isCloseTo(0.4 * number(firings, "rebound_ms"), within(1e-5));
    assertThat(number(speeds, "expanded_stops")).isGreaterThan(1.5 * bright);
    assertThat(replayed()).contains("its uncertainty is 40 %");
  }

  private static LightLines rebounds(double area, double ramp, double peak) {
    LightLines lines = new LightLines("speeds=1/500 firings=3 tolerance=1/2");
    for (double scatter : new double[] {-0.01, 0, 0.01}) {
      lines.light(S500 * stops(scatter), 0.4e-3, 1).dark(3e-3).light(area, ramp, peak).over();
    }
    return lines;
  }

  @Test
  void whereNobodyLookedTheVerdictSaysSoFromOneHundredAndTwentyFifthUp() throws IOException {
    LightLines lines = new LightLines("speeds=1/60,1/125,1/250,1/500 firings=3 tolerance=1/2");
    for (double seconds : new double[] {1 / 64.0, S125, S250, S500}) {
      for (double scatter : new double[] {-0.01, 0, 0.01}) {
        lines.light(seconds * stops(scatter), 0.4e-3, 1).over();
      }
    }
    export(lines);

    assertThat(column("placement")).containsOnly("within");
    assertThat(column("rebound_look")).containsOnly("not-looked-at");
    assertThat(replayed().lines())
        .anyMatch(line -> line.startsWith("1/60 is within") && !line.contains("ebound"))
        .anyMatch(line -> line.matches("1/125 is within .*\\. Rebound not checked\\.(.*)"))
        .anyMatch(line -> line.matches("1/250 is within .*\\. Rebound not checked\\.(.*)"))
        .anyMatch(line -> line.matches("1/500 is within .*\\. Rebound not checked\\.(.*)"));
  }

  @Test
  void thePageSaysWhereNobodyLookedAndOfWhatTheTimesAre() throws IOException {
    LightLines lines = new LightLines("speeds=1/60,1/125,1/500 firings=3 tolerance=1/2");
    for (double scatter : new double[] {-0.01, 0, 0.01}) {
      lines.light(stops(scatter) / 64, 0.4e-3, 1).over();
    }
    for (double scatter : new double[] {-0.01, 0, 0.01}) {
      lines.light(S125 * stops(scatter), 0.4e-3, 1).over();
    }
    for (double scatter : new double[] {-0.01, 0, 0.01}) {
      lines.light(S500 * stops(scatter), 0.4e-3, 1).dark(1e-3).light(0.2e-3, 0.2e-3, 1).over();
    }
    Path session = lines.write(folder.resolve("lines.session"));
    Path page = folder.resolve("page.pdf");
    assertThat(execute("page", session.toString(), "--bench", "--out", page.toString())).isZero();

    String text;
    try (PDDocument document = Loader.loadPDF(page.toFile())) {
      text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
    assertThat(text)
        .contains("Rebound not checked: 1/125.")
        .contains("adds up to 0.28 stop at 1/500")
        .contains("* Rebound not checked.")
        .contains("As left, 1/500: main opening 1.95 ms, rebound 0.200 ms; the time counts both.");
  }

  @Test
  void oneLongCurveIsALookForTheWholeRun() throws IOException {
    export(lookedOnce(0));

    assertThat(column("rebound_look")).containsOnly("none");
    assertThat(replayed()).doesNotContain("not checked");
  }

  @Test
  void aFaintReboundThatOneCurveSawCountsAtEverySpeed() throws IOException {
    // A triangle that peaks at a fifth of full light, below the low level: 4 ms of base, 0.4 ms.
    export(lookedOnce(0.4e-3));

    assertThat(column("rebound_look")).containsOnly("seen");
    assertThat(number(speeds, "rebound_by_curve_ms")).isCloseTo(0.4, within(0.02));
    // log2(1 + 0.4 ms / 1.953 ms)
    int last = speeds.rows().size() - 1;
    int mean = speeds.headings().indexOf("mean_error_stops");
    assertThat(Double.parseDouble(speeds.rows().get(last).get(mean)))
        .isCloseTo(0.2689, within(0.01));
    assertThat(replayed()).contains("Only the light curve saw").doesNotContain("not checked");
  }

  @Test
  void twoRunsOfWhichOnlyOneLookedAreComparedByTheirEdges() throws IOException {
    Path looked = lookedOnce(0.4e-3).write(folder.resolve("looked.session"));
    Path not = lookedOnce(-1).write(folder.resolve("not.session"));
    Path table = folder.resolve("comparison.csv");
    assertThat(
            execute(
                "compare",
                looked.toString(),
                "--before",
                "as-left",
                "--after",
                "as-left",
                "--with",
                not.toString(),
                "--table",
                table.toString()))
        .describedAs(out.toString(StandardCharsets.UTF_8))
        .isZero();

    CsvTable compared = CsvTable.read(table);
    int shift = compared.headings().indexOf("shift_stops");
    assertThat(compared.rows().subList(0, 2))
        .allMatch(row -> Math.abs(Double.parseDouble(row.get(shift))) < 1e-4);
  }

  /** Two speeds, and a long curve of one firing of the slower one; none below 0. */
  private static LightLines lookedOnce(double area) {
    boolean looks = area >= 0;
    LightLines lines = new LightLines("speeds=1/250,1/500 firings=3 tolerance=1/2");
    for (double seconds : new double[] {S250, S500}) {
      for (int i = 0; i < 3; i++) {
        lines.light(seconds * stops(0.01 * (i - 1)), 0.4e-3, 1);
        if (looks && seconds == S250 && i == 1) {
          (area > 0 ? lines.dark(2e-3).light(area, 2e-3, 0.2) : lines).over(11e-3);
        } else {
          lines.over();
        }
      }
    }
    return lines;
  }

  private static double stops(double stops) {
    return Math.pow(2, stops);
  }

  private void export(LightLines lines) throws IOException {
    Path session = lines.write(folder.resolve("lines.session"));
    Path each = folder.resolve("firings.csv");
    Path summed = folder.resolve("speeds.csv");
    assertThat(
            execute(
                "export",
                session.toString(),
                "--force",
                "--firings",
                each.toString(),
                "--speeds",
                summed.toString()))
        .describedAs(out.toString(StandardCharsets.UTF_8))
        .isZero();
    firings = CsvTable.read(each);
    speeds = CsvTable.read(summed);
  }

  private String replayed() {
    assertThat(execute("replay", folder.resolve("lines.session").toString(), "--each")).isZero();
    return out.toString(StandardCharsets.UTF_8);
  }

  private static String cell(CsvTable table, String column) {
    return table.rows().get(0).get(table.headings().indexOf(column));
  }

  private static double number(CsvTable table, String column) {
    return Double.parseDouble(cell(table, column));
  }

  private List<String> column(String name) {
    int at = speeds.headings().indexOf(name);
    return speeds.rows().stream().map(row -> row.get(at)).toList();
  }
}
