package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LightStateTest {
  private final PartsOfASession parts = new PartsOfASession();
  private final LightState light = parts.light;

  @Test
  void lightThatIsOffIsSaidOnceAndDoubtsWhatCameSince() {
    light.onSet(new SessionInput.LightSet(PartsOfASession.LIGHT), parts.events);
    FiringResult fired = parts.fire(1, 10e-3);
    light.onShare(0.9, Optional.empty(), parts.events);
    light.onShare(0.9, Optional.empty(), parts.events);
    assertThat(parts.events(SessionEvent.PlateauOff.class)).hasSize(1);
    assertThat(parts.log.find(fired.key()).orElseThrow().notes().lightDoubtful()).isTrue();
    assertThat(light.isInDoubt()).isTrue();
    assertThat(light.doubts(OptionalDouble.empty())).isTrue();
    light.onShare(1, Optional.empty(), parts.events);
    assertThat(light.isInDoubt()).isFalse();
  }

  @Test
  void aShareIsOfFullLightLessDark() {
    assertThat(light.share(OptionalDouble.of(420))).isEmpty();
    light.onSet(new SessionInput.LightSet(PartsOfASession.LIGHT), parts.events);
    assertThat(light.share(OptionalDouble.of(420))).hasValue(0.5);
    assertThat(light.share(OptionalDouble.empty())).isEmpty();
  }

  @Test
  void whatWasSetBeforeAnyRigWasThereHoldsForTheFirst() {
    light.onSet(new SessionInput.LightSet(PartsOfASession.LIGHT), parts.events);
    light.onOtherRig(true);
    assertThat(light.set()).isPresent();
    light.onOtherRig(false);
    assertThat(light.set()).isEmpty();
  }
}
