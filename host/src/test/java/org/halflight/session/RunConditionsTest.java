package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What makes two runs unlike. */
class RunConditionsTest {
  private static final RunConditions DRY = noted("dry");
  private static final RunConditions WET = noted("wet");

  @Test
  void aShutterIsDryUnlessItIsSaidToBeWet() {
    assertThat(DRY.unlike(RunConditions.NONE)).isEmpty();
    assertThat(RunConditions.NONE.unlike(DRY)).isEmpty();
    assertThat(WET.unlike(RunConditions.NONE)).containsExactly(RunOption.WET.name());
    assertThat(WET.unlike(DRY)).containsExactly(RunOption.WET.name());
  }

  private static RunConditions noted(String words) {
    return new RunConditions(OptionalDouble.empty(), Map.of(RunOption.WET.name(), words));
  }
}
