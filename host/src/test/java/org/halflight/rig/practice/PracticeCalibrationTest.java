package org.halflight.rig.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.halflight.fixtures.Seeds;
import org.halflight.rig.LineCodec;
import org.halflight.rig.ReferenceDrive;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigLine;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigMessage.Result;
import org.halflight.rig.RigStream;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.LevelComparator;
import org.halflight.shuttermodel.LevelComparators;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.junit.jupiter.api.Test;

/** What the practice rig says about light curves, reference pulses and sweeps. */
class PracticeCalibrationTest {
  private static final long SEED = Seeds.usually(11);

  @Test
  void everyFiringComesWithItsCurve() {
    PracticeRig rig = rig(SensorSet.INVENTED);
    Listener listener = new Listener(rig);
    rig.chooseSpeed(InventedShutters.dial().get(0));
    PracticeFiring slow = rig.fire().orElseThrow();
    rig.chooseSpeed(InventedShutters.dial().get(9));
    PracticeFiring fast = rig.fire().orElseThrow();
    List<SampledLight> curves = curves(events(listener.receive()));

    assertThat(curves).hasSize(2);
    assertThat(curves.get(0).parts())
        .extracting(SampledLight.Part::kind)
        .containsExactly(
            SampledLight.Kind.OPENING, SampledLight.Kind.PLATEAU, SampledLight.Kind.CLOSING);
    for (int i = 0; i < 2; i++) {
      SampledLight.Part opening = curves.get(i).parts().get(0);
      PracticeFiring firing = i == 0 ? slow : fast;
      // It begins in the dark, before the light reaches the low level, and sees full light.
      assertThat(opening.counts(0)).isBetween(4.0, 14.0);
      assertThat(opening.firstTicks()).isLessThan(firing.firstLightTicks() + 16_000);
      assertThat(opening.values().stream().mapToInt(v -> v).max().orElseThrow()).isGreaterThan(150);
    }
  }

  @Test
  void noCurveComesWhileTheyAreOffOrTheConverterIsElsewhere() {
    PracticeRig rig = rig(SensorSet.IDEAL);
    Listener listener = new Listener(rig);
    listener.send(new RigCommand.TakeCurves(RigCommand.CurveMode.OFF));
    rig.fire();
    assertThat(curves(events(listener.receive()))).isEmpty();
    listener.send(new RigCommand.TakeCurves(RigCommand.CurveMode.ON));
    rig.fire();
    assertThat(curves(events(listener.receive()))).hasSize(1);
  }

  @Test
  void aCurveOfAnOuterSensorIsOneCurveLong() {
    PracticeRig rig = rig(SensorSet.INVENTED);
    Listener listener = new Listener(rig);
    listener.send(new RigCommand.TakeCurves(RigCommand.CurveMode.NEXT_OF_OUTER_A));
    rig.fire();
    rig.fire();

    List<SampledLight> curves = curves(events(listener.receive()));
    assertThat(curves)
        .extracting(SampledLight::sensor)
        .containsExactly(Channel.OUTER_A, Channel.CENTRE_LOW);
    // Its full light is its own, which is less than the centre's.
    assertThat(most(curves.get(0))).isLessThan(most(curves.get(1)) - 3);
  }

  private static double most(SampledLight light) {
    return light.parts().get(0).values().stream().mapToInt(v -> v).max().orElseThrow();
  }

  @Test
  void referencePulsesAreToldToTheTickAndSeenByTheSensors() {
    PracticeRig rig = rig(SensorSet.IDEAL);
    Listener listener = new Listener(rig);
    int asked = listener.send(new RigCommand.DriveReference(ReferenceDrive.SQUARE, 16_000, 3));
    List<RigMessage> heard = listener.receive();

    assertThat(answers(heard)).contains(new RigMessage.Answer(seq(heard), asked, Result.DONE));
    List<RigMessage.PulseMade> pulses = Listener.only(RigMessage.PulseMade.class, heard);
    assertThat(pulses).extracting(RigMessage.PulseMade::index).containsExactly(0, 1, 2);
    List<RigMessage.EdgeSeen> low =
        Listener.only(RigMessage.EdgeSeen.class, heard).stream()
            .filter(edge -> edge.channel() == Channel.CENTRE_LOW)
            .toList();
    assertThat(low).hasSize(6);
    for (int i = 0; i < 3; i++) {
      assertThat(pulses.get(i).end32() - pulses.get(i).begin32()).isEqualTo(16_000);
      assertThat(low.get(2 * i).low32() - pulses.get(i).begin32()).isBetween(0, 2);
      assertThat(low.get(2 * i + 1).low32() - pulses.get(i).end32()).isBetween(0, 2);
      if (i > 0) {
        assertThat(pulses.get(i).begin32() - pulses.get(i - 1).end32())
            .isGreaterThanOrEqualTo(320_000);
      }
    }
  }

