package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.RigFeed;
import org.halflight.bench.RigWork;
import org.halflight.firstlight.Fault;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstLightWords;
import org.halflight.firstlight.FirstStep;
import org.halflight.rig.RigCommand;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.rig.practice.WiringFault;
import org.halflight.signal.BoardTraits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class FirstLightWorkTest {
  private static final long SEED = 19;
  private static final int STEPS_MOST = 20_000;
  private static final int LINES_OF_A_STEP = 4_000;

  /** Light, firing, page and calibration follow in the session. */
  private static final Set<FirstStep> LATER =
      EnumSet.of(FirstStep.LIGHT, FirstStep.FIRING, FirstStep.PAGE, FirstStep.CALIBRATION);

  @ParameterizedTest
  @EnumSource(BoardTraits.Kind.class)
  void everyInputOfAWellWiredRigPassesAndNoOtherIsAskedFor(BoardTraits.Kind kind) {
    FirstLight came = new Bench(kind, WiringFault.NONE, false).whole();
    for (FirstStep step : came.steps()) {
      Finding finding = came.of(step);
      boolean tested = step != FirstStep.SUPPLY && !LATER.contains(step);
      assertThat(finding.outcome())
          .as(FirstLightWords.remark(step, finding, came.rig().board()))
          .isEqualTo(tested ? Finding.Outcome.PASSED : Finding.Outcome.NOT_TESTED);
      assertThat(finding.seen().isEmpty()).as("%s", step).isEqualTo(!tested);
    }
    assertThat(came.steps().contains(FirstStep.CONTACT)).isEqualTo(kind == BoardTraits.Kind.FULL);
    assertThat(came.steps().contains(FirstStep.LED)).isEqualTo(kind != BoardTraits.Kind.STARTER);
  }

  @ParameterizedTest
  @CsvSource({
    "LEVELS_SWAPPED, FULL, CENTRE, LEVELS_SWAPPED, D6 and D8",
    "LOW_INVERTED, SMALL, CENTRE, LEVEL_INVERTED, D6 is at 1 in the dark",
    "CENTRE_DEAD, STARTER, CENTRE, NO_LIGHT, A0 stays dark",
    "LOW_OPEN, STARTER, CENTRE, LEVEL_NEVER_ON, anode",
    "OUTERS_SWAPPED, FULL, OUTER_A, SENSORS_SWAPPED, outer sensor B went dark",
    "CONTACT_SHORTED, FULL, CONTACT, STUCK_ON, short at D7",
    "RELEASE_OPEN, SMALL, RELEASE, NOTHING_CAME, wire to D12",
    "RELEASE_ON_KNOB, STARTER, RELEASE, ANOTHER_INPUT, wires at D12 and A5",
    "LED_DEAD, SMALL, LED, LED_DARK, D9",
    "LOW_THRESHOLD_FIXED, FULL, THRESHOLDS, THRESHOLD_FIXED, D3"
  })
  void aFaultIsNamedAndNothingElse(
      WiringFault wired, BoardTraits.Kind kind, FirstStep at, Fault fault, String words) {
    FirstLight came = new Bench(kind, wired, false).whole();
    assertThat(came.of(at).fault()).contains(fault);
    assertThat(FirstLightWords.remark(at, came.of(at), came.rig().board())).contains(words);
    for (FirstStep step : came.steps()) {
      if (step.compareTo(at) < 0 && step != FirstStep.SUPPLY) {
        assertThat(came.of(step).isPassed()).as("%s", step).isTrue();
      }
    }
  }

  @Test
  void aFaultThatIsMendedIsSeenToBeGone() {
    Bench bench = new Bench(BoardTraits.Kind.SMALL, WiringFault.LOW_INVERTED, true);
    PracticeOperator hand = bench.hand;
    FirstLightWork first = bench.work;
    first.volts("4,9 V");
    assertThat(first.step()).isEqualTo(FirstStep.CENTRE);
    hand.tryInput(FirstStep.CENTRE);
    bench.until(() -> first.prompt().remark().contains("Exchange"), STEPS_MOST);
    first.answer(Answer.DONE);
    hand.wire(WiringFault.NONE);
    hand.tryInput(FirstStep.CENTRE);
    bench.until(() -> first.step() != FirstStep.CENTRE, STEPS_MOST);
    assertThat(first.state().of(FirstStep.CENTRE).isPassed()).isTrue();
    first.answer(Answer.SKIP);
    first.answer(Answer.STOP);
    assertThat(first.prompt().state()).isEqualTo(Prompt.State.OVER);
    assertThat(first.state().of(FirstStep.CLICK).outcome()).isEqualTo(Finding.Outcome.NOT_TESTED);
    assertThat(FirstLightWords.report(first.state()))
        .contains("practice rig: invented shutter, simulated figures")
        .last()
        .asString()
        .startsWith("Not tested: Click sensor, Release, Knob contact");
  }

  @Test
  void voltsThatAreNoneAreAskedForAgain() {
    FirstLightWork first = new Bench(BoardTraits.Kind.STARTER, WiringFault.NONE, true).work;
    first.volts("five");
    assertThat(first.prompt().remark()).contains("five is no voltage");
    first.answer(Answer.DONE);
    assertThat(first.prompt().remark()).contains("Type the volts");
    first.volts("4.2");
    assertThat(first.state().of(FirstStep.SUPPLY).fault()).contains(Fault.SUPPLY_LOW);
  }

  /** A rig in virtual time, whose clock goes on when there is nothing to read. */
  private static final class Bench {
    private static final long STEP_NANOS = 50_000_000;

    private final AtomicLong nanos = new AtomicLong();
    private final PracticeOperator hand;
    private final FirstLightWork work;

    Bench(BoardTraits.Kind kind, WiringFault wired, boolean byPerson) {
      hand = PracticeOperator.paced(kind, SEED, nanos::get, Instant.EPOCH);
      hand.wire(wired);
      PracticeRig[] rig = new PracticeRig[1];
      hand.ports().onBench(its -> rig[0] = its);
      rig[0].readsAtOnce();
      PumpFeed pump = new PumpFeed(rig[0], nanos::get);
      RigWork lent = new RigWork(new GoesOn(pump, nanos));
      for (int steps = 0; lent.greeting().isEmpty(); steps++) {
        assertThat(steps).isLessThan(STEPS_MOST);
        lent.step();
      }
      work = new FirstLightWork(lent, byPerson ? CameraOperator.PERSON : hand);
    }

    void until(BooleanSupplier holds, int most) {
      for (int steps = 0; !holds.getAsBoolean() && steps < most; steps++) {
        work.advance();
      }
    }

    /** Skips the supply, does what each step asks for, and leaves a step that does not pass. */
    FirstLight whole() {
      work.answer(Answer.SKIP);
      for (int rounds = 0; work.prompt().state() != Prompt.State.OVER; rounds++) {
        assertThat(rounds).as("%s", work.step()).isLessThan(FirstStep.values().length);
        FirstStep step = work.step();
        BooleanSupplier isOver =
            () -> work.step() != step || work.prompt().state() == Prompt.State.OVER;
        work.answer(Answer.DONE);
        until(isOver, LINES_OF_A_STEP);
        if (!isOver.getAsBoolean()) {
          work.answer(Answer.DONE);
          until(
              () -> isOver.getAsBoolean() || work.prompt().state() == Prompt.State.ASKING,
              LINES_OF_A_STEP);
        }
        if (!isOver.getAsBoolean()) {
          work.answer(Answer.SKIP);
        }
      }
      return work.state();
    }
  }

  private record GoesOn(PumpFeed pump, AtomicLong nanos) implements RigFeed {
    @Override
    public Optional<Item> next() {
      Optional<Item> came = pump.next();
      if (came.isEmpty()) {
        nanos.addAndGet(Bench.STEP_NANOS);
      }
      return came;
    }

    @Override
    public void send(RigCommand command) {
      pump.send(command);
    }

    @Override
    public long nowNanos() {
      return pump.nowNanos();
    }

    @Override
    public void close() {
      pump.close();
    }
  }
}
