package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.halflight.export.CsvTable;
import org.junit.jupiter.api.Test;

/**
 * Leak test and stop check as they are typed. The practice rig leaks at eight stops below full
 * light when it is cocked, and its stops are those of InventedStops.WORN: simulated figures.
 */
class LightTestCommandsTest extends CommandTests {
  @Test
  void theLeakOfThePracticeShutterIsFoundAndItsSoundStateIsNot() {
    assertThat(execute("leak", session(), "--practice")).as(printed()).isZero();
    assertThat(printed())
        .containsPattern(
            "shut and not cocked: nothing found above the rig's own floor, (9\\.\\d|10\\.\\d) stops")
        .containsPattern("shut and cocked: light comes through, (7\\.9|8\\.[0-2]) stops below")
        .contains("practice rig: invented shutter, simulated figures");
  }

  @Test
  void theStopsOfThePracticeLensAreHeldAgainstTheirMarkings() {
    Path picture = folder.resolve("stops.png");
    assertThat(
            execute(
                "stops",
                session(),
                "--practice",
                "--stops",
                "16,2.8,4,5.6,8,11",
                "--picture",
                picture.toString()))
        .as(printed())
        .isZero();
    // Four stops down it is 0.18 stop dark and 0.11 more on the way up, five stops down 0.45.
    assertThat(printed())
        .contains("Aperture check against f/2.8: 4 of 5 stops are within 0.33 stop")
        .containsPattern("Too little light: f/16 -0\\.4\\d stop")
        .containsPattern("Backlash: f/\\S+ lets through 0\\.1\\d stop less when opening up")
        .contains("f/5.6 is 5.657");
    assertThat(picture).isNotEmptyFile();
    assertThat(printed()).doesNotContain("Lamp").doesNotContain("stays open");

    Path table = folder.resolve("everyday.csv");
    assertThat(execute("export", session(), "--extra-tests", table.toString())).isZero();
    CsvTable everyday = CsvTable.read(table);
    assertThat(everyday.headings()).contains("what", "at", "quantity", "unit", "value", "source");
    assertThat(everyday.rows())
        .anyMatch(row -> row.contains("stop-scale") && row.contains("f/16"))
        .allMatch(row -> row.get(everyday.headings().indexOf("source")).equals("practice"));
    assertThat(execute("picture", session(), "--everyday", folder.toString())).isZero();
    assertThat(folder.resolve("1-stop-scale.png")).isNotEmptyFile();
  }

  /** The invented panel falls by 10 %; readings and lamp leave a little more open. */
  @Test
  void thePanelOfThePracticeRigIsLimited() {
    assertThat(execute("panel", session(), "--practice")).as(printed()).isZero();
    assertThat(printed())
        .containsPattern("Light falls by 1[01] % at most from the middle of the lens to its edge")
        .containsPattern("Times read long by 0\\.[78] % of opening plus closing time at most")
        .contains("in place of 20 %")
        .contains("practice rig: invented shutter, simulated figures");
  }

  @Test
  void badInputIsOneSentence() {
    assertThat(execute("stops", session(), "--practice", "--stops", "2.8,wide")).isEqualTo(1);
    assertThat(printed())
        .contains("wide is not an aperture. Give the numbers as they are engraved");
    assertThat(execute("stops", session(), "--practice", "--stops", "2.8")).isEqualTo(1);
    assertThat(printed()).contains("An aperture check needs at least two apertures.");
    assertThat(execute("stops", session(), "--practice", "--tolerance", "0")).isEqualTo(1);
    assertThat(printed()).contains("An aperture tolerance is above 0");
  }

  private String session() {
    return folder.resolve("light.session").toString();
  }
}
