package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.bench.SessionFile;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.Picture;
import org.halflight.chart.PictureImage;
import org.halflight.chart.Theme;
import org.halflight.export.CsvTable;
import org.halflight.export.ExtraTestTable;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.FlashContact;
import org.halflight.extratest.Holds;
import org.halflight.extratest.MeasuredChecks;
import org.halflight.extratest.SelfTimer;
import org.halflight.fixtures.PracticeSession;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.session.Source;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** B, T, self-timer and flash contact of an invented shutter, from the practice rig to the end. */
class HoldsAndContactInRecordTest {
  private static final List<Class<? extends ExtraTest>> KINDS =
      List.of(Holds.class, SelfTimer.class, FlashContact.class);
  private static final List<MarkedSpeed> DIAL = InventedShutters.dial();

  @TempDir private Path folder;

  private PracticeSession practised() {
    PracticeSession practice =
        new PracticeSession(
            folder.resolve("a.session"), InventedShutters.dirtySlowTrain(DIAL, 20), 20);
    List<MarkedSpeed> speeds = DIAL.subList(5, 10);
    practice.begin(
        Phase.AS_LEFT, speeds, List.of(UntimedTest.B, UntimedTest.T, UntimedTest.SELF_TIMER));
    for (MarkedSpeed speed : speeds) {
      practice.fire(speed);
      practice.fire(speed);
    }
    for (int i = 0; i < 5; i++) {
      runTimer(practice, i + 1);
    }
    for (int i = 0; i < 3; i++) {
      hold(practice, UntimedTest.B);
      hold(practice, UntimedTest.T);
    }
    return practice;
  }

  private static void runTimer(PracticeSession practice, int wanted) {
    practice.handle(new SessionInput.UntimedTestChosen(UntimedTest.SELF_TIMER));
    assertThat(practice.rig.fireBySelfTimer()).isPresent();
    practice.until(() -> timers(practice) == wanted);
  }

  private static int timers(PracticeSession practice) {
    return practice.tried().stream()
        .filter(SelfTimer.class::isInstance)
        .mapToInt(tried -> ((SelfTimer) tried).seconds().size())
        .sum();
  }

  private static void hold(PracticeSession practice, UntimedTest check) {
    int before = practice.session().results().size();
    practice.handle(new SessionInput.UntimedTestChosen(check));
    if (check == UntimedTest.B) {
      practice.rig.holdOpen(true);
      practice.rig.rest(2);
      practice.rig.holdOpen(false);
    } else {
      practice.rig.pressAtT();
      practice.rig.rest(2);
      practice.rig.pressAtT();
    }
    practice.until(() -> practice.session().results().size() > before);
  }

  @Test
  void allThreeComeIntoRecordHistoryListAndTableAndStayTheSame() throws IOException {
    Path file = folder.resolve("record.sqlite");
    List<ExtraTest> live;
    String label;
    try (PracticeSession practice = practised();
        WorkshopRecord record = RecordFixture.open(file)) {
      live = ours(practice.tried());
      label = practice.session().runs().get(0).camera();
      record.importSession(SessionFile.read(practice.path).events(), "a.session");
    }
    assertThat(live).extracting(ExtraTest::getClass).containsExactlyInAnyOrderElementsOf(KINDS);
    try (WorkshopRecord again = RecordFixture.open(file)) {
      CameraHistory history = again.history(again.search(label).get(0).camera().id()).orElseThrow();
      assertThat(ours(history.runs().get(0).tried())).isEqualTo(live);
    }

    MeasuredChecks list = MeasuredChecks.handBack(live);
    assertThat(list.answer(CheckItem.B_AND_T, CheckState.NOT_TESTED).state())
        .isEqualTo(CheckState.OK);
    assertThat(list.answer(CheckItem.SELF_TIMER, CheckState.NOT_TESTED).state())
        .isEqualTo(CheckState.OK);
    // Too late at the fastest speed.
    assertThat(list.answer(CheckItem.FLASH_CONTACT, CheckState.NOT_TESTED).state())
        .isEqualTo(CheckState.FAULT);

    byte[] table =
        ExtraTestTable.of(label, Source.PRACTICE, live, List.of()).bytes(CsvTable.Dialect.PLAIN);
    assertThat(new String(table, StandardCharsets.UTF_8))
        .contains("hold-open")
        .contains("second-press-to-closing")
        .contains(SelfTimer.RANGE)
        .contains(FlashContact.CLOSING)
        .contains(FlashContact.BOUNCES);

    pictures(live);
  }

  private static void pictures(List<ExtraTest> live) throws IOException {
    Path pictures = Path.of("target", "pictures");
    Files.createDirectories(pictures);
    for (ExtraTest tried : live) {
      Picture picture =
          ExtraTestPictures.of(tried, "Practice rig: an invented shutter.").orElseThrow();
      assertThat(picture.table().rows()).isNotEmpty();
      Files.write(pictures.resolve(tried.what() + ".png"), PictureImage.png(picture, 900, 480, 1));
      javax.imageio.ImageIO.write(
          PictureImage.draw(picture, Theme.DARK, 900, 480, 1),
          "png",
          pictures.resolve(tried.what() + "-dark.png").toFile());
    }
  }

  private static List<ExtraTest> ours(List<ExtraTest> all) {
    return all.stream().filter(tried -> KINDS.contains(tried.getClass())).toList();
  }
}
