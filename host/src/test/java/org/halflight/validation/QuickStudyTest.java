package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.validation.QuickStudy.Both;
import org.halflight.validation.invented.OldShutter.Fault;
import org.junit.jupiter.api.Test;

/** The short form of the study of the quick look; simulated, with the seed of Validation. */
class QuickStudyTest {
  private static final int SHUTTERS = 80;

  @Test
  void faultsOfAGroupAreShown() {
    for (Fault fault : List.of(Fault.SLOW_WITH_TAIL, Fault.STICKY_MIDDLE, Fault.TOP_SLOW)) {
      assertThat(shown(QuickStudy.both(fault, 0.75, SHUTTERS))).as("%s", fault).isGreaterThan(0.95);
    }
    assertThat(shown(QuickStudy.both(Fault.AFTER_REST, 0.5, SHUTTERS))).isGreaterThan(0.9);
  }

  /** What the page warns of: a quick look has four speeds of ten. */
  @Test
  void speedsThatAreNotFiredAreMissed() {
    List<Both> all = QuickStudy.both(Fault.ONE_SPEED, 0.75, SHUTTERS);
    assertThat(shown(all)).isBetween(0.25, 0.6);
    assertThat(QuickStudy.part(all, both -> both.five().isShown())).isGreaterThan(0.95);
  }

  @Test
  void soundShuttersGetNoBadVerdictAndFewWindings() {
    List<Both> all = QuickStudy.both(Fault.NOTHING, 0, SHUTTERS);
    assertThat(QuickStudy.part(all, both -> both.quick().elsewhere())).isLessThanOrEqualTo(0.05);
    assertThat(QuickStudy.windings(all)).isLessThan(12);
    assertThat(all).allMatch(both -> both.five().windings() == 52);
  }

  private static double shown(List<Both> all) {
    return QuickStudy.part(all, both -> both.quick().isShown());
  }
}
