package org.halflight.export;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.halflight.job.Camera;
import org.halflight.job.Detail;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.record.WorkshopRecord;
import org.halflight.session.Adjuster;
import org.halflight.session.OwnTravel;
import org.halflight.session.TurnCount;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ShutterKind;

/** One row a visit: what is noted of it; docs/file-formats.md says what each column means. */
public final class VisitTable {
  private record Row(
      Camera camera,
      Visit visit,
      StripSheet sheet,
      int entries,
      int photos,
      Map<Adjuster, TurnCount> turns) {
    OptionalDouble found(Adjuster spring) {
      return turns.containsKey(spring) ? turns.get(spring).found() : OptionalDouble.empty();
    }

    OptionalDouble turned(Adjuster spring) {
      return turns.containsKey(spring)
          ? OptionalDouble.of(turns.get(spring).change())
          : OptionalDouble.empty();
    }

    OptionalDouble ownTravel(ToDoubleFunction<OwnTravel> part) {
      return camera.curtains().ownTravel().stream().mapToDouble(part).findFirst();
    }

    Optional<String> hand(SheetItem item, Function<SheetEntry, String> part) {
      return sheet.of(item).map(StripSheet.Line::now).map(part);
    }

    /** The greatest distance from flange to film less the least, in mm; of one point none. */
    Optional<String> spread() {
      List<BigDecimal> points =
          Arrays.stream(SheetItem.values())
              .filter(SheetItem::isFlange)
              .flatMap(item -> sheet.of(item).stream())
              .map(line -> new BigDecimal(line.now().words()))
              .sorted()
              .toList();
      return points.size() < 2
          ? Optional.empty()
          : Optional.of(points.get(points.size() - 1).subtract(points.get(0)).toPlainString());
    }
  }

  private static final List<Column<Row>> COLUMNS =
      Stream.of(
              Stream.of(
                  Column.<Row>text("camera", row -> row.camera.label()),
                  Column.<Row>text("job", row -> row.visit.jobNumber()),
                  Column.<Row>text("received", row -> row.visit.receivedAt().toString()),
                  Column.<Row>word(
                      "handed_back", row -> row.visit.handedBackAt().map(Instant::toString)),
                  Column.<Row>text("serial", row -> row.camera.serialNumber()),
                  Column.<Row>text("shutter", row -> ShutterKind.WORDS.word(row.camera.shutter()))),
              Arrays.stream(Detail.values()).map(VisitTable::detail),
              SheetItem.byHand().stream().flatMap(VisitTable::byHand),
              Stream.of(
                  Column.<Row>word("flange_spread_mm", Row::spread),
                  Column.<Row>count("work_entries", Row::entries),
                  Column.<Row>count("photos", Row::photos),
                  Column.<Row>number(
                      "own_travel_ms", row -> row.ownTravel(OwnTravel::milliseconds)),
                  Column.<Row>number(
                      "own_travel_span_mm", row -> row.ownTravel(OwnTravel::spanMillimetres)),
                  Column.<Row>word(
                      "x_speed", row -> row.camera.curtains().xSpeed().map(MarkedSpeed::label)),
                  Column.<Row>number(
                      "first_tension_found", row -> row.found(Adjuster.FIRST_TENSION)),
                  Column.<Row>number(
                      "first_tension_turned", row -> row.turned(Adjuster.FIRST_TENSION)),
                  Column.<Row>number(
                      "second_tension_found", row -> row.found(Adjuster.SECOND_TENSION)),
                  Column.<Row>number(
                      "second_tension_turned", row -> row.turned(Adjuster.SECOND_TENSION))))
          .flatMap(each -> each)
          .toList();

  private VisitTable() {}

  private static Column<Row> detail(Detail detail) {
    return Column.text(
        Detail.WORDS.word(detail).replace('-', '_'),
        row -> row.camera.details().and(row.visit.details()).of(detail));
  }

  /** What was measured by hand, and how; a distance needs no more than its unit. */
  private static Stream<Column<Row>> byHand(SheetItem item) {
    String name = SheetItem.WORDS.word(item).replace('-', '_');
    Column<Row> value =
        Column.word(
            item.isFlange() ? name + "_mm" : name, row -> row.hand(item, SheetEntry::words));
    return item.isFlange()
        ? Stream.of(value)
        : Stream.of(value, Column.word(name + "_how", row -> row.hand(item, SheetEntry::place)));
  }

  /** Names of its columns. */
  public static List<String> headings() {
    return Column.names(COLUMNS);
  }

  /** The table of the visits of these cameras, each camera's first visit first. */
  public static CsvTable of(WorkshopRecord record, List<Camera> cameras) {
    return CsvTable.of(
        COLUMNS,
        cameras.stream()
            .flatMap(
                camera ->
                    record.visits(camera.id()).stream()
                        .map(
                            visit ->
                                new Row(
                                    camera,
                                    visit,
                                    record.stripSheet(visit.id()),
                                    record.workLog(visit.id()).size(),
                                    record.photos(visit.id()).size(),
                                    TurnCount.of(
                                        record.workLog(visit.id()).stream()
                                            .flatMap(entry -> entry.turn().stream())
                                            .toList()))))
            .toList());
  }
}
