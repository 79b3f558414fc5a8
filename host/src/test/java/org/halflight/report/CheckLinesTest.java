package org.halflight.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The bounce is that of the sample pages: at fault as found, none as left. */
class CheckLinesTest {
  private static final Optional<CheckLine.State> OK = Optional.of(CheckLine.State.OK);
  private static final Optional<CheckLine.State> FAULT = Optional.of(CheckLine.State.FAULT);
  private static final Optional<CheckLine.State> OPEN = Optional.of(CheckLine.State.NOT_TESTED);

  @Test
  void whatWasMeasuredFillsWhatWasLeftOpen() {
    CheckLine line = filled(new CheckLine("blades", OPEN, OPEN, "")).get(0);

    assertThat(line.intake()).isEqualTo(FAULT);
    assertThat(line.handBack()).isEqualTo(OK);
    assertThat(line.intakeMeasured()).isTrue();
    assertThat(line.handBackMeasured()).isTrue();
    assertThat(line.remark()).isEqualTo("measured: bounce");
  }

  @Test
  void anAnswerByHandStandsAndWhatDisagreesIsSaid() {
    CheckLine line = filled(new CheckLine("Blades", OK, OK, "dry")).get(0);

    assertThat(line.intake()).isEqualTo(OK);
    assertThat(line.intakeMeasured()).isFalse();
    assertThat(line.remark()).startsWith("dry; measured at intake: fault (bounce)");
    assertThat(line.handBackMeasured()).isTrue();
  }

  @Test
  void anItemThatNobodyListedIsAdded() {
    List<CheckLine> lines = filled(new CheckLine("counter", OK, OK, ""));

    assertThat(lines).hasSize(2);
    assertThat(lines.get(0)).isEqualTo(new CheckLine("counter", OK, OK, ""));
    assertThat(lines.get(1).item()).isEqualTo("blades");
  }

  private static List<CheckLine> filled(CheckLine line) {
    return CheckLines.filled(List.of(line), SamplePages.tried());
  }
}
