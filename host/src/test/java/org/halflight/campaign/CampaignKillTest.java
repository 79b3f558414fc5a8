package org.halflight.campaign;

import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The short form of the parts that need processes of their own. */
@Tag("kill")
class CampaignKillTest {
  @Test
  void killedAtRandomAndAtEachPoint(@Seed long seed) throws Exception {
    ShortForm.holds(new KillsPart(), seed);
  }

  @Test
  void oneFileAndSeveralProcesses(@Seed long seed) throws Exception {
    ShortForm.holds(new TwoProcessesPart(), seed);
  }
}
