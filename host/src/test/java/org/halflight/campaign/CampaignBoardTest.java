package org.halflight.campaign;

import org.halflight.box.AvrTools;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The short form of the part that needs the simulated board. */
@Tag("board")
@ExtendWith(AvrTools.class)
class CampaignBoardTest {
  @Test
  void faultsOfBoardAndCable(@Seed long seed) throws Exception {
    ShortForm.holds(new BoardPart(), seed);
  }
}
