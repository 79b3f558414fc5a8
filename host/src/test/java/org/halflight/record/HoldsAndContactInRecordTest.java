package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.bench.SessionFile;
import org.halflight.chart.EverydayPictures;
import org.halflight.chart.Picture;
import org.halflight.chart.PictureImage;
import org.halflight.chart.Theme;
import org.halflight.everyday.FlashContact;
import org.halflight.everyday.Holds;
import org.halflight.everyday.MeasuredChecks;
import org.halflight.everyday.SelfTimer;
import org.halflight.everyday.Tried;
import org.halflight.export.CsvTable;
import org.halflight.export.EverydayTable;
import org.halflight.fixtures.PracticeSession;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.Check;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.session.Source;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** B, T, self-timer and flash contact of an invented shutter, from the practice rig to the end. */
class HoldsAndContactInRecordTest {
  private static final List<Class<? extends Tried>> KINDS =
      List.of(Holds.class, SelfTimer.class, FlashContact.class);
  private static final List<MarkedSpeed> DIAL = InventedShutters.dial();

  @TempDir private Path folder;

  private PracticeSession practised() {
    PracticeSession practice =
        new PracticeSession(
            folder.resolve("a.session"), InventedShutters.dirtySlowTrain(DIAL, 20), 20);
    List<MarkedSpeed> speeds = DIAL.subList(5, 10);
    practice.begin(Phase.AS_LEFT, speeds, List.of(Check.B, Check.T, Check.SELF_TIMER));
    for (MarkedSpeed speed : speeds) {
      practice.fire(speed);
      practice.fire(speed);
    }
    for (int i = 0; i < 5; i++) {
      runTimer(practice, i + 1);
    }
    for (int i = 0; i < 3; i++) {
      hold(practice, Check.B);
      hold(practice, Check.T);
    }
    return practice;
  }

  private static void runTimer(PracticeSession practice, int wanted) {
    practice.tell(new SessionInput.CheckChosen(Check.SELF_TIMER));
    assertThat(practice.rig.fireBySelfTimer()).isPresent();
    practice.until(() -> timers(practice) == wanted);
  }

  private static int timers(PracticeSession practice) {
    return practice.tried().stream()
        .filter(SelfTimer.class::isInstance)
        .mapToInt(tried -> ((SelfTimer) tried).seconds().size())
        .sum();
  }

  private static void hold(PracticeSession practice, Check check) {
    int before = practice.session().results().size();
    practice.tell(new SessionInput.CheckChosen(check));
    if (check == Check.B) {
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
    List<Tried> live;
    String label;
    try (PracticeSession practice = practised();
        WorkshopRecord record = RecordFixture.open(file)) {
      live = ours(practice.tried());
      label = practice.session().runs().get(0).camera();
      record.takeIn(SessionFile.read(practice.path).events(), "a.session");
    }
    assertThat(live).extracting(Tried::getClass).containsExactlyInAnyOrderElementsOf(KINDS);
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

    byte[] table = EverydayTable.of(label, Source.PRACTICE, live).bytes(CsvTable.Dialect.PLAIN);
    assertThat(new String(table, StandardCharsets.UTF_8))
        .contains("hold-open")
        .contains("second-press-to-closing")
        .contains(SelfTimer.RANGE)
        .contains(FlashContact.CLOSING)
        .contains(FlashContact.BOUNCES);

    pictures(live);
  }

  private static void pictures(List<Tried> live) throws IOException {
    Path pictures = Path.of("target", "pictures");
    Files.createDirectories(pictures);
    for (Tried tried : live) {
      Picture picture =
          EverydayPictures.of(tried, "Practice rig: an invented shutter.").orElseThrow();
      assertThat(picture.table().rows()).isNotEmpty();
      Files.write(pictures.resolve(tried.what() + ".png"), PictureImage.png(picture, 900, 480, 1));
      javax.imageio.ImageIO.write(
          PictureImage.draw(picture, Theme.DARK, 900, 480, 1),
          "png",
          pictures.resolve(tried.what() + "-dark.png").toFile());
    }
  }

  private static List<Tried> ours(List<Tried> all) {
    return all.stream().filter(tried -> KINDS.contains(tried.getClass())).toList();
  }
}
