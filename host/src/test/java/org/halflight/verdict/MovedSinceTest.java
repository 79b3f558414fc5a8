package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.session.Outcome;
import org.halflight.session.RunConditions;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.verdict.MovedSince.Answer;
import org.halflight.verdict.MovedSince.Part;
import org.halflight.verdict.MovedSince.Part.Compared;
import org.halflight.verdict.MovedSince.Part.NotComparable;
import org.halflight.verdict.MovedSince.Side;
import org.halflight.verdict.MovedSince.Why;
import org.halflight.words.MovedWords;
import org.junit.jupiter.api.Test;

class MovedSinceTest {
  private static final Set<String> RIG = Set.of("R-0001");

  @Test
  void aShiftOfTheWholeDialIsFoundWithItsUncertainty() {
    MovedSince moved = moved(dial(Fired.asLeft(), 1, 0.05), dial(Fired.asFound(), 2, 0.45));
    Compared its = (Compared) moved.exercised();
    assertThat(its.answer()).isEqualTo(Answer.MOVED);
    assertThat(its.speed()).isEmpty();
    assertThat(its.stops()).isCloseTo(0.4, within(0.02));
    assertThat(its.uncertaintyStops()).isBetween(0.005, 0.1);
    assertThat(MovedWords.line(moved, "3 March 2026"))
        .contains("3 March 2026")
        .contains("Exercised: it has moved; the whole dial is 0.40 stop slower than before (±0.0")
        .doesNotContain("{");
  }

  @Test
  void noShiftIsNeverCalledOne() {
    MovedSince moved = moved(dial(Fired.asLeft(), 1, 0.05), dial(Fired.asFound(), 2, 0.06));
    assertThat(((Compared) moved.exercised()).answer()).isNotEqualTo(Answer.MOVED);
    assertThat(moved.failures()).isEmpty();
  }

  @Test
  void oneSpeedThatMovedIsNamed() {
    MovedSince moved =
        moved(
            dial(Fired.asLeft(), 1, 0).at("1/250", Fired.errors(8, 5, 0, 0.02)).run(),
            dial(Fired.asFound(), 2, 0).at("1/250", Fired.errors(9, 5, -0.5, 0.02)).run());
    Compared its = (Compared) moved.exercised();
    assertThat(its.answer()).isEqualTo(Answer.MOVED);
    assertThat(its.speed()).contains(MarkedSpeed.parse("1/250"));
    assertThat(its.stops()).isCloseTo(-0.5, within(1e-9));
    assertThat(MovedWords.line(moved, "1 May 2026"))
        .contains("it has moved at 1 of 7 speeds; 1/250 most, it is 0.50 stop faster than before");
  }

  @Test
  void theFirstAfterRestIsComparedWithTheFirstAfterRestAlone() {
    // The first firing is a stop slower than those that follow, both times: that is no change.
    Compared same = (Compared) moved(rested(1.0, 0), rested(1.02, 0)).afterRest();
    assertThat(same.answer()).isNotEqualTo(Answer.MOVED);
    assertThat(same.stops()).isCloseTo(0.02, within(1e-9));
    MovedSince now = moved(rested(0.05, 0), rested(1.0, 0));
    assertThat(((Compared) now.afterRest()).answer()).isEqualTo(Answer.MOVED);
    assertThat(((Compared) now.exercised()).answer()).isNotEqualTo(Answer.MOVED);
    // By hand: 2 * 0.02^2 * (1.9 + 0.3), t of 8 degrees of freedom 2.306 (published tables).
    assertThat(same.uncertaintyStops()).isCloseTo(2.306 * 0.02 * Math.sqrt(2 * 2.2), within(1e-4));
  }

