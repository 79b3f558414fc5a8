package org.halflight.campaign;

import java.util.stream.Stream;
import org.halflight.box.AvrTools;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;

/** The short form of the part that needs the simulated board. */
@Tag("board")
@ExtendWith(AvrTools.class)
class CampaignBoardTest {
  @TestFactory
  Stream<DynamicTest> everyLawHolds() {
    return ShortForm.of(new BoardPart());
  }
}
