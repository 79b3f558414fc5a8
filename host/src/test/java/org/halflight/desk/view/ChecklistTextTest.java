package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.extratest.Bounce;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.LightLeak;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;
import org.junit.jupiter.api.Test;

class ChecklistTextTest {
  private static final ExtraTest BOUNCE =
      new Bounce(
          2,
          Optional.of(Phase.AS_LEFT),
          List.of(
              new Bounce.AtSpeed(
                  MarkedSpeed.parse("1/500"), Sample.of(0.0, 0.0), Sample.of(0.0, 0.0), 2)),
          0,
          0);

  private static final Optional<LightLeak.Reading> DARK =
      Optional.of(new LightLeak.Reading(0.2, 0.4, OptionalDouble.of(812), 1000));

  private static final ExtraTest LEAK = new LightLeak(2, Optional.of(Phase.AS_LEFT), DARK, DARK);

  @Test
  void whatIsMeasuredFillsTheListAndThePersonsAnswerStands() {
    Checklist byHand = Checklist.EMPTY.with(CheckItem.BLADES, CheckState.FAULT, "");

    assertThat(text(Checklist.EMPTY, BOUNCE, LEAK).cell(CheckItem.BLADES, false))
        .isEqualTo("OK, measured");
    assertThat(text(byHand, BOUNCE, LEAK).cell(CheckItem.BLADES, false))
        .isEqualTo("fault (measured: OK)");
    assertThat(text(Checklist.EMPTY, BOUNCE, LEAK).cell(CheckItem.BLADES, true))
        .as("nothing was measured when it came")
        .isEqualTo("not tested");
    assertThat(text(Checklist.EMPTY).cell(CheckItem.COUNTER, false)).isEqualTo("not tested");
  }

  @Test
  void whatIsMeasuredInPartSaysWhatIsMissing() {
    ChecklistText text = text(Checklist.EMPTY, BOUNCE);

    assertThat(text.cell(CheckItem.BLADES, false)).isEqualTo("not tested, partly measured");
    assertThat(text.said(CheckItem.BLADES))
        .hasSize(2)
        .anyMatch(line -> line.startsWith("As left: "))
        .contains("Before hand-back: OK as far as tested; not tested: leak test.");
    assertThat(text.said(CheckItem.LENS)).isEmpty();
  }

  private static ChecklistText text(Checklist handBack, ExtraTest... tried) {
    return new ChecklistText(Checklist.EMPTY, handBack, List.of(tried));
  }
}
