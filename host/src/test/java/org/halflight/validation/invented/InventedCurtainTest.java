package org.halflight.validation.invented;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The invented curtains obey the laws that they are said to obey. */
class InventedCurtainTest {
  private static final int HOLDS_NOTHING = 0;

  /** Under a force that is always the same, the way grows with the square of the time. */
  @Test
  void anEvenForceGivesAnEvenAcceleration() {
    CurtainLaw.Way way = new CurtainLaw.Way(-20, 30, 20);
    CurtainLaw law = law(0, 0);
    CurtainMotion motion = law.motion(way, law.pace(way, 10e-3));
    assertThat(motion.passes(15) - motion.passes(-15)).isCloseTo(10e-3, within(1e-8));
    double ratio = motion.passes(15) / motion.passes(-15);
    assertThat(ratio).isCloseTo(Math.sqrt(35 / 5.0), within(1e-4));
  }

  /** Friction that grows with the speed leads to an even speed: {@code pull / wet}. */
  @Test
  void wetFrictionLeadsToAnEvenSpeed() {
    CurtainLaw.Way way = new CurtainLaw.Way(-20, 30, 20);
    CurtainMotion motion = law(0, 20).motion(way, 1);
    assertThat(40 / 20.0 * (motion.passes(10) - motion.passes(0))).isCloseTo(10, within(1e-3));
  }

  /** Thrown back with a part e of its speed against an even force it comes back e squared far. */
  @Test
  void aCurtainThatIsThrownBackComesBackSoFar() {
    CurtainLaw.Way way = new CurtainLaw.Way(-20, 30, 20);
    CurtainMotion motion = law(0.3, HOLDS_NOTHING).motion(way, 1);
    double deepest = 20 - 40 * 0.3 * 0.3;
    assertThat(motion.passings(deepest + 0.1)).hasSize(3);
    assertThat(motion.passings(deepest - 0.1)).hasSize(1);
  }

  private static CurtainLaw law(double springBack, double wet) {
    return new CurtainLaw(0, 0, 0, 0, wet, 0, 1, 0, 0, List.of(), springBack);
  }

  /** What a sensor gets is what falls on the film where it looks, blurred by slit and lamp. */
  @ParameterizedTest
  @EnumSource(CurtainFault.class)
  void sensorsGetTheLightOfTheirPlace(CurtainFault fault, @Seed(5) long seed) {
    Draws draws = new Draws(seed);
    for (int i = 0; i < 5; i++) {
      CurtainShutter shutter = CurtainShutter.drawn(fault, draws);
      CurtainBar bar = CurtainBar.drawn(shutter.frame(), 0.7, 1.3, draws);
      CurtainShot shot = shutter.fired(1 / 128.0, draws);
      for (int eye = 0; eye < 3; eye++) {
        CurtainShot.Exposure film = shot.exposure(bar.sees(eye));
        // A curtain that comes back as far as the slit is a point to the film and not to the slit.
        double grazing = fault == CurtainFault.FIRST_BOUNCES ? 400e-6 : 60e-6;
        CurtainShot.Exposure light = bar.truth(eye, shot);
        assertThat(light.main()).as("%s %d", fault, eye).isCloseTo(film.main(), within(grazing));
        assertThat(light.late()).isCloseTo(film.late(), within(0.02 * film.late() + 400e-6));
      }
    }
  }

  @Test
  void placesOfTheFrameGoFromEdgeToEdge() {
    CurtainShot shot =
        CurtainShutter.drawn(CurtainFault.NOTHING, new Draws(3)).fired(1 / 64.0, new Draws(4));
    assertThat(shot.exposures()).hasSize(CurtainShot.PLACES);
    assertThat(shot.place(0)).isEqualTo(-shot.frame() / 2);
    assertThat(shot.place(100)).isEqualTo(shot.frame() / 2);
    // The second is W later at the start than the first at the end, so open as a whole for W.
    double whole = shot.windowSeconds();
    double least =
        shot.exposures().stream().mapToDouble(CurtainShot.Exposure::main).min().orElseThrow();
    assertThat(least).isGreaterThanOrEqualTo(whole);
  }

  /** The same seed is the same shutter, bar and firing. */
  @Test
  void aFiringHangsOnItsSeedAlone(@Seed long seed) {
    assertThat(stamps(seed)).isEqualTo(stamps(seed)).isNotEqualTo(stamps(seed + 1));
  }

  private static List<CurtainBar.Stamp> stamps(long seed) {
    Draws draws = new Draws(seed);
    CurtainShutter shutter = CurtainShutter.drawn(CurtainFault.NOTHING, draws);
    CurtainBar bar = CurtainBar.drawn(shutter.frame(), 0.7, 1.3, draws);
    return bar.stamps(shutter.fired(1 / 64.0, draws), draws);
  }
}
