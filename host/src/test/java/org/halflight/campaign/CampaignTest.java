package org.halflight.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The short form of the campaign, in this process. A case that breaks a law is made again by {@code
 * --again} of {@link Campaign}.
 */
@Tag("long")
class CampaignTest {
  @Test
  void damageOnTheWire(@Seed long seed) throws Exception {
    ShortForm.holds(new WirePart(), seed);
  }

  @Test
  void alteredDigitsUnderAFittingCheck(@Seed long seed) throws Exception {
    ShortForm.holds(new AlterationsPart(), seed);
  }

  @Test
  void randomSessionsWithDeaths(@Seed long seed) throws Exception {
    ShortForm.holds(new DeathsPart(), seed);
  }

  @Test
  void damagedFilesThroughTheCommands(@Seed long seed) throws Exception {
    ShortForm.holds(new MutationsPart(), seed);
  }

  @Test
  void aDiskThatIsFull(@Seed long seed) throws Exception {
    ShortForm.holds(new FullDiskPart(), seed);
  }

  @Test
  void recordsThatAreLostOrReplaced(@Seed long seed) throws Exception {
    ShortForm.holds(new RestoresPart(), seed);
  }

  @Test
  void clocksThatJump(@Seed long seed) throws Exception {
    ShortForm.holds(new ClocksPart(), seed);
  }

  @Test
  void veryMany(@Seed long seed) throws Exception {
    ShortForm.holds(new ManyFiringsPart(), seed);
  }

  @Test
  void thePageOfFiguresSaysWhatTheyAre() throws Exception {
    String page = Files.readString(Path.of("docs/reliability.md"));
    assertThat(page).contains("**simulated**").contains("seed " + Campaign.SEED);
    for (Part part : Campaign.parts()) {
      assertThat(page).contains("| `" + part.name() + "` |");
    }
  }
}
