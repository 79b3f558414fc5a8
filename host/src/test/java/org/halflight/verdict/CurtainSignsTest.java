package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.ByLaw;
import org.halflight.exposure.CurtainGeometry;
import org.halflight.exposure.CurtainRun;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Direction;
import org.halflight.exposure.Place;
import org.halflight.exposure.PlacePassing;
import org.halflight.session.Adjuster;
import org.halflight.session.CurtainStep;
import org.halflight.session.OwnTravel;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainAdvice.Act;
import org.halflight.verdict.CurtainAdvice.Known;
import org.halflight.verdict.CurtainSign.Kind;
import org.junit.jupiter.api.Test;

/**
 * Signs of curtains that start from rest 9 mm before the frame and gain speed evenly. What each
 * fault does to the places is common practice, no source; travel and frame of the sound one are
 * those of the repair manual in fixtures/published/published_measurements.csv (R1).
 */
class CurtainSignsTest {
  private static final double FRAME = 36;
  private static final double OUTER = 0.45 * FRAME;
  private static final double RUN_UP = 9;
  private static final double TRAVEL = 17e-3;
  private static final CurtainWanted OWN =
      new CurtainWanted(
          Optional.of(new OwnTravel(17, FRAME)), Optional.of(MarkedSpeed.parse("1/30")));

  /** One invented shutter; times in seconds. */
  private record Curtains(
      double firstTravel,
      double secondTravel,
      double late,
      double firstDrag,
      double secondDrag,
      double bounce,
      double contact) {
    static final Curtains SOUND = new Curtains(TRAVEL, TRAVEL, 0, 0, 0, 0, 0.5e-3);

    Curtains travels(double first, double second) {
      return new Curtains(first, second, late, firstDrag, secondDrag, bounce, contact);
    }

    Curtains late(double seconds) {
      return new Curtains(
          firstTravel, secondTravel, seconds, firstDrag, secondDrag, bounce, contact);
    }

    Curtains drags(double first, double second) {
      return new Curtains(firstTravel, secondTravel, late, first, second, bounce, contact);
    }

    Curtains bounces(double seconds) {
      return new Curtains(firstTravel, secondTravel, late, firstDrag, secondDrag, seconds, contact);
    }

    Curtains closes(double seconds) {
      return new Curtains(firstTravel, secondTravel, late, firstDrag, secondDrag, bounce, seconds);
    }

    /** From rest to a place, with a drag beyond the last third. */
    private static double at(double travel, double drag, double millimetres) {
      double way = FRAME / 2 + millimetres;
      double even =
          Math.sqrt(way + RUN_UP) / (Math.sqrt(FRAME + RUN_UP) - Math.sqrt(RUN_UP)) * travel;
      return even + drag * Math.max(0, way - FRAME * 2 / 3) / (OUTER - FRAME / 6);
    }

    CurtainShot shot(String speed, boolean afterRest) {
      MarkedSpeed marked = MarkedSpeed.parse(speed);
      double opensEnd = at(firstTravel, firstDrag, FRAME / 2);
      double zero = at(firstTravel, firstDrag, -OUTER);
      double delay = marked.exactSeconds() + late;
      List<PlacePassing> places = new ArrayList<>();
      for (Place place : Place.values()) {
        double x = OUTER * (place.index() - 1);
        double opens = at(firstTravel, firstDrag, x);
        double covers = at(secondTravel, secondDrag, x) + delay;
        double light = place == Place.END ? bounce : 0;
        boolean dark = covers <= opens;
        places.add(
            new PlacePassing(
                place,
                x,
                dark ? OptionalDouble.empty() : OptionalDouble.of(opens - zero),
                dark ? OptionalDouble.empty() : OptionalDouble.of(covers - zero),
                dark ? OptionalDouble.empty() : OptionalDouble.of(covers - opens + light),
                1e-6,
                light > 0 ? OptionalDouble.of(light) : OptionalDouble.empty(),
                light > 0 ? OptionalDouble.of(5e-3) : OptionalDouble.empty(),
                OptionalDouble.empty()));
      }
      boolean whole = places.stream().noneMatch(PlacePassing::isDark);
      CurtainTravel travel =
          new CurtainTravel(
              0,
              CurtainGeometry.usual(FRAME),
              Direction.A_TO_B,
              places,
              whole ? Optional.of(run(firstTravel, firstDrag)) : Optional.empty(),
              whole ? Optional.of(run(secondTravel, secondDrag)) : Optional.empty(),
              1e-6,
              OptionalDouble.empty(),
              OptionalDouble.of(opensEnd - zero),
              OptionalDouble.of(at(secondTravel, 0, -FRAME / 2) + delay - zero),
              1e-6,
              new ByLaw(1e-4, 1e-4),
              new ByLaw(1e-4, 1e-4),
              Set.of(),
              Set.of());
      return new CurtainShot(
          marked,
          marked.exactSeconds(),
          travel,
          OptionalDouble.of(opensEnd - zero + contact),
          afterRest);
    }

    private static CurtainRun run(double travel, double drag) {
      double first = at(travel, drag, 0) - at(travel, drag, -OUTER);
      double last = at(travel, drag, OUTER) - at(travel, drag, 0);
      return new CurtainRun(
          first + last,
          at(travel, drag, FRAME / 2) - at(travel, drag, -FRAME / 2),
          1e-5,
          OUTER / first / 1e3,
          OUTER / last / 1e3);
    }
  }

