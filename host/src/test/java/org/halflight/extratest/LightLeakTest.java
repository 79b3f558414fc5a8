package org.halflight.extratest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.halflight.extratest.LightLeak.Found;
import org.halflight.job.CheckState;
import org.halflight.session.CameraCustoms;
import org.halflight.session.LightReading.What;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

/** Full light is 820 counts and dark 8, so the span is 812; stops are worked out by hand. */
class LightLeakTest {
  private final InventedLight bench = new InventedLight();

  private LightLeak leak() {
    return (LightLeak) bench.tried().get(0);
  }

  @Test
  void aLeakIsSoManyStopsBelowFullLight() {
    bench.begin(Phase.AS_FOUND, CameraCustoms.NONE, MarkedSpeed.parse("1/60"));
    bench.read(What.LAMP_COVERED, "", false, 8, 0.1);
    bench.read(What.SHUT_UNCOCKED, "", false, 8.1, 0.1);
    // 812 / 2^8 above the covered lamp: eight stops below full light.
    bench.read(What.SHUT_COCKED, "", false, 8 + 812 / 256.0, 0.1);

    assertThat(leak().uncocked().orElseThrow().found()).isEqualTo(Found.NOTHING);
    LightLeak.Reading cocked = leak().cocked().orElseThrow();
    assertThat(cocked.found()).isEqualTo(Found.LEAK);
    assertThat(cocked.belowFullStops().getAsDouble()).isCloseTo(8, within(1e-9));
    // An hour at 1/256 of full light: 3600 / 256 s.
    assertThat(LightLeak.hourSeconds(8)).isCloseTo(14.0625, within(1e-9));
    assertThat(leak().state()).isEqualTo(CheckState.FAULT);
    assertThat(leak().what()).isEqualTo("light-leak");
    assertThat(leak().phase()).contains(Phase.AS_FOUND);
  }

  @Test
  void whereNothingIsFoundTheFloorOfTheRigIsSaid() {
    bench.read(What.LAMP_COVERED, "", false, 8, 0.3);
    bench.read(What.SHUT_UNCOCKED, "", false, 8.2, 0.4);

    LightLeak.Reading reading = leak().uncocked().orElseThrow();

    // GUM 5.1.2: 0.3 and 0.4 make 0.5; times 1.96 of table G.1 this is 0.98; log2(812 / 0.98).
    assertThat(reading.uncertaintyCounts()).isCloseTo(0.5, within(1e-12));
    assertThat(reading.floorStops().getAsDouble()).isCloseTo(9.6945, within(1e-3));
    assertThat(leak().state()).isEqualTo(CheckState.OK);
    assertThat(leak().cocked()).isEmpty();
  }

  @Test
  void anOpenShutterIsNoLeakAndALooseCoverIsSaid() {
    bench.read(What.LAMP_COVERED, "", false, 30, 0.1);
    bench.read(What.SHUT_UNCOCKED, "", false, 9, 0.1);
    bench.read(What.SHUT_COCKED, "", false, 700, 0.1);

    assertThat(leak().uncocked().orElseThrow().found()).isEqualTo(Found.COVERED_BRIGHTER);
    assertThat(leak().cocked().orElseThrow().found()).isEqualTo(Found.SHUTTER_OPEN);
    assertThat(leak().state()).isEqualTo(CheckState.NOT_TESTED);
  }

  @Test
  void aReadingTakenAgainTakesThePlaceOfTheFirst() {
    bench.read(What.LAMP_COVERED, "", false, 8, 0.1);
    bench.read(What.SHUT_COCKED, "", false, 300, 0.1);
    bench.read(What.SHUT_COCKED, "", false, 8, 0.1);

    assertThat(leak().cocked().orElseThrow().found()).isEqualTo(Found.NOTHING);
  }

  @Test
  void withoutTheCoveredLampThereIsNothingToHoldItAgainst() {
    bench.read(What.SHUT_COCKED, "", false, 9, 0.1);

    assertThat(bench.tried()).isEmpty();
  }
}
