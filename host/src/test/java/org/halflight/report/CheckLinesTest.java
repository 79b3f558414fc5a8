package org.halflight.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.extratest.Bounce;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.LightReading;
import org.halflight.session.Phase;
import org.junit.jupiter.api.Test;

/** The bounce is that of the sample pages: at fault as found, none as left. */
class CheckLinesTest {
  private static final Optional<CheckState> OK = Optional.of(CheckState.OK);
  private static final Optional<CheckState> FAULT = Optional.of(CheckState.FAULT);
  private static final Optional<CheckState> OPEN = Optional.of(CheckState.NOT_TESTED);

  private static final Optional<CheckItem> BLADES = Optional.of(CheckItem.BLADES);
  private static final Optional<CheckItem> COUNTER = Optional.of(CheckItem.COUNTER);

  @Test
  void anItemIsKnownByWhatItIsAndNotByItsWords() {
    CheckLine inOtherWords = filled(new CheckLine(BLADES, "Lamellen", OPEN, OPEN, "")).get(0);
    CheckLine own = filled(new CheckLine(Optional.empty(), "blades", OPEN, OPEN, "")).get(0);

    assertThat(inOtherWords.handBackMeasured()).isTrue();
    assertThat(own).isEqualTo(new CheckLine(Optional.empty(), "blades", OPEN, OPEN, ""));
  }

  @Test
  void whatWasMeasuredFillsWhatWasLeftOpen() {
    CheckLine line = filled(new CheckLine(BLADES, "blades", OPEN, OPEN, "")).get(0);

    assertThat(line.intake()).isEqualTo(FAULT);
    assertThat(line.handBack()).isEqualTo(OK);
    assertThat(line.intakeMeasured()).isTrue();
    assertThat(line.handBackMeasured()).isTrue();
    assertThat(line.remark()).isEqualTo("measured: bounce; measured: bounce, leak test");
  }

  @Test
  void oneOfTwoThatItTakesIsNoAnswerAndSaysWhatWasNotMeasured() {
    for (ExtraTest only : List.of(SamplePages.bounce(Phase.AS_LEFT, 0), SamplePages.leak(true))) {
      CheckLine line =
          CheckLines.filled(List.of(new CheckLine(BLADES, "blades", OPEN, OPEN, "")), List.of(only))
              .get(0);

      assertThat(line.handBack()).isEqualTo(OPEN);
      assertThat(line.handBackMeasured()).isFalse();
      assertThat(line.remark())
          .isEqualTo(
              only instanceof Bounce
                  ? "OK as far as tested (bounce); not tested: leak test"
                  : "OK as far as tested (leak test); not tested: bounce");
    }
    CheckLine listedByNobody = CheckLines.filled(List.of(), List.of(SamplePages.leak(true))).get(0);
    assertThat(listedByNobody.handBack()).isEqualTo(OPEN);
  }

  @Test
  void aLeakTestOfOneStateIsHalfALeakTest() {
    CheckLine line =
        CheckLines.filled(
                List.of(new CheckLine(BLADES, "blades", OPEN, OPEN, "")),
                List.of(SamplePages.bounce(Phase.AS_LEFT, 0), SamplePages.leak(false)))
            .get(0);

    assertThat(line.handBack()).isEqualTo(OPEN);
    assertThat(line.remark())
        .isEqualTo("OK as far as tested (bounce, leak test); not tested: leak test cocked");
  }

  @Test
  void aFaultIsAFaultHoweverLittleWasMeasured() {
    CheckLine line =
        CheckLines.filled(
                List.of(new CheckLine(BLADES, "blades", OPEN, OPEN, "")),
                List.of(SamplePages.bounce(Phase.AS_LEFT, 0.09)))
            .get(0);

    assertThat(line.handBack()).isEqualTo(FAULT);
    assertThat(line.remark()).isEqualTo("measured: bounce");
  }

  @Test
  void stopsWithoutTheFirstAgainAreNoAnswer() {
    List<ExtraTest> stops =
        ExtraTests.of(List.of(), List.of(stop("2.8", 808, 1), stop("4", 408, 2)), List.of());
    List<CheckLine> lines = CheckLines.filled(List.of(), stops);

    assertThat(lines.stream().map(CheckLine::item)).containsExactly("aperture blades");
    assertThat(lines.get(0).handBack()).isEqualTo(OPEN);
    assertThat(lines.get(0).remark())
        .isEqualTo(
            "OK as far as tested (aperture check); not tested: the first aperture again at the end");
  }

  private static LightReading stop(String number, double counts, long ticks) {
    return new LightReading(
        2,
        Optional.of(Phase.AS_LEFT),
        LightReading.What.STOP,
        number,
        false,
        counts,
        0.3,
        1000,
        OptionalDouble.of(8),
        OptionalDouble.of(808),
        "R-0001",
        1,
        ticks);
  }

  @Test
  void anAnswerByHandStandsAndWhatDisagreesIsSaid() {
    CheckLine line = filled(new CheckLine(BLADES, "Blades", OK, OK, "dry")).get(0);

    assertThat(line.intake()).isEqualTo(OK);
    assertThat(line.intakeMeasured()).isFalse();
    assertThat(line.remark()).startsWith("dry; measured at intake: fault (bounce)");
    assertThat(line.handBackMeasured()).isTrue();
  }

  @Test
  void anItemThatNobodyListedIsAdded() {
    List<CheckLine> lines = filled(new CheckLine(COUNTER, "counter", OK, OK, ""));

    assertThat(lines).hasSize(2);
    assertThat(lines.get(0)).isEqualTo(new CheckLine(COUNTER, "counter", OK, OK, ""));
    assertThat(lines.get(1).item()).isEqualTo("blades");
  }

  private static List<CheckLine> filled(CheckLine line) {
    return CheckLines.filled(List.of(line), SamplePages.tried());
  }
}
