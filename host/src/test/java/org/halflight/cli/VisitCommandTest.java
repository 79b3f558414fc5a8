package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.halflight.export.CsvTable;
import org.halflight.export.VisitTable;
import org.halflight.photo.SamplePictures;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Intake, work log and pictures at the command line: all can be corrected, and all is kept. */
class VisitCommandTest extends CommandTests {
  @Override
  Instant now() {
    return Instant.parse("2026-11-30T12:00:00Z");
  }

  @BeforeEach
  void begin() {
    assertThat(
            execute(
                "record",
                "visit",
                "Aunt Ada",
                "--new",
                "--set",
                "job=J-17",
                "--set",
                "complaint=sticks"))
        .as(printed())
        .isZero();
  }

  @Test
  void everyFieldIsCorrectedAndItsEarlierValueListed() {
    String[] fields = {
      "label=Ada",
      "serial=123",
      "speeds=1,1/2,1/250",
      "widest=3,5",
      "frame=56 x 56",
      "firing=lever",
      "shutter=leaf",
      "maker=Works",
      "model=Three",
      "lens=105 mm",
      "second-serial=9",
      "complaint=sticks at 1 s",
      "answer=cleaned",
      "owner=A. N. Owner",
      "film=no",
      "lubricant=escapement",
      "job=J-18",
      "intake.blades=fault, oily",
      "hand-back.blades=ok"
    };
    for (String field : fields) {
      assertThat(execute("record", "visit", "J-1", "--set", field)).as(field + printed()).isZero();
    }
    assertThat(printed())
        .contains(
            "Ada, here since 30 Nov 2026, 12:00",
            "Marked speeds: 1, 1/2, 1/250",
            "Maximum aperture: 3.5",
            "Complaint: sticks at 1 s",
            "Lens or shutter number: 9",
            "Intake, blades: fault oily",
            "Hand-back, blades: OK");
    assertThat(execute("record", "visit", "Ada", "--set", "owner=", "--set", "film=yes")).isZero();
    assertThat(printed()).doesNotContain("Owner:").contains("Film inside: yes");
    execute("record", "visit", "Ada", "--set", "intake.blades=ok", "--set", "widest=2.8");
    assertThat(execute("record", "visit", "Ada", "--earlier")).isZero();
    assertThat(printed())
        .contains(
            "Label, until 30 Nov 2026, 12:00: Aunt Ada",
            "Complaint, until 30 Nov 2026, 12:00: sticks",
            "Owner, until 30 Nov 2026, 12:00: A. N. Owner",
            "Film inside, until 30 Nov 2026, 12:00: no",
            "Maximum aperture, until 30 Nov 2026, 12:00: 3.5",
            "Intake, blades, until 30 Nov 2026, 12:00: fault oily");
  }

  @Test
  void aVisitEndsAndIsHereAgainAndAnotherBegins() {
    assertThat(execute("record", "visit", "Aunt Ada", "--new")).isEqualTo(1);
    assertThat(printed()).contains("Aunt Ada is here already.");
    assertThat(execute("record", "visit", "J-17", "--handed-back")).isZero();
    assertThat(printed()).contains("Aunt Ada, here from 30 Nov 2026, 12:00 to 30 Nov 2026, 12:00");
    assertThat(execute("record", "visit", "J-17", "--here-again")).isZero();
    assertThat(printed()).contains("here since");
    execute("record", "visit", "J-17", "--handed-back");
    assertThat(execute("record", "visit", "Aunt Ada", "--new")).isZero();
    assertThat(printed()).doesNotContain("J-17");
  }

  @Test
  void whatIsNotUnderstoodIsOneSentenceAndKeepsNothing() {
    String[][] wrong = {
      {"visit", "--set", "owner", "an equals sign"},
      {"visit", "--set", "colour=red", "does not know \"colour\". Use one of these: label, "},
      {"visit", "--set", "film=perhaps", "Answer yes or no."},
      {"visit", "--set", "widest=wide", "maximum aperture"},
      {"visit", "--set", "intake.blades=oily", "fault"},
      {"log", "--add", "blades", "cleaned=blades"},
      {"log", "--add", "cleaned=x", "--measured=0.1", "0.15 mm"},
      {"log", "--correct", "7=x", "no entry 7"},
      {"photos", "--caption", "1", "an equals sign"},
      {"photos", "--off", "1", "no picture 1"},
      {"photos", "--add", "missing.jpg", "cannot be read"}
    };
    for (String[] each : wrong) {
      String expected = each[each.length - 1];
      String[] words = new String[each.length + 1];
      words[0] = "record";
      words[1] = each[0];
      words[2] = "J-17";
      System.arraycopy(each, 1, words, 3, each.length - 2);
      assertThat(execute(words)).as(expected).isEqualTo(1);
      assertThat(printed()).contains(expected).hasLineCount(1);
    }
    execute("record", "visit", "J-17", "--earlier");
    assertThat(printed()).contains("Nothing was corrected.");
  }

