package org.halflight.extratest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.Picture;
import org.halflight.chart.PictureImage;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.GapLimits;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.PlungerReading;
import org.halflight.session.WindState;
import org.halflight.words.ExtraTestWords;
import org.junit.jupiter.api.Test;

/** The linkage of a run, in sentences, figures and picture; the camera is invented. */
class LinkageTest {
  @Test
  void aWholeTestWithOneClickIsInOrder() {
    Linkage linkage = InventedPresses.right().linkage(Phase.AS_LEFT);

    assertThat(linkage.state()).isEqualTo(CheckState.OK);
    assertThat(linkage.item()).isEqualTo(CheckItem.WIND);
    assertThat(ExtraTestWords.lines(linkage))
        .containsExactly(
            "ONE CLICK, WIND TURNS: the linkage is right.",
            "After rest check: 1 NEITHER.",
            "After pause and let go: 5 BOTH.",
            "After slow squeeze: 5 BOTH.",
            "After quick tap: 3 BOTH.");
    assertThat(
            MeasuredChecks.handBack(List.of(linkage))
                .answer(CheckItem.WIND, CheckState.NOT_TESTED)
                .state())
        .isEqualTo(CheckState.OK);
  }

  @Test
  void aPictureAndTheWindLockedSaysWhatToDo() {
    Linkage linkage =
        InventedPresses.right()
            .press(LinkageStep.STOP, true, WindState.LOCKED)
            .linkage(Phase.AS_FOUND);

    assertThat(linkage.state()).isEqualTo(CheckState.FAULT);
    assertThat(ExtraTestWords.lines(linkage).get(0))
        .isEqualTo("SHUTTER FIRST. Make the shutter trip later, or unlock the advance earlier.");
    assertThat(ExtraTestWords.lines(linkage))
        .contains("After pause and let go: 5 BOTH, 1 SHUTTER ONLY.");
  }

  @Test
  void missingPressesAreNamedAndNothingIsClaimed() {
    Linkage linkage =
        new InventedPresses()
            .press(LinkageStep.REST, false, WindState.LOCKED)
            .press(LinkageStep.STOP, true, WindState.TURNS)
            .linkage(Phase.AS_LEFT);

    assertThat(linkage.state()).isEqualTo(CheckState.NOT_TESTED);
    assertThat(ExtraTestWords.lines(linkage).get(0))
        .isEqualTo(
            "UNDECIDED: presses are missing (4 pause and let go, 5 slow squeeze, 3 quick tap).");
  }

  @Test
  void onlyThePlungerIsJudgedByALimitInMillimetres() {
    PlungerReading read = new PlungerReading(1.3, 1.8);
    assertThat(plunger(read, Optional.empty()).gap()).isEmpty();
    assertThat(ExtraTestWords.lines(plunger(read, Optional.empty())))
        .containsExactly("Screw plunger: the advance unlocks 0.50 mm ahead of the shutter.");

    Linkage far = plunger(read, GapLimits.find("0..0.2"));
    assertThat(far.state()).isEqualTo(CheckState.FAULT);
    assertThat(ExtraTestWords.lines(far).get(0))
        .contains("Too far ahead", "0.0 to 0.2 mm", "trip earlier in the stroke");
    assertThat(far.values())
        .containsExactly(ExtraTestValue.single("advance-ahead-of-shutter", "", 0.5, "mm"));
  }

  @Test
  void aPlungerIsReadToHalfADivisionTwice() {
    GapLimits limits = new GapLimits(0, 0.2);
    assertThat(GapVerdict.of(0.1, limits)).isEqualTo(GapVerdict.WITHIN);
    assertThat(GapVerdict.of(0.19, limits)).isEqualTo(GapVerdict.TOO_CLOSE_TO_CALL);
    assertThat(GapVerdict.of(0.226, limits)).isEqualTo(GapVerdict.TOO_FAR_AHEAD);
    assertThat(GapVerdict.of(-0.02, limits)).isEqualTo(GapVerdict.TOO_CLOSE_TO_CALL);
    assertThat(GapVerdict.of(-0.026, limits)).isEqualTo(GapVerdict.TOO_LATE);
  }

  @Test
  void theIntervalInASqueezeIsAFigureAndNoVerdict() {
    Linkage linkage =
        InventedPresses.right().squeeze(0.18).squeeze(-0.09).squeeze(0.005).linkage(Phase.AS_LEFT);

    assertThat(linkage.state()).isEqualTo(CheckState.OK);
    assertThat(ExtraTestWords.lines(linkage))
        .contains(
            "Which came first in the slow squeezes (not judged): 1 ONE CLICK, 1 ADVANCE FIRST,"
                + " 1 SHUTTER FIRST, 5 order not known.");
    assertThat(linkage.values())
        .anyMatch(v -> v.quantity().equals("advance-before-light") && v.n() == 3);
  }

  @Test
  void thePictureHasAMarkForEachPress() throws Exception {
    Linkage linkage =
        InventedPresses.right()
            .press(LinkageStep.STOP, false, WindState.TURNS)
            .press(LinkageStep.STOP, true, WindState.LOCKED)
            .squeeze(0.18)
            .linkage(Phase.AS_FOUND);

    Picture picture = ExtraTestPictures.of(linkage, "Invented presses.").orElseThrow();

    assertThat(picture.table().rows()).hasSize(17);
    assertThat(picture.table().cell(14, "left")).isEqualTo("ADVANCE ONLY");
    assertThat(picture.table().cell(16, "which came first")).isEqualTo("ADVANCE FIRST");
    assertThat(picture.table().cell(16, "apart")).isEqualTo("180 ms ahead");
    Path file = Path.of("target", "pictures", "linkage.png");
    Files.createDirectories(file.getParent());
    Files.write(file, PictureImage.png(picture, 900, 480, 1));
    assertThat(file).isNotEmptyFile();
  }

  private static Linkage plunger(PlungerReading read, Optional<GapLimits> limits) {
    return new Linkage(
        1, Optional.of(Phase.AS_LEFT), new LinkageJudgement(List.of()), Optional.of(read), limits);
  }
}
