package org.halflight.campaign;

import static org.assertj.core.api.Assertions.assertThat;

/** Parts in their short form, each a test. */
final class ShortForm {
  private ShortForm() {}

  static void holds(Part part, long seed) throws Exception {
    Tally tally = part.run(seed, part.shortSize());
    assertThat(tally.firstBroken()).as(tally.toString()).isEmpty();
    assertThat(tally.isGood()).isTrue();
    assertThat(tally.counts()).isNotEmpty();
  }
}
