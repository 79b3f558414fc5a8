package org.halflight.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.firstlight.Fault;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstStep;
import org.halflight.firstlight.Seen;
import org.halflight.firstlight.TaskJudge;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.Test;

class RigReportTest {
  @Test
  void theReportSaysWhatWasSeenWhatToCheckAndWhatWasNotTested() throws IOException {
    Finding wrong =
        new Finding(
            Finding.Outcome.CHECK,
            Optional.of(Fault.LEVEL_NEVER_ON),
            Optional.of(Channel.CENTRE_LOW),
            List.of(new Seen.Light(Channel.CENTRE_LOW, 10.24, 819.2)));
    FirstLight state =
        state("R-0001")
            .with(FirstStep.SUPPLY, TaskJudge.supply(4.98))
            .with(FirstStep.CENTRE, wrong);
    String said = text(state);
    assertThat(said)
        .contains("Rig report: R-0001", "measured on rig R-0001", "2 of 9 steps passed")
        .contains("2. Supply voltage passed 4.98 V")
        .contains("3. Centre sensor check", "0.05 to 4.00 V", "anode of the photodiode")
        .contains("Not tested: Release, Knob contact, Thresholds, Light, First firing")
        .contains("not tested")
        .contains("It has no reference LED to be calibrated by")
        .doesNotContain(
            "PRACTICE", "Flash contact", "Outer sensor", "Reference LED", "only its calibration");
  }

  @Test
  void aSimulatedRigIsSaidToBeSimulatedAcrossThePage() throws IOException {
    assertThat(text(state("PRACTICE")).replaceAll("\\s+", ""))
        .contains("PRACTICE:inventedshutter,simulatedfigures");
    assertThat(text(state("BOX-0001"))).contains("simulated board: real firmware");
  }

  private static FirstLight state(String serial) {
    return FirstLight.of(
        new RigMessage.Greeting(0, 1, 16_000_000, "starter", 0xC1, serial, 3, "power", "1.3.0", 0));
  }

  private static String text(FirstLight state) throws IOException {
    byte[] pdf = RigReport.bytes(state, "1 December 2026", "0.1.0", Paper.A4);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      PDFTextStripper reader = new PDFTextStripper();
      reader.setSortByPosition(true);
      return reader.getText(document).replaceAll("\\s+", " ");
    }
  }
}
