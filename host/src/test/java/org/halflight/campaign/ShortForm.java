package org.halflight.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;

/** Parts in their short form, each a test. */
final class ShortForm {
  private ShortForm() {}

  static Stream<DynamicTest> of(Part... parts) {
    long seed = Long.getLong("halflight.campaign.seed", new Random().nextLong());
    return Stream.of(parts)
        .map(
            part ->
                DynamicTest.dynamicTest(
                    part.name(),
                    () -> {
                      System.out.println("Campaign " + part.name() + ", seed " + seed);
                      Tally tally = part.run(seed, part.shortSize());
                      assertThat(tally.told()).as(tally.toString()).isEmpty();
                      assertThat(tally.isGood()).isTrue();
                      assertThat(tally.counts()).isNotEmpty();
                    }));
  }
}