  private static List<CurtainShot> fired(Curtains curtains) {
    List<CurtainShot> shots = new ArrayList<>();
    for (String speed : List.of("1/30", "1/125", "1/250", "1/500", "1/1000")) {
      for (int i = 0; i < 3; i++) {
        // A trace of scatter, so that there is an interval.
        shots.add(curtains.late(curtains.late() + (i - 1) * 2e-6).shot(speed, false));
      }
    }
    return shots;
  }

  private static List<CurtainSign> signs(Curtains curtains, CurtainWanted wanted) {
    return CurtainSigns.of(CurtainRunFigures.ofShots(fired(curtains)).orElseThrow(), wanted);
  }

  private static List<Kind> kinds(Curtains curtains, CurtainWanted wanted) {
    return signs(curtains, wanted).stream().map(CurtainSign::kind).toList();
  }

  private static CurtainAdvice next(Curtains curtains, CurtainWanted wanted, Known known) {
    return CurtainAdvice.of(signs(curtains, wanted), known);
  }

  @Test
  void nothingStandsOutOfSoundCurtains() {
    assertThat(kinds(Curtains.SOUND, OWN)).isEmpty();
    assertThat(kinds(Curtains.SOUND, CurtainWanted.UNKNOWN)).isEmpty();
    assertThat(next(Curtains.SOUND, OWN, Known.NOTHING))
        .isEqualTo(new CurtainAdvice(Act.NOTHING, CurtainStep.NEXT_DAY, Optional.empty()));
  }

  @Test
  void aWedgeIsNoLateLatch() {
    Curtains behind = Curtains.SOUND.travels(TRAVEL, TRAVEL + 0.4e-3);
    assertThat(kinds(behind, OWN)).containsExactly(Kind.WEDGE_END_BRIGHTER);
    assertThat(next(behind, OWN, Known.NOTHING).act()).isEqualTo(Act.MORE_SECOND);
    Curtains gains = Curtains.SOUND.travels(TRAVEL, TRAVEL - 0.4e-3);
    assertThat(kinds(gains, OWN)).containsExactly(Kind.WEDGE_END_DARKER);
    assertThat(next(gains, OWN, Known.NOTHING).act()).isEqualTo(Act.LESS_SECOND);
    // Without an adjuster on the second curtain, the first has to do.
    assertThat(
            next(
                    gains,
                    OWN,
                    new Known(
                        EnumSet.of(Adjuster.FIRST_TENSION),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()))
                .act())
        .isEqualTo(Act.MORE_FIRST);
  }

  @Test
  void whicheverBringsBothNearerTheirFigure() {
    Curtains slow = Curtains.SOUND.travels(TRAVEL + 1.5e-3, TRAVEL + 1.1e-3);
    assertThat(kinds(slow, OWN))
        .containsExactlyInAnyOrder(Kind.FIRST_SLOW, Kind.SECOND_SLOW, Kind.WEDGE_END_DARKER);
    assertThat(next(slow, OWN, Known.NOTHING).act()).isEqualTo(Act.MORE_FIRST);
  }

  @Test
  void aLateLatchIsSeenAtTheTopSpeedAlone() {
    List<CurtainShot> top =
        fired(Curtains.SOUND.late(0.3e-3)).stream()
            .filter(shot -> shot.speed().equals(MarkedSpeed.parse("1/1000")))
            .toList();
    assertThat(CurtainSigns.of(CurtainRunFigures.ofShots(top).orElseThrow(), OWN))
        .singleElement()
        .satisfies(sign -> assertThat(sign.kind()).isEqualTo(Kind.LATCH_LATE));
  }

