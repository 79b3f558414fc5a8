package org.halflight.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.halflight.session.Assembly;
import org.halflight.session.Source;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.Stage;
import org.halflight.verdict.Stage.Bulb;
import org.halflight.verdict.Stage.Fired;
import org.halflight.verdict.StageChange;
import org.halflight.verdict.StageChange.OfSpeed;
import org.halflight.verdict.StageChange.Shown;
import org.halflight.verdict.StageChange.Suspect;

/**
 * Stages of assembly: two rows a stage, one for each speed, with what changed since the stage
 * before; docs/file-formats.md says what each column means.
 */
public final class StageTable {
  private record Row(
      Source source,
      int assembly,
      int stage,
      Stage its,
      Fired fired,
      double plusMinus,
      Optional<StageChange> change,
      Optional<OfSpeed> compared) {
    OptionalDouble known(Function<OfSpeed, Double> figure) {
      return compared
          .filter(of -> of.shown() != Shown.NOT_KNOWN)
          .map(figure)
          .map(OptionalDouble::of)
          .orElse(OptionalDouble.empty());
    }

    Optional<String> bulb(Function<Bulb, Stage.Seen> part) {
      return its.bulb().map(part).map(Stage.Seen.WORDS::word);
    }
  }

  private static final List<Column<Row>> COLUMNS =
      List.of(
          Column.text("source", row -> Source.WORDS.word(row.source)),
          Column.text("assembly", row -> String.valueOf(row.assembly)),
          Column.text("stage", row -> String.valueOf(row.stage)),
          Column.text("cover", row -> Assembly.Switch.COVER.word(row.its.assembly())),
          Column.text("cells", row -> Assembly.Switch.CELLS.word(row.its.assembly())),
          Column.text("place", row -> Assembly.Switch.PLACE.word(row.its.assembly())),
          Column.text("marked_speed", row -> row.fired.speed().label()),
          Column.text("firings", row -> String.valueOf(row.fired.errors().n())),
          Column.text("failed", row -> String.valueOf(row.fired.failed())),
          Column.number("mean_stops", row -> Column.optional(row.fired.errors().mean().known())),
          Column.number(
              "mean_plus_minus_stops",
              row ->
                  row.fired.errors().n() == 0
                      ? OptionalDouble.empty()
                      : OptionalDouble.of(row.plusMinus)),
          Column.word("b_tap", row -> row.bulb(Bulb::tap)),
          Column.word("b_hold", row -> row.bulb(Bulb::hold)),
          Column.word("b_drop", row -> row.bulb(Bulb::drop)),
          Column.word(
              "changed",
              row ->
                  row.change.map(
                      its ->
                          its.changed().stream()
                              .map(Assembly.Part.WORDS::word)
                              .collect(Collectors.joining(" ")))),
          Column.number("change_stops", row -> row.known(OfSpeed::stops)),
          Column.number("change_plus_minus_stops", row -> row.known(OfSpeed::plusMinus)),
          Column.word("finding", row -> row.compared.map(of -> Shown.WORDS.word(of.shown()))),
          Column.word(
              "look_at",
              row ->
                  row.change.map(
                      its ->
                          its.suspects().stream()
                              .map(Suspect.WORDS::word)
                              .collect(Collectors.joining(" ")))),
          Column.word(
              "optics_differ", row -> row.change.map(its -> its.opticsDiffer() ? "yes" : "no")));

  private StageTable() {}

  /** Names of its columns. */
  public static List<String> headings() {
    return Column.names(COLUMNS);
  }

  /** The table of the assemblies of a session or a visit, in order. */
  public static CsvTable of(Source source, List<AssemblyStages> assemblies) {
    List<Row> rows = new ArrayList<>();
    for (int number = 1; number <= assemblies.size(); number++) {
      AssemblyStages assembly = assemblies.get(number - 1);
      for (int stage = 1; stage <= assembly.stages().size(); stage++) {
        Stage its = assembly.stages().get(stage - 1);
        Optional<StageChange> change = assembly.change(stage);
        rows.add(
            new Row(
                source,
                number,
                stage,
                its,
                its.slow(),
                assembly.slowPlusMinus(its),
                change,
                change.map(StageChange::slow)));
        rows.add(
            new Row(
                source,
                number,
                stage,
                its,
                its.top(),
                assembly.topPlusMinus(its),
                change,
                change.map(StageChange::top)));
      }
    }
    return CsvTable.of(COLUMNS, rows);
  }
}
