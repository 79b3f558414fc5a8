package org.halflight.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The short form of the campaign, in this process. A case that breaks a law is made again by {@code
 * --again} of {@link Campaign}; all of a run by {@code -Dhalflight.campaign.seed}.
 */
class CampaignTest {
  @TestFactory
  Stream<DynamicTest> everyLawHolds() {
    return ShortForm.of(
        new WirePart(),
        new AlterationsPart(),
        new DeathsPart(),
        new MutationsPart(),
        new FullDiskPart(),
        new RestoresPart(),
        new ClocksPart(),
        new ManyFiringsPart());
  }

  @org.junit.jupiter.api.Test
  void thePageOfFiguresSaysWhatTheyAre() throws Exception {
    String page = java.nio.file.Files.readString(java.nio.file.Path.of("docs/reliability.md"));
    assertThat(page).contains("**simulated**").contains("Seed " + Campaign.SEED);
    for (Part part : Campaign.parts()) {
      assertThat(page).contains("`" + part.name() + "`");
    }
  }
}
