package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.halflight.job.Camera;
import org.halflight.job.DryRun;
import org.halflight.job.Id;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.record.CameraLine;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;
import org.halflight.words.SheetWords;
import org.junit.jupiter.api.Test;

class SheetTextTest {
  private static final Instant NINE = Instant.parse("2026-11-30T09:05:00Z");

  private final List<SheetEntry> entries = new ArrayList<>();

  @Test
  void aLineAsksBackWhatWasNotedAndKeepsWhatItSaid() {
    note(SheetItem.SHIMS, "under the flange", "0.10, 0.05");
    assertThat(cells(0))
        .containsExactly(
            "to tick",
            "shims: 2 shims, 0.10, 0.05 mm in this order, under the flange",
            "30 Nov 2026");
    assertThat(text().said(0))
        .isEqualTo(
            "1. Noted: 2 shims, 0.10, 0.05 mm in this order, under the flange. Are both in?"
                + " (noted 30 Nov 2026, 09:05)");
    entries.add(text().line(0).now().corrected("", "0.10", NINE.plusSeconds(60)));
    entries.add(text().line(0).now().turned(SheetState.BACK, NINE.plusSeconds(3600)));
    assertThat(cells(0)).startsWith("ticked", "shims: 1 shim, 0.10 mm");
    assertThat(text().said(0))
        .contains("Ticked 30 Nov 2026, 10:05.")
        .contains(
            "Before: 2 shims, 0.10, 0.05 mm in this order, under the flange (30 Nov 2026, 09:05).");
  }

  @Test
  void whatIsMeasuredByHandSaysSo() {
    note(SheetItem.FLANGE_TOP_LEFT, "depth gauge", "43.97");
    assertThat(cells(0)).startsWith("by hand", "flange to film, top left: 43.97 mm, depth gauge");
    assertThat(text().said(0)).endsWith("The rig does not measure them.");
    assertThat(SheetWords.open(text().sheet())).isEmpty();
  }

  @Test
  void whatIsNotTickedIsNamed() {
    note(SheetItem.SPRING_TURNS, "", "1 3/4");
    note(SheetItem.SHIMS, "", "0.10");
    note(SheetItem.OTHER, "", "cam");
    entries.add(text().line(0).now().turned(SheetState.STRUCK, NINE));
    assertThat(SheetWords.open(text().sheet()))
        .contains("Not ticked on the strip sheet: spring turns: 1 3/4; shims: 1 shim, 0.10 mm.");
    assertThat(cells(0)).as("the newest on top").startsWith("struck out");
    assertThat(cells(2)).startsWith("to tick", "spring turns: 1 3/4");
    assertThat(text().said(-1)).startsWith("Select a line");
  }

  @Test
  void everyItemHasItsWords() {
    for (SheetItem item : SheetItem.values()) {
      SheetEntry entry =
          StripSheet.EMPTY.noted(new Id<>(1), item, "", item == SheetItem.SHIMS ? "?" : "1", NINE);
      String all =
          SheetWords.name(item)
              + SheetWords.hint(item)
              + SheetWords.bad(item, "")
              + SheetWords.bad(item, "x")
              + (item.isAskedBack() ? SheetWords.question(entry) : "");
      assertThat(all).doesNotContain("{");
    }
  }

  @Test
  void theCamerasThatAreLongestDueForADryRunAreNamed() {
    Instant now = Instant.parse("2026-11-30T09:00:00Z");
    assertThat(HistoryText.due(lines(0), now, ZoneOffset.UTC)).isEmpty();
    assertThat(HistoryText.due(lines(2), now, ZoneOffset.UTC))
        .isEqualTo(
            "J-2 has been due for its dry run since yesterday.\n"
                + "J-1 is due for its dry run today.");
    assertThat(HistoryText.due(lines(5), now, ZoneOffset.UTC))
        .startsWith("J-5 has been due for its dry run since 26 November 2026.")
        .endsWith("And 2 more. \"halflight record due\" lists them all.");
    assertThat(HistoryText.moved(Optional.empty(), ZoneOffset.UTC))
        .startsWith("Not comparable yet");
  }

  private static List<CameraLine> lines(int due) {
    Camera camera = Camera.of("A", ShutterKind.LEAF, Dial.builtIn().get(0));
    return IntStream.rangeClosed(1, due)
        .mapToObj(
            days ->
                new CameraLine(
                    camera,
                    List.of(),
                    1,
                    Optional.empty(),
                    1,
                    Set.of(),
                    Optional.of(
                        new DryRun(
                            "J-" + days,
                            Instant.parse("2026-11-30T08:00:00Z").minusSeconds(days * 86_400L)))))
        .toList();
  }

  private void note(SheetItem item, String place, String words) {
    entries.add(StripSheet.of(entries).noted(new Id<>(1), item, place, words, NINE));
  }

  private List<String> cells(int row) {
    return IntStream.range(0, SheetText.COLUMNS).mapToObj(c -> text().cell(row, c)).toList();
  }

  private SheetText text() {
    return new SheetText(StripSheet.of(entries), ZoneOffset.UTC);
  }
}
