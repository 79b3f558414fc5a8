package org.halflight.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.halflight.light.Aim.Lamp;
import org.halflight.light.Aim.Move;
import org.halflight.light.Aim.State;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.Test;

/** Where the light is aimed, by our own limits: what the meter says next, reading by reading. */
class AimTest {
  private static final double DARK = 8;

  private final AimTrail trail = new AimTrail();
  private double seconds;

  @Test
  void fromTheDarkToALightThatCanBeSet() {
    assertThat(trail.aim().move()).isEqualTo(Move.WAIT);
    shows(DARK, 20);
    assertThat(trail.aim().move()).isEqualTo(Move.OPEN);
    assertThat(trail.aim().of(Lamp.STRAY)).as("dark beside any light").isEqualTo(State.GOOD);
    shows(150, 20);
    assertThat(trail.aim().move()).isEqualTo(Move.CLOSER);
    for (double counts = 150; counts < 400; counts += 20) {
      shows(counts, 1);
    }
    shows(400, 5);
    assertThat(trail.aim().move()).isEqualTo(Move.A_LITTLE_CLOSER);
    shows(700, 5);
    shows(950, 5);
    assertThat(trail.aim().move()).isEqualTo(Move.A_LITTLE_FURTHER);
    shows(800, 20);
    assertThat(trail.aim().move()).as("the lamp was not judged yet").isEqualTo(Move.LOOK_ON);
    trail.judged(steadyLamp());
    assertThat(trail.aim().move()).isEqualTo(Move.SET);
    assertThat(trail.aim().strayShare().orElseThrow()).isCloseTo(DARK / 800, within(1e-9));
  }

  @Test
  void lightAtTheEndOfTheScaleIsTooBright() {
    shows(1010, 20);
    assertThat(trail.aim().move()).isEqualTo(Move.FURTHER);
    assertThat(trail.aim().centre().orElseThrow().clips()).isTrue();
  }

  @Test
  void oneReadingAtTheEndOfTheScaleIsEnough() {
    trail.add(new MeterReading(Channel.CENTRE_LOW, 0, 800, 1020));
    assertThat(trail.aim().move()).isEqualTo(Move.FURTHER);
  }

  @Test
  void lightWithTheShutterShutIsShadedFirstAndGoesWhenItIs() {
    shows(150, 10);
    assertThat(trail.aim().of(Lamp.STRAY)).as("nobody knows the shutter").isEqualTo(State.UNKNOWN);
    shows(800, 10);
    assertThat(trail.aim().move()).isEqualTo(Move.SHADE);
    assertThat(trail.aim().strayShare().orElseThrow()).isCloseTo(150.0 / 800, within(1e-9));
    shows(30, 10);
    assertThat(trail.aim().of(Lamp.STRAY)).isEqualTo(State.GOOD);
    shows(750, 10);
    assertThat(trail.aim().of(Lamp.STRAY)).isEqualTo(State.GOOD);
  }

  @Test
  void aReadingAmongMovingBladesIsNoLevel() {
    shows(DARK, 10);
    shows(390, 1);
    shows(800, 10);
    assertThat(trail.aim().of(Lamp.STRAY)).isEqualTo(State.GOOD);
    shows(300, 1);
    shows(DARK, 10);
    assertThat(trail.aim().strayShare().orElseThrow()).isCloseTo(DARK / 800, within(1e-9));
  }

  @Test
  void aLampMovedByHandOpensNoShutter() {
    shows(900, 10);
    for (double counts = 900; counts > 200; counts *= 0.9) {
      shows(counts, 1);
    }
    shows(200, 10);
    assertThat(trail.aim().strayShare()).isEmpty();
    assertThat(trail.aim().move()).isEqualTo(Move.A_LITTLE_CLOSER);
  }

  @Test
  void enoughLightAndNothingKnownOfStrayLightAsksForTheShutter() {
    shows(800, 30);
    trail.judged(steadyLamp());
    assertThat(trail.aim().move()).isEqualTo(Move.SHUT);
  }

  @Test
  void flickerAndWanderAreSaidOnceTheLightIsThere() {
    shows(DARK, 10);
    shows(800, 30);
    List<LightBlock> mains = new ArrayList<>();
    for (int i = 0; i < 250; i++) {
      int counts = (int) Math.round(800 + 80 * Math.sin(2 * Math.PI * 100 * i / 1000.0));
      mains.add(new LightBlock(i, 16 * counts, counts, counts));
    }
    trail.judged(FlickerJudge.judge(mains, 16 * DARK));
    assertThat(trail.aim().move()).isEqualTo(Move.OTHER_LAMP);
    assertThat(trail.aim().of(Lamp.FLICKER)).isEqualTo(State.BAD);
    shows(700, 3);
    assertThat(trail.aim().of(Lamp.FLICKER)).as("another light").isEqualTo(State.UNKNOWN);
    assertThat(trail.aim().move()).as("it moved within the second").isEqualTo(Move.HOLD_STILL);
    assertThat(trail.isStill()).isFalse();
    shows(700, 20);
    assertThat(trail.isStill()).isTrue();
    assertThat(trail.aim().move()).isEqualTo(Move.LOOK_ON);
  }

  @Test
  void eachOuterSensorIsHeldAgainstTheCentre() {
    shows(DARK, 10);
    shows(800, 20);
    trail.judged(steadyLamp());
    trail.add(new MeterReading(Channel.OUTER_A, seconds, 780, 782));
    trail.add(new MeterReading(Channel.OUTER_B, seconds, 500, 502));
    assertThat(trail.aim().move()).isEqualTo(Move.LIGHT_OUTER_B);
    assertThat(trail.aim().needles()).extracting(Needle::sensor).startsWith(Channel.CENTRE_LOW);
  }

  @Test
  void theShadowIsTheLastSecond() {
    shows(400, 10);
    shows(600, 9);
    Needle both = trail.aim().centre().orElseThrow();
    assertThat(both.least()).isEqualTo(400);
    assertThat(both.most()).isEqualTo(600);
    shows(600, 5);
    assertThat(trail.aim().centre().orElseThrow().least()).isEqualTo(600);
  }

  /** A tenth of a second each. */
  private void shows(double counts, int readings) {
    for (int i = 0; i < readings; i++) {
      seconds += 0.1;
      trail.add(new MeterReading(Channel.CENTRE_LOW, seconds, counts, (int) Math.ceil(counts)));
    }
  }

  private static LampLight steadyLamp() {
    return new LampLight.Steady(new LampLight.Figures(250, 800, 100, 0.05, 0.1, 0, 0.1));
  }
}
