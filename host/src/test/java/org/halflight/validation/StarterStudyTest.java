package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.halflight.validation.StarterStudy.Count;
import org.halflight.validation.StarterStudy.Use;
import org.halflight.validation.invented.StarterCell;
import org.halflight.validation.invented.StarterCell.Speed;
import org.halflight.validation.invented.StarterRig;
import org.halflight.validation.invented.StarterRig.Room;
import org.junit.jupiter.api.Test;

/** The first sessions of what docs/validation.md claims of the starter rig. Simulated. */
class StarterStudyTest {
  private static final int SESSIONS = 25;

  @Test
  void ninetyFiveOfAHundredFiringsAreWithinThreePercentAtATwoHundredFiftieth() {
    for (Room room : Room.values()) {
      StarterCell cell = new StarterCell(Speed.TWO_HUNDRED_FIFTIETH, room, 0.01);
      Count count = StarterStudy.of(cell, SESSIONS, StarterStudy::byStarter);
      assertThat(count.refused()).isZero();
      // The kick of a reading may take the pin back over the level, for less than the next reading.
      assertThat(count.chattered()).isLessThan(SESSIONS * StarterCell.FIRINGS / 20);
      assertThat(count.darkSeconds()).isLessThan(16e-6);
      assertThat(count.within()).as(room.words()).isLessThan(0.03);
      // At 95 % and 25 sessions fewer come once in a thousand (binomial).
      assertThat(count.held()).as(room.words()).isGreaterThanOrEqualTo(20);
    }
  }

  @Test
  void longOpeningsAreMeasuredByTheirPlateau() {
    StarterCell second = new StarterCell(Speed.ONE, Room.LIT_WITH_RIPPLE, 0.01);
    Count count = StarterStudy.of(second, 2, StarterStudy::byStarter);
    assertThat(count.refused()).isZero();
    assertThat(count.worst()).isLessThan(0.03);
  }

  /** A study that could not fail would show nothing: the truth beside the marking is not held. */
  @Test
  void anIntervalBesideTheTruthIsCounted() {
    StarterCell cell = new StarterCell(Speed.TWO_HUNDRED_FIFTIETH, Room.DARK, 0.01);
    Count beside =
        StarterStudy.of(
            cell,
            5,
            (each, tried) ->
                StarterStudy.byStarter(
                    each,
                    new StarterCell.Tried(
                        tried.rig(), tried.lights(), tried.trueStops() + 0.2, tried.draws())));
    assertThat(beside.held()).isZero();
    assertThat(beside.halfStops()).hasSize(5);
  }

  @Test
  void chargeThatTheConverterLosesIsSeen() {
    StarterCell cell = new StarterCell(Speed.FIVE_HUNDREDTH, Room.DARK, 0);
    Count kept = StarterStudy.of(cell, 12, (c, tried) -> withCharge(c, tried, 0));
    Count lost = StarterStudy.of(cell, 12, (c, tried) -> withCharge(c, tried, 1));
    assertThat(lost.within()).isGreaterThan(1.5 * kept.within());
  }

  private static Count withCharge(StarterCell cell, StarterCell.Tried tried, double lost) {
    return StarterStudy.byStarter(
        cell,
        tried.inEvenLight(),
        tried.rig().only(Set.of()).with(100e3, StarterRig.FARADS, lost, 4),
        Use.USUAL);
  }

  /** The shutters are the same whatever sees them, and hang on their number alone. */
  @Test
  void aSessionIsAlwaysTheSame() {
    StarterCell dark = new StarterCell(Speed.SIXTIETH, Room.DARK, 0.01);
    StarterCell lit = new StarterCell(Speed.SIXTIETH, Room.LIT, 0.02);
    assertThat(dark.session(3).lights())
        .isEqualTo(lit.session(3).lights())
        .isNotEqualTo(dark.session(4).lights());
  }
}
