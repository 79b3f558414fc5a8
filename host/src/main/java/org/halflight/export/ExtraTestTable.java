package org.halflight.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTestValue;
import org.halflight.extratest.ExtraTests;
import org.halflight.job.CheckState;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.Source;

/** One row a measured value of what was tried; docs/file-formats.md says what each column means. */
public final class ExtraTestTable {
  private record Row(
      String camera,
      Source source,
      ExtraTest tried,
      ExtraTestValue value,
      Optional<RunSetup> setup) {}

  private static final List<Column<Row>> OF_ITS_OWN =
      List.of(
          Column.text("camera", Row::camera),
          Column.text("run", row -> row.tried.run() == 0 ? "" : String.valueOf(row.tried.run())),
          Column.word("phase", row -> row.tried.phase().map(Phase.WORDS::word)),
          Column.text("what", row -> row.tried.what()),
          Column.text("at", row -> row.value.at()),
          Column.text("quantity", row -> row.value.quantity()),
          Column.text("unit", row -> row.value.unit()),
          Column.number("value", row -> OptionalDouble.of(row.value.value())),
          Column.count("n", row -> row.value.n()),
          Column.number("spread", row -> row.value.spread()),
          Column.text("state", row -> CheckState.WORDS.word(row.tried.state())),
          Column.text("source", row -> Source.WORDS.word(row.source)));

  /** Behind all others what was chosen or noted for the run, as it is kept. */
  private static final List<Column<Row>> COLUMNS =
      Stream.concat(
              OF_ITS_OWN.stream(),
              // Those that came later stay behind: tables are read by place too.
              Stream.concat(
                      RunOption.ALL.stream().filter(option -> !option.isOfCurtains()),
                      RunOption.OF_CURTAINS.stream())
                  .map(
                      option ->
                          Column.<Row>word(
                              "run_" + option.name().replace('-', '_'),
                              row -> row.setup.map(run -> run.text(option)))))
          .toList();

  /** Names of its columns. */
  public static List<String> headings() {
    return Column.names(COLUMNS);
  }

  private ExtraTestTable() {}

  /**
   * The table of all that was tried.
   *
   * @param camera the owner's label; may be empty
   * @param source where the figures come from
   * @param runs what each run was set up for, in order
   */
  public static CsvTable of(
      String camera, Source source, List<ExtraTest> tried, List<RunSetup> runs) {
    List<Row> rows = new ArrayList<>();
    for (ExtraTest each : tried) {
      Optional<RunSetup> setup =
          ExtraTests.setup(new ExtraTests.Of(each.run(), each.phase()), runs);
      each.values().forEach(value -> rows.add(new Row(camera, source, each, value, setup)));
    }
    return CsvTable.of(COLUMNS, rows);
  }
}