  @Test
  void theWorkLogIsCorrected() {
    execute("record", "log", "J-17", "--add", "cleaned=blades");
    execute("record", "log", "J-17", "--add", "replaced=shim", "--measured", "0,150 mm");
    assertThat(printed())
        .contains("1. 30 Nov 2026: cleaned: blades", "2. 30 Nov 2026: replaced: shim (0.150 mm)");
    execute("record", "log", "J-17", "--correct", "1=all blades", "--strike", "2");
    assertThat(printed()).contains("cleaned: all blades").doesNotContain("shim");
    execute("record", "visit", "J-17", "--earlier");
    assertThat(printed()).contains("Work log, until 30 Nov 2026, 12:00: blades");
  }

  @Test
  void allVisitsAreOneTable() throws IOException {
    execute("record", "sheet", "J-17", "--note", "infinity-focus=OK", "--where", "a collimator");
    execute("record", "sheet", "J-17", "--note", "flange-top-left=43,97");
    execute("record", "sheet", "J-17", "--note", "flange-top-right=43.950");
    execute("record", "log", "J-17", "--add", "cleaned=blades");
    Path file = folder.resolve("visits.csv");
    assertThat(execute("record", "visits", file.toString())).as(printed()).isZero();
    CsvTable table = CsvTable.read(file);
    assertThat(table.headings()).isEqualTo(VisitTable.headings());
    List<String> row = table.rows().get(0);
    String[][] expected = {
      {"camera", "Aunt Ada"},
      {"received", "2026-11-30T12:00:00Z"},
      {"handed_back", ""},
      {"complaint", "sticks"},
      {"infinity_focus", "OK"},
      {"infinity_focus_how", "a collimator"},
      {"flange_top_left_mm", "43.97"},
      {"flange_spread_mm", "0.020"},
      {"work_entries", "1"},
      {"photos", "0"}
    };
    for (String[] each : expected) {
      assertThat(row.get(table.headings().indexOf(each[0]))).as(each[0]).isEqualTo(each[1]);
    }
    assertThat(execute("record", "visits", file.toString())).isEqualTo(1);
  }

  @Test
  void picturesAreAddedNamedAndTakenOff() throws IOException {
    Path picture =
        Files.write(
            folder.resolve("IMG_0117.jpg"),
            SamplePictures.jpeg(30, 20, 1, "2026:11:30 11:00:00", "+00:00"));
    execute("record", "photos", "J-17");
    assertThat(printed()).contains("No picture has joined this visit.");
    assertThat(execute("record", "photos", "J-17", "--add", picture.toString())).isZero();
    assertThat(execute("record", "photos", "J-17", "--add", picture.toString())).isZero();
    execute("record", "photos", "J-17", "--caption", "1=two shims");
    Path kept = folder.resolve("photos/visit-1/IMG_0117.jpg");
    assertThat(printed())
        .contains("1. 30 Nov 2026, 11:00: IMG_0117.jpg (two shims) " + kept)
        .doesNotContain("2. ");
    execute("record", "photos", "J-17", "--off", "1");
    assertThat(printed()).contains("Taken off.");
    execute("record", "photos", "J-17", "--on", "1");
    assertThat(printed()).doesNotContain("Taken off.");
    Files.delete(kept);
    execute("record", "photos", "J-17");
    assertThat(printed()).contains("The file is missing: " + kept);
    Path text = Files.writeString(folder.resolve("notes.jpg"), "two shims");
    assertThat(execute("record", "photos", "J-17", "--add", text.toString())).isEqualTo(1);
    assertThat(printed()).contains("notes.jpg is not a picture, whatever its name says.");
  }
}
