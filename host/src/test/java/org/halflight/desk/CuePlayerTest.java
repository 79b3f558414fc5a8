package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.desk.view.Cue;
import org.halflight.desk.view.SoundKind;
import org.halflight.desk.view.SoundsOn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class CuePlayerTest {
  private static final int SAMPLES_PER_SECOND = 22_050;

  /** A sound that the click sensor heard would become an event of its own. */
  @ParameterizedTest
  @EnumSource(Cue.class)
  void nearlyAllOfASoundLiesBelowTwoKilohertz(Cue cue) {
    double[] samples = samples(cue);
    double all = 0;
    double above = 0;
    // A plain Fourier sum at steps of 20 Hz is enough for a share of power.
    for (double hertz = 20; hertz < SAMPLES_PER_SECOND / 2.0; hertz += 20) {
      double power = power(samples, hertz);
      all += power;
      if (hertz > 2000) {
        above += power;
      }
    }
    assertThat(above / all).isLessThan(1e-4);
  }

  /** Faster or slower, on any loudspeaker: only which tones are long and which are short counts. */
  @Test
  void soundsAreToldApartByTheirRhythm() {
    assertThat(Arrays.stream(Cue.values()).map(CuePlayerTest::rhythm)).doesNotHaveDuplicates();
    assertThat(rhythm(Cue.CLOSER)).isEqualTo(".-");
    assertThat(rhythm(Cue.FURTHER)).isEqualTo("-.");
    assertThat(rhythm(Cue.ENOUGH)).isEqualTo("-..");
  }

  @Test
  void closerRisesFurtherFallsAndAllElseIsLevel() {
    assertThat(Cue.CLOSER.hertz(1)).isGreaterThan(1.3 * Cue.CLOSER.hertz(0));
    assertThat(Cue.FURTHER.hertz(0)).isGreaterThan(1.3 * Cue.FURTHER.hertz(1));
    for (Cue cue : EnumSet.complementOf(EnumSet.of(Cue.CLOSER, Cue.FURTHER))) {
      assertThat(cue.hertz(1)).isEqualTo(cue.hertz(0));
    }
  }

  @Test
  void eachKindIsSwitchedByItselfAndAllTogether() {
    SoundsOn on = new SoundsOn(true, Set.of()).with(SoundKind.ASKED, false);
    assertThat(Arrays.stream(SoundKind.values()).filter(kind -> !on.plays(kind)))
        .containsExactly(SoundKind.ASKED);
    assertThat(Arrays.stream(SoundKind.values()).filter(on.turned()::plays)).isEmpty();
    assertThat(on.turned().turned()).isEqualTo(on);
    assertThat(on.with(SoundKind.ASKED, true).off()).isEmpty();
    assertThat(Arrays.stream(Cue.values()).map(Cue::kind)).contains(SoundKind.values());
  }

  private static String rhythm(Cue cue) {
    return cue.rhythmMillis().stream()
        .filter(millis -> millis > 0)
        .map(millis -> millis > 200 ? "-" : ".")
        .collect(Collectors.joining());
  }

  @Test
  void aComputerWithoutSoundDoesNotMind() {
    try (CuePlayer player = new CuePlayer(new SoundsOn(true, Set.of()))) {
      for (Cue cue : Cue.values()) {
        player.play(cue);
      }
      assertThat(player.on().all()).isTrue();
    }
  }

  private static double[] samples(Cue cue) {
    byte[] bytes = CuePlayer.samples(cue);
    double[] samples = new double[bytes.length / 2];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) ((bytes[2 * i] & 0xFF) | bytes[2 * i + 1] << 8);
    }
    return samples;
  }

  private static double power(double[] samples, double hertz) {
    double cosine = 0;
    double sine = 0;
    for (int i = 0; i < samples.length; i++) {
      double angle = 2 * Math.PI * hertz * i / SAMPLES_PER_SECOND;
      cosine += samples[i] * Math.cos(angle);
      sine += samples[i] * Math.sin(angle);
    }
    return cosine * cosine + sine * sine;
  }
}
