package org.halflight.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class StripSheetTest {
  private static final Id<Visit> VISIT = new Id<>(3);
  private static final Instant NINE = Instant.parse("2026-11-30T09:00:00Z");

  private final List<SheetEntry> entries = new ArrayList<>();

  @Test
  void shimsAreCountedInTheirOrderWithTheDigitsThatWereWritten() {
    assertThat(Shims.read("0.10, 0.050")).contains(new Shims(List.of("0.10", "0.050")));
    assertThat(Shims.read(" 0,10  0,05;0.2+? ")).map(Shims::count).contains(4);
    assertThat(Shims.read("2x0.10 3x?").orElseThrow().words()).isEqualTo("0.10, 0.10, ?, ?, ?");
    for (String wrong : List.of("two", "0.10,0.05", "0", "-0.1", "0x0.1", "99x0.1", "0.1 mm", "")) {
      assertThat(SheetItem.SHIMS.read(wrong)).as(wrong).isEmpty();
    }
  }

  @Test
  void aDistanceFromFlangeToFilmIsANumberAndTheRestIsFree() {
    assertThat(SheetItem.FLANGE_BOTTOM_RIGHT.read("43,97")).contains("43.97");
    assertThat(SheetItem.FLANGE_TOP_LEFT.read("about 44")).isEmpty();
    assertThat(SheetItem.SPRING_TURNS.read(" 1 3/4 from slack ")).contains("1 3/4 from slack");
    assertThat(SheetItem.byHand()).hasSize(8).noneMatch(SheetItem::isAskedBack);
    assertThat(SheetItem.askedBack()).hasSize(5);
  }

  @Test
  void whatIsNotedIsOpenUntilItIsTicked() {
    note(SheetItem.SHIMS, "under the flange", "0.10, 0.05");
    note(SheetItem.INFINITY_FOCUS, "collimator", "OK");
    assertThat(sheet().open()).extracting(StripSheet.Line::number).containsExactly(1);
    turn(1, SheetState.BACK);
    assertThat(sheet().open()).isEmpty();
    assertThat(sheet().lines()).hasSize(2);
  }

  @Test
  void aCorrectionKeepsWhatWasThereAndAsksAgain() {
    note(SheetItem.SHIMS, "under the flange", "0.10, 0.05");
    turn(1, SheetState.BACK);
    entries.add(line(1).now().corrected("under the flange", "0.10", NINE.plusSeconds(9)));
    assertThat(line(1).isOpen()).isTrue();
    assertThat(line(1).now().words()).isEqualTo("0.10");
    assertThat(line(1).notedAt()).isEqualTo(NINE);
    assertThat(line(1).earlier())
        .extracting(SheetEntry::words, SheetEntry::state)
        .containsExactly(org.assertj.core.groups.Tuple.tuple("0.10, 0.05", SheetState.BACK));
    turn(1, SheetState.BACK);
    assertThat(line(1).earlier()).as("a tick corrects nothing").hasSize(1);
  }

  @Test
  void aLineNotedByMistakeIsStruckAndItsNumberIsNotGivenAgain() {
    note(SheetItem.NOTCH_MARKS, "", "dot at 4 o'clock");
    turn(1, SheetState.STRUCK);
    note(SheetItem.OTHER, "cam", "stamped side up");
    assertThat(sheet().open()).extracting(StripSheet.Line::number).containsExactly(2);
  }

  @Test
  void whatIsMeasuredByHandIsOnTheSheetOnce() {
    note(SheetItem.FLANGE_TOP_LEFT, "", "43.97");
    note(SheetItem.FLANGE_TOP_LEFT, "", "43.99");
    note(SheetItem.SHIMS, "front cell", "?");
    note(SheetItem.SHIMS, "flange", "0.10");
    assertThat(sheet().lines()).hasSize(3);
    assertThat(line(1).now().words()).isEqualTo("43.99");
    assertThat(line(1).earlier()).extracting(SheetEntry::words).containsExactly("43.97");
    turn(1, SheetState.STRUCK);
    note(SheetItem.FLANGE_TOP_LEFT, "", "44.00");
    assertThat(sheet().of(SheetItem.FLANGE_TOP_LEFT)).map(StripSheet.Line::number).contains(4);
  }

  private void note(SheetItem item, String place, String words) {
    entries.add(sheet().noted(VISIT, item, place, words, NINE));
  }

  private void turn(int line, SheetState to) {
    entries.add(line(line).now().turned(to, NINE.plusSeconds(1)));
  }

  private StripSheet.Line line(int number) {
    return sheet().line(number).orElseThrow();
  }

  private StripSheet sheet() {
    return StripSheet.of(entries);
  }
}
