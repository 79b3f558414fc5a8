package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.halflight.exposure.LightLevels;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Test;

/** When the bench asks for a long light curve, and what rigs may answer. */
class CurveLookTest {
  private static final MarkedSpeed S60 = MarkedSpeed.parse("1/60");
  private static final MarkedSpeed S250 = MarkedSpeed.parse("1/250");
  private static final RigCommand ASK =
      new RigCommand.TakeCurves(RigCommand.CurveMode.NEXT_ONE_LONG);

  private final Session session = new Session();
  private final CurveLook look = new CurveLook();

  private void begin(MarkedSpeed... speeds) {
    session.handle(new SessionInput.RigIs("R-0001", 7, BoardTraits.USUAL, ""));
    session.handle(new SessionInput.LightSet(new LightLevels(20, 820, 189, 651)));
    session.handle(
        new SessionInput.RunBegins(
            new RunSetup("", Phase.AS_LEFT, "leaf", List.of(speeds), Reference.EXACT, 5)));
  }

  private void answered(RigMessage.Result result) {
    look.sent(new BenchEvent.Sent(1, LineCodec.format(0x0A0B, ASK)));
    look.onEvent(new RigMessage.Answer(0, 0x0A0B, result));
  }

  @Test
  void aFastSpeedIsAskedForOnce() {
    begin(S250);

    assertThat(look.next(session)).contains(ASK);
    answered(RigMessage.Result.DONE);
    assertThat(look.next(session)).isEmpty();
  }

  @Test
  void slowSpeedsAndWhatIsNoRunAreLeftAlone() {
    assertThat(look.next(session)).isEmpty();
    begin(S60);
    assertThat(look.next(session)).isEmpty();
  }

  @Test
  void theRigForgetsItWhenASlowSpeedIsShown() {
    begin(S250, S60);
    assertThat(look.next(session)).contains(ASK);

    session.handle(new SessionInput.SpeedChosen(S60));

    assertThat(look.next(session)).contains(new RigCommand.TakeCurves(RigCommand.CurveMode.ON));
    assertThat(look.next(session)).isEmpty();
  }

  @Test
  void anOlderRigDoesWithout() {
    begin(S250);
    assertThat(look.next(session)).contains(ASK);
    answered(RigMessage.Result.BAD_FIELDS);

    assertThat(look.next(session)).isEmpty();
  }

  @Test
  void aRigThatNeverAnswersIsLeftAlone() {
    begin(S250);
    assertThat(look.next(session)).contains(ASK);
    look.unanswered();

    assertThat(look.next(session)).isEmpty();
  }

  @Test
  void aRigThatStartedAnewIsAskedAgain() {
    begin(S250);
    assertThat(look.next(session)).contains(ASK);
    look.onEvent(new RigEvent.Restarted());

    assertThat(look.next(session)).contains(ASK);
  }

  @Test
  void curvesOfFiringsThatDoNotCountAreTriedAgainButNotForEver() {
    begin(S250);
    int asked = 0;
    for (int i = 0; i < 10; i++) {
      Optional<RigCommand> command = look.next(session);
      asked += command.filter(ASK::equals).isPresent() ? 1 : 0;
      look.onEvent(new RigEvent.CurveSeen(longCurve()));
    }
    assertThat(asked).isEqualTo(CurveLook.TRIES_MOST);
  }

  @Test
  void theCurveOfAnOuterSensorGoesFirstAndIsAskedForOnce() {
    begin(S250);
    look.want(Optional.of(Channel.OUTER_B));
    RigCommand outer = new RigCommand.TakeCurves(RigCommand.CurveMode.NEXT_OF_OUTER_B);

    assertThat(look.next(session)).contains(outer);
    assertThat(look.next(session)).isEmpty();
    look.onEvent(
        new RigEvent.CurveSeen(
            new SampledLight(Channel.OUTER_B, longCurve().parts().subList(0, 1), false)));

    assertThat(look.wanted()).isEmpty();
    assertThat(look.next(session)).contains(ASK);
  }

  @Test
  void olderFirmwareRefusesIt() {
    begin(S60);
    look.want(Optional.of(Channel.OUTER_A));
    RigCommand outer = look.next(session).orElseThrow();
    look.sent(new BenchEvent.Sent(1, LineCodec.format(0x0A0B, outer)));
    look.onEvent(new RigMessage.Answer(0, 0x0A0B, RigMessage.Result.BAD_FIELDS));

    assertThat(look.wanted()).isEmpty();
    assertThat(look.next(session)).isEmpty();
  }

  private static SampledLight longCurve() {
    return new SampledLight(
        List.of(
            new SampledLight.Part(SampledLight.Kind.OPENING, 0, 256, List.of(5, 200, 5), false),
            new SampledLight.Part(SampledLight.Kind.TAIL, 768, 1024, List.of(320, 320), false)),
        false);
  }
}