  @Test
  void aLateLatchIsNoWedge() {
    Curtains late = Curtains.SOUND.late(0.25e-3);
    assertThat(signs(late, OWN))
        .singleElement()
        .satisfies(
            sign -> {
              assertThat(sign.kind()).isEqualTo(Kind.LATCH_LATE);
              assertThat(sign.size()).isBetween(0.24e-3, 0.26e-3);
            });
    assertThat(next(late, OWN, Known.NOTHING).act()).isEqualTo(Act.NARROWER_SLIT);
    assertThat(kinds(Curtains.SOUND.late(-0.25e-3), OWN)).containsExactly(Kind.LATCH_EARLY);
  }

  @Test
  void aDragIsNeither() {
    assertThat(kinds(Curtains.SOUND.drags(0.4e-3, 0), OWN)).containsExactly(Kind.FIRST_DRAGS);
    assertThat(kinds(Curtains.SOUND.drags(0, 0.4e-3), OWN)).containsExactly(Kind.SECOND_DRAGS);
  }

  @Test
  void aBounceIsNoDrag() {
    Curtains bounces = Curtains.SOUND.bounces(0.2e-3);
    assertThat(kinds(bounces, OWN)).containsExactly(Kind.SECOND_BOUNCES);
    assertThat(next(bounces, OWN, Known.NOTHING).step()).isEqualTo(CurtainStep.BRAKE);
  }

  @Test
  void aCappedEndLeavesTheSlitAlone() {
    Curtains capped = Curtains.SOUND.travels(TRAVEL + 1.4e-3, TRAVEL);
    assertThat(kinds(capped, OWN)).startsWith(Kind.CAPPED_AT_END).contains(Kind.FIRST_SLOW);
    assertThat(next(capped, OWN, Known.NOTHING).act()).isEqualTo(Act.MORE_FIRST);
  }

  @Test
  void tensionNeverHidesGum() {
    Curtains slow = Curtains.SOUND.travels(TRAVEL + 2e-3, TRAVEL + 2e-3);
    List<CurtainShot> shots = fired(slow);
    shots.add(0, Curtains.SOUND.travels(TRAVEL + 5e-3, TRAVEL + 5e-3).shot("1/1000", true));
    List<CurtainSign> signs = CurtainSigns.of(CurtainRunFigures.ofShots(shots).orElseThrow(), OWN);
    assertThat(CurtainAdvice.of(signs, Known.NOTHING).act()).isEqualTo(Act.CLEAN_DO_NOT_WIND);
    Known wound =
        new Known(Adjuster.ALL, OptionalDouble.of(0.5), OptionalDouble.of(0), Optional.empty());
    assertThat(CurtainAdvice.of(signs, wound).act()).isEqualTo(Act.STOP_SOMETHING_DRAGS);
  }

  @Test
  void theContactIsJudgedAgainstTheWindow() {
    assertThat(kinds(Curtains.SOUND.closes(-1e-3), OWN)).containsExactly(Kind.CONTACT_EARLY);
    assertThat(kinds(Curtains.SOUND.closes(15.8e-3), OWN)).containsExactly(Kind.CONTACT_LATE);
    CurtainWanted tooFast =
        new CurtainWanted(OWN.travel(), Optional.of(MarkedSpeed.parse("1/125")));
    assertThat(kinds(Curtains.SOUND, tooFast)).containsExactly(Kind.NO_WINDOW);
  }

  @Test
  void slowSpeedsComeAfterTheFastOnes() {
    Known slow =
        new Known(
            Adjuster.ALL,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.of(MarkedSpeed.parse("1/8")));
    assertThat(next(Curtains.SOUND, OWN, slow).act()).isEqualTo(Act.ESCAPEMENT);
    assertThat(next(Curtains.SOUND.late(0.3e-3), OWN, slow).act()).isEqualTo(Act.NARROWER_SLIT);
  }

  @Test
  void theLimitOfTheSlopeGrowsWithTheSpeed() {
    assertThat(CurtainLimits.slopeStops(1 / 60.0)).isEqualTo(1 / 6.0);
    assertThat(CurtainLimits.slopeStops(1 / 500.0)).isEqualTo(0.25);
    assertThat(CurtainLimits.slopeStops(1 / 2000.0)).isEqualTo(1 / 3.0);
  }
}