  /** Behind the filter of one pole, a level q is reached at -tau ln(1 - q / SHARE). */
  @Test
  void aRampedPulseRisesAndFallsSlowly() {
    PracticeRig rig = rig(SensorSet.IDEAL);
    Listener listener = new Listener(rig);
    listener.send(new RigCommand.DriveReference(ReferenceDrive.RAMPED, 800_000, 1));
    List<RigMessage> heard = listener.receive();
    RigMessage.PulseMade pulse = Listener.only(RigMessage.PulseMade.class, heard).get(0);
    FrontEnd centre = SensorSet.IDEAL.centre();
    for (Channel channel : List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH)) {
      RigMessage.EdgeSeen rise =
          Listener.only(RigMessage.EdgeSeen.class, heard).stream()
              .filter(edge -> edge.channel() == channel)
              .findFirst()
              .orElseThrow();
      double level = centre.levelOf(channel == Channel.CENTRE_LOW ? 0x2B : 0xA1);
      double expected = -2e-3 * Math.log(1 - level / ReferenceLed.SHARE) * 16e6;
      assertThat((double) rise.low32() - pulse.begin32()).isCloseTo(expected, within(30.0));
    }
  }

  @Test
  void aSteadyReferenceGoesOffByItselfAndByCommand() {
    PracticeRig rig = rig(SensorSet.IDEAL);
    Listener listener = new Listener(rig);
    listener.send(RigCommand.DriveReference.steady());
    List<RigMessage> heard = listener.receive();
    rig.rest(11);
    heard.addAll(listener.receive());
    listener.send(RigCommand.DriveReference.steady());
    listener.send(RigCommand.DriveReference.off());
    heard.addAll(listener.receive());
    assertThat(
            Listener.only(RigMessage.EdgeSeen.class, heard).stream()
                .filter(edge -> edge.channel() == Channel.CENTRE_HIGH)
                .map(RigMessage.EdgeSeen::high))
        .containsExactly(true, false, true, false);
  }

  @Test
  void aSweepFindsWhereTheComparatorSwitches() {
    LevelComparator low = new LevelComparator(8, 20, 0, 0);
    SensorSet sensors =
        quiet()
            .with(
                new LevelComparators(
                    low, LevelComparator.IDEAL, LevelComparator.IDEAL, LevelComparator.IDEAL));
    PracticeRig rig = rig(sensors);
    Listener listener = new Listener(rig);
    rig.holdOpen(true);
    // Full light is 1000 mV: fine code 0x333 is 999.8 mV.
    int asked = listener.send(new RigCommand.SweepThreshold(Channel.CENTRE_LOW, 0x300, 0x360));
    List<RigMessage> heard = listener.receive();
    List<RigMessage.TripPoint> trips = Listener.only(RigMessage.TripPoint.class, heard);

    assertThat(trips).extracting(RigMessage.TripPoint::rising).containsExactly(true, false);
    // Going up it switches off at light - offset + half the hysteresis, going down at - half.
    assertThat(millivolts(trips.get(0))).isCloseTo(1000 - 8 + 10, within(2.5));
    assertThat(millivolts(trips.get(1))).isCloseTo(1000 - 8 - 10, within(2.5));
    assertThat(answers(heard).get(answers(heard).size() - 1).commandSequence()).isEqualTo(asked);
    listener.send(new RigCommand.AskThresholds());
    RigMessage.Thresholds after =
        Listener.only(RigMessage.Thresholds.class, listener.receive()).get(0);
    assertThat(after.lowSum64() / 64.0).isCloseTo(4 * (0x2B + 1), within(1.0));
  }

  @Test
  void aSweepBesideTheLightSaysThatItDidNotSwitch() {
    PracticeRig rig = rig(quiet());
    Listener listener = new Listener(rig);
    rig.holdOpen(true);
    listener.send(new RigCommand.SweepThreshold(Channel.CENTRE_HIGH, 0x100, 0x110));
    List<RigMessage.TripPoint> trips =
        Listener.only(RigMessage.TripPoint.class, listener.receive());
    assertThat(trips).extracting(RigMessage.TripPoint::fineCode).containsExactly(0, 0);
  }

  private static double millivolts(RigMessage.TripPoint trip) {
    return (trip.levelSum64() / 64.0 + 0.5) * 5000 / 1024;
  }

  /** Full light of 1 V, no noise to speak of. */
  private static SensorSet quiet() {
    FrontEnd front = new FrontEnd(40, 1000, 0, 0.1, Lamp.STEADY);
    return new SensorSet(front, front, front);
  }

  private static PracticeRig rig(SensorSet sensors) {
    return PracticeRig.unpaced(
        InventedShutters.soundLeaf(InventedShutters.dial(), SEED), sensors, SEED);
  }

  private static List<RigMessage.Answer> answers(List<RigMessage> heard) {
    return Listener.only(RigMessage.Answer.class, heard);
  }

  private static int seq(List<RigMessage> heard) {
    return answers(heard).get(0).sequence();
  }

  private static List<RigEvent> events(List<RigMessage> heard) {
    RigStream stream = new RigStream();
    List<RigEvent> events = new ArrayList<>();
    heard.forEach(message -> events.addAll(stream.accept(RigLine.of(LineCodec.format(message)))));
    assertThat(stream.curvesDropped()).isZero();
    return events;
  }

  private static List<SampledLight> curves(List<RigEvent> events) {
    return events.stream()
        .filter(RigEvent.CurveSeen.class::isInstance)
        .map(event -> ((RigEvent.CurveSeen) event).light())
        .toList();
  }
}
