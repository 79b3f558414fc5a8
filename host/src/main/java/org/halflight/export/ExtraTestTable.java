package org.halflight.export;

import java.util.List;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTestValue;
import org.halflight.job.CheckState;
import org.halflight.session.Phase;
import org.halflight.session.Source;

/** One row a measured value of what was tried; docs/file-formats.md says what each column means. */
public final class ExtraTestTable {
  private static final List<String> HEADINGS =
      List.of(
          "camera",
          "run",
          "phase",
          "what",
          "at",
          "quantity",
          "unit",
          "value",
          "n",
          "spread",
          "state",
          "source");

  /** Names of its columns. */
  public static List<String> headings() {
    return HEADINGS;
  }

  private ExtraTestTable() {}

  /**
   * The table of all that was tried.
   *
   * @param camera the owner's label; may be empty
   * @param source where the figures come from
   */
  public static CsvTable of(String camera, Source source, List<ExtraTest> tried) {
    return new CsvTable(
        HEADINGS,
        tried.stream()
            .flatMap(each -> each.values().stream().map(v -> row(camera, source, each, v)))
            .toList());
  }

  private static List<String> row(
      String camera, Source source, ExtraTest tried, ExtraTestValue value) {
    return List.of(
        camera,
        tried.run() == 0 ? "" : String.valueOf(tried.run()),
        tried.phase().map(Phase.WORDS::word).orElse(""),
        tried.what(),
        value.at(),
        value.quantity(),
        value.unit(),
        Cells.number(value.value()),
        String.valueOf(value.n()),
        Cells.number(value.spread()),
        CheckState.WORDS.word(tried.state()),
        Source.WORDS.word(source));
  }
}
