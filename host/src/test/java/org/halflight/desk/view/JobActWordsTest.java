package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.job.Id;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.Test;

/** What the menu and Ctrl+Z call a change of what is noted. */
class JobActWordsTest {
  private static final Instant NOW = Instant.parse("2026-11-30T09:00:00Z");

  private final Camera camera = Camera.of("Uncle Bo", ShutterKind.LEAF, Dial.builtIn().get(0));
  private final Visit visit = Visit.begins(new Id<>(1), "J-1", NOW);

  @Test
  void aChangedFieldSaysItsEarlierAndItsNewValue() {
    assertThat(JobActWords.fields(camera, visit, camera, visit)).isEmpty();
    Visit other = visit.with("J-2", Details.NONE);
    assertThat(JobActWords.fields(camera, visit, camera, other))
        .isEqualTo("Job number: J-1 \u2192 J-2");
    Visit more = visit.with("J-2", new Details(Map.of(Detail.COMPLAINT, "sticks")));
    assertThat(JobActWords.fields(camera, visit, camera, more))
        .isEqualTo("Job number: J-1 \u2192 J-2, and 1 more");
    Visit said = visit.with("J-1", new Details(Map.of(Detail.COMPLAINT, "sticks")));
    assertThat(JobActWords.fields(camera, visit, camera, said))
        .isEqualTo("The owner says: nothing \u2192 sticks");
  }

  @Test
  void anAnswerOfAListSaysItsItem() {
    Checklist list = Checklist.EMPTY.with(CheckItem.BLADES, CheckState.FAULT, "");
    assertThat(JobActWords.lists(visit, list, Checklist.EMPTY))
        .isEqualTo("blades at intake: not tested \u2192 fault");
    assertThat(JobActWords.lists(visit, Checklist.EMPTY, list)).startsWith("blades at hand-back");
  }

  @Test
  void aLineOfTheStripSheetSaysWhatBecameOfIt() {
    SheetEntry two = StripSheet.EMPTY.noted(visit.id(), SheetItem.SHIMS, "", "0.10, 0.05", NOW);
    assertThat(JobActWords.sheet(StripSheet.EMPTY, two))
        .isEqualTo("shims noted, 2 shims, 0.10, 0.05 mm in this order");
    StripSheet sheet = StripSheet.of(List.of(two));
    assertThat(JobActWords.sheet(sheet, two.corrected("", "0.10", NOW)))
        .isEqualTo("shims: 2 shims, 0.10, 0.05 mm in this order \u2192 1 shim, 0.10 mm");
    assertThat(JobActWords.sheet(sheet, two.turned(SheetState.BACK, NOW)))
        .isEqualTo("shims ticked");
    assertThat(JobActWords.sheet(sheet, two.turned(SheetState.STRUCK, NOW)))
        .isEqualTo("shims struck out, 2 shims, 0.10, 0.05 mm in this order");
    StripSheet ticked = StripSheet.of(List.of(two, two.turned(SheetState.BACK, NOW)));
    assertThat(JobActWords.sheet(ticked, two.turned(SheetState.NOTED, NOW)))
        .isEqualTo("tick off shims");
  }
}