  @Test
  void itSaysWhyTwoVisitsAreNotComparable() {
    RunSummary left = dial(Fired.asLeft(), 1, 0).run();
    RunSummary found = dial(Fired.asFound(), 2, 0).run();
    Side wet = new Side(left, new RunConditions(OptionalDouble.empty(), Map.of("wet", "wet")));
    assertThat(MovedSince.of(wet, side(found), wet, side(found)).exercised())
        .isEqualTo(new NotComparable(Why.OTHER_SETUP, java.util.List.of("wet")));
    assertThat(MovedWords.line(MovedSince.of(wet, side(found), wet, side(found)), "1 May 2026"))
        .contains("not comparable, the set-up differs (Cleaning solvent)");

    Side here = new Side(withRig(left, "R-0001"), RunConditions.NONE);
    Side there = new Side(withRig(found, "R-0002"), RunConditions.NONE);
    assertThat(why(MovedSince.of(here, there, here, there).exercised())).contains(Why.OTHER_RIG);
    assertThat(why(MovedSince.of(here, here, here, here).exercised())).isEmpty();

    assertThat(
            why(
                moved(Fired.asLeft().at("1/2", 0, 0.1), Fired.asFound().at("1/4", 0, 0.1))
                    .exercised()))
        .contains(Why.NO_SAME_SPEED);
    assertThat(
            why(
                moved(Fired.asLeft().at("1/2", 0, 0.1), Fired.asFound().at("1/2", 0.1))
                    .exercised()))
        .contains(Why.FEW_FIRINGS);
    assertThat(why(moved(left, found).afterRest())).contains(Why.NO_REST_LEFT);
    assertThat(why(moved(rested(1, 0), found).afterRest())).contains(Why.NO_REST_FOUND);
    assertThat(why(moved(restedAt("1/2", 1, 0), restedAt("1/4", 1, 0)).afterRest()))
        .contains(Why.OTHER_REST_SPEED);
    Side night = rest(rested(1, 0), 12 * 3600);
    Side minutes = rest(rested(1, 0), 600);
    assertThat(why(MovedSince.of(night, minutes, night, minutes).afterRest()))
        .contains(Why.OTHER_REST);
    assertThat(why(MovedSince.of(night, night, night, night).afterRest())).isEmpty();
    assertThat(
            why(
                moved(
                        Fired.asLeft().at("1/2", Reference.EXACT, Map.of(), OptionalDouble.of(1)),
                        Fired.asFound().at("1/2", Reference.EXACT, Map.of(), OptionalDouble.of(1)))
                    .afterRest()))
        .contains(Why.FEW_FIRINGS);
    for (Why why : Why.values()) {
      MovedSince said =
          new MovedSince(
              new NotComparable(why, java.util.List.of("cells")),
              new NotComparable(why, java.util.List.of()),
              java.util.List.of(),
              java.util.List.of());
      assertThat(MovedWords.line(said, "x")).contains("not comparable, ").doesNotContain("{");
    }
  }

  @Test
  void aShutterThatHangsNowIsSaidFirst() {
    MovedSince moved =
        moved(
            Fired.asLeft().at("1", Fired.errors(1, 5, 0, 0.02)),
            Fired.asFound().hanging("1", 2, Fired.errors(2, 5, 0, 0.02)));
    assertThat(moved.failures())
        .extracting(OutcomeChange::outcome)
        .containsExactly(Outcome.STUCK_OPEN);
    assertThat(MovedWords.line(moved, "1 May 2026"))
        .contains("stuck open in 2 of 7 firings; in none of 5 before. Exercised: ");
  }

  private static Optional<Why> why(Part part) {
    return part instanceof NotComparable not ? Optional.of(not.why()) : Optional.empty();
  }

  private static RunSummary rested(double first, double mean) {
    return restedAt("1/2", first, mean);
  }

  private static RunSummary restedAt(String speed, double first, double mean) {
    return Fired.asFound()
        .at(
            speed,
            Reference.EXACT,
            Map.of(),
            OptionalDouble.of(first),
            Fired.errors(5, 5, mean, 0.02))
        .run();
  }

  private static Fired dial(Fired run, long seed, double mean) {
    for (String speed : new String[] {"1", "1/2", "1/4", "1/8", "1/60", "1/125"}) {
      run.at(speed, Fired.errors(seed + speed.hashCode(), 5, mean, 0.02));
    }
    return run;
  }

  private static RunSummary withRig(RunSummary run, String rig) {
    return new RunSummary(run.phase(), run.speeds(), RunsBehind.ofRigs(Set.of(rig)));
  }

  private static Side rest(RunSummary run, double seconds) {
    return new Side(run, new RunConditions(OptionalDouble.of(seconds), Map.of()));
  }

  private static Side side(RunSummary run) {
    return new Side(
        new RunSummary(run.phase(), run.speeds(), RunsBehind.ofRigs(RIG)), RunConditions.NONE);
  }

  private static MovedSince moved(RunSummary left, RunSummary found) {
    return MovedSince.of(side(left), side(found), side(left), side(found));
  }

  private static MovedSince moved(Fired left, Fired found) {
    return moved(left.run(), found.run());
  }
}
