package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.halflight.job.Camera;
import org.halflight.job.StripSheet;
import org.halflight.record.KeptFiring;
import org.halflight.record.WorkshopRecord;
import org.halflight.report.PageAbout;
import org.halflight.report.PageInput;
import org.halflight.report.RecordPage;
import org.halflight.session.Phase;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** A stop table is worked out from the travel of leaves, so a shutter with curtains has none. */
class CurtainPageTest extends CommandTests {
  private static final String OWN = "custom";
  private static final Clock CLOCK = Clock.fixed(Instant.EPOCH, ZoneOffset.UTC);

  @Test
  void fromASession() throws IOException {
    assertThat(page(OWN, ShutterKind.UNKNOWN).stopTables()).isNotEmpty();
    PageInput curtains = page(OWN, ShutterKind.CURTAIN_LONG_SIDE);
    assertThat(curtains.stopTables()).isEmpty();
    assertThat(curtains.shutterKind()).isEqualTo("curtain shutter, horizontal travel");
    assertThat(page("curtain", ShutterKind.UNKNOWN).stopTables()).isEmpty();
    assertThat(page("curtain", ShutterKind.LEAF).stopTables()).isNotEmpty();
    assertThat(page("custom shutter=curtain-long-side", ShutterKind.UNKNOWN).stopTables())
        .isEmpty();
  }

  @Test
  void fromTheRecord() throws IOException {
    assertThat(hasStopTables(OWN, ShutterKind.UNKNOWN)).isTrue();
    assertThat(hasStopTables(OWN, ShutterKind.CURTAIN_SHORT_SIDE)).isFalse();
    assertThat(hasStopTables("curtain", ShutterKind.UNKNOWN)).isFalse();
    assertThat(hasStopTables("curtain", ShutterKind.LEAF)).isTrue();
  }

  private boolean hasStopTables(String dial, ShutterKind kind) throws IOException {
    Path session = session(dial);
    try (WorkshopRecord record =
        WorkshopRecord.open(folder.resolve(dial + kind + ".sqlite"), CLOCK)) {
      record.importSession(session);
      Camera made = record.cameras().get(0).camera();
      assertThat(made.shutter()).isEqualTo(ShutterKind.UNKNOWN);
      record.keep(
          new Camera(
              made.id(),
              made.label(),
              made.serialNumber(),
              kind,
              made.dial(),
              made.widestFNumber(),
              made.frame(),
              made.firingWithoutFilm()));
      return !RecordPage.of(record.history(made.id()).orElseThrow())
          .orElseThrow()
          .input(
              List.of(),
              StripSheet.EMPTY,
              run -> record.firings(run).stream().map(KeptFiring::result).toList(),
              Instant.EPOCH,
              ZoneOffset.UTC,
              "test")
          .stopTables()
          .isEmpty();
    }
  }

  private Path session(String dial) throws IOException {
    Path session = TinySession.write(folder.resolve(dial.replace(' ', '-') + ".session"));
    return Files.writeString(
        session, Files.readString(session).replace("dial=custom", "dial=" + dial));
  }

  private PageInput page(String dial, ShutterKind kind) throws IOException {
    RunChoice.Reading reading =
        new RunChoice.Reading(
            CommandLine.populateCommand(new DecisionOptions()),
            CommandLine.populateCommand(new ProfileOptions()),
            surroundings());
    Optional<RunChoice> found = RunChoice.of(List.of(session(dial)), Phase.AS_FOUND, reading);
    PageAbout about = PageAbout.of("", kind, List.of());
    return surroundings().page(RunChoice.page(about, found, Optional.empty()));
  }
}
