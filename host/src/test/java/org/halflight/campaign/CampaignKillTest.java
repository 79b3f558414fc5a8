package org.halflight.campaign;

import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;

/** The short form of the parts that need processes of their own. */
@Tag("kill")
class CampaignKillTest {
  @TestFactory
  Stream<DynamicTest> everyLawHolds() {
    return ShortForm.of(new KillsPart(), new TwoProcessesPart());
  }
}
