package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.halflight.job.Camera;
import org.halflight.job.Visit;
import org.halflight.record.DataFolder;
import org.halflight.record.WorkshopRecord;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The strip sheet, dry runs and returns at the command line. */
class SheetCommandTest extends CommandTests {
  private Camera camera;

  @BeforeEach
  void begin() {
    try (WorkshopRecord record = record()) {
      camera = record.keep(Camera.of("Aunt Ada", ShutterKind.LEAF, Dial.builtIn().get(0)));
      record.keep(Camera.of("Aunt Åse", ShutterKind.LEAF, Dial.builtIn().get(0)));
      record.keep(Visit.begins(camera.id(), "J-17", now()));
    }
  }

  @Test
  void whatIsNotedIsAskedBackAndTicked() {
    assertThat(execute("record", "sheet", "J-17")).isZero();
    assertThat(printed()).contains("Nothing is noted");
    assertThat(
            execute(
                "record",
                "sheet",
                "J-17",
                "--note",
                "shims=0.10 0,05",
                "--where",
                "under the flange"))
        .isZero();
    assertThat(printed())
        .contains("1. Noted: 2 shims, 0.10, 0.05 mm in this order, under the flange. Are both in?")
        .contains("Not ticked on the strip sheet: shims: 2 shims");
    assertThat(execute("record", "sheet", "Aunt Ada", "--correct", "1=2x0.10 ?")).isZero();
    assertThat(printed()).contains("Are all in?").contains("Before: 2 shims, 0.10, 0.05 mm");
    assertThat(execute("record", "sheet", "ada", "--back", "1")).isZero();
    assertThat(printed())
        .contains("Ticked 1 Jan 1970")
        .contains("All that is asked back is ticked");
    assertThat(execute("record", "sheet", "ada", "--note", "flange-top-left=43,97")).isZero();
    assertThat(printed()).contains("43.97 mm").contains("The rig does not measure them.");
    assertThat(execute("record", "sheet", "ada", "--strike", "2")).isZero();
    assertThat(printed()).contains("Struck out");
  }

  @Test
  void whatIsNotUnderstoodKeepsNothing() {
    String[][] wrong = {
      {"--note", "shims", "equals sign"},
      {"--note", "shim=0.1", "shims"},
      {"--note", "shims=two", "such as 0.10 0.05"},
      {"--note", "other= ", "Write what you noted"},
      {"--note", "flange-top-left=far", "such as 43.97"},
      {"--back", "7", "no line 7"},
      {"--correct", "x=y", "no line x"}
    };
    for (String[] each : wrong) {
      assertThat(execute("record", "sheet", "J-17", "--note", "other=cam", each[0], each[1]))
          .as(each[1])
          .isEqualTo(1);
      assertThat(printed()).as(each[1]).contains(each[2]).hasLineCount(1);
    }
    assertThat(execute("record", "sheet", "J-17")).isZero();
    assertThat(printed()).contains("Nothing is noted");
  }

  @Test
  void theCameraMustBeTheOnlyOne() {
    assertThat(execute("record", "sheet", "aunt")).isEqualTo(1);
    assertThat(printed()).contains("Aunt").contains("Type more");
    assertThat(execute("record", "sheet", "uncle")).isEqualTo(1);
    assertThat(printed()).contains("No camera of the record has \"uncle\"");
    assertThat(execute("record", "sheet", "Aunt Åse")).isEqualTo(1);
    assertThat(printed()).contains("has no visit yet");
  }

  @Test
  void nothingIsDueAndNothingComparableWhereNothingWasFired() {
    assertThat(execute("record", "due")).isZero();
    assertThat(printed()).contains("No camera here is due for a dry run.");
    assertThat(execute("record", "moved", "J-17")).isZero();
    assertThat(printed()).contains("Not comparable yet");
  }

  private WorkshopRecord record() {
    return WorkshopRecord.open(
        folder.resolve(DataFolder.RECORD_FILE), Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
  }
}
