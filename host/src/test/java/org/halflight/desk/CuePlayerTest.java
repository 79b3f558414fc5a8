package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.halflight.desk.view.Cue;
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

  @Test
  void soundsAreToldApartByTheirRhythm() {
    assertThat(Arrays.stream(Cue.values()).map(Cue::rhythmMillis).distinct())
        .hasSameSizeAs(Cue.values());
  }

  @Test
  void aComputerWithoutSoundDoesNotMind() {
    try (CuePlayer player = new CuePlayer(true)) {
      for (Cue cue : Cue.values()) {
        player.play(cue);
      }
      assertThat(player.isOn()).isTrue();
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
