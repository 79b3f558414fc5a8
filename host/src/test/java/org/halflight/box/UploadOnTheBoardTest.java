package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.link.Link;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.link.serial.SerialPorts;
import org.halflight.rig.RigSelector;
import org.halflight.upload.UploadStep;
import org.halflight.upload.UploadTrouble;
import org.halflight.upload.UploadTrouble.Reason;
import org.halflight.workflow.FirmwareWork;
import org.halflight.workflow.ShippedFirmware;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * The shipped images against the sources, and onto a simulated board by a real bootloader. A
 * pseudo-terminal has no DTR: the simulated bench presses reset instead, so DTR itself is not tried
 * here.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class UploadOnTheBoardTest {
  private static final Path IMAGES = Path.of("firmware/images");

  /** Where the firmware keeps serial number and count of starts. */
  private static final int RECORD_FROM = 0x20;

  private static final int RECORD_TO = 0x60;

  @TempDir private Path folder;

  @Test
  void theShippedImagesAreWhatTheSourcesMake() throws Exception {
    BenchInABox.mustBeBuilt();

    for (String rig : List.of("full", "small")) {
      assertThat(Files.readAllBytes(IMAGES.resolve(rig + ".hex")))
          .as(
              "the image of the %s rig is that of the sources; if not: make -C firmware images",
              rig)
          .isEqualTo(Files.readAllBytes(Path.of("firmware/build", rig, "rig.hex")));
    }
    // The list is checked against the files when it is read, but for the version.
    String config = Files.readString(Path.of("firmware/src/config.h"));
    assertThat(ShippedFirmware.images().all())
        .allSatisfy(
            image ->
                assertThat(config)
                    .contains("#define FIRMWARE_VERSION \"" + image.version() + "\""));
  }

  @Test
  void uploadsAndUploadsAgainAfterAPulledCable() throws Exception {
    byte[] stored = new byte[1024];
    Arrays.fill(stored, (byte) 0x5A);
    Arrays.fill(stored, RECORD_FROM, RECORD_TO, (byte) 0xFF);
    Files.write(folder.resolve("eeprom"), stored);
    try (BenchInABox box = BenchInABox.startWithBootloader(folder, List.of(BenchInABox.NAMED))) {
      String printed = execute(box, "firmware", "upload", "full", "--rewired");

      assertThat(printed)
          .contains("The rig BOX-0001 on " + box.port() + " has firmware")
          .contains("Reading it back and comparing.")
          .contains("Done, written and verified: rig BOX-0001 greets with firmware")
          .doesNotContain("threshold");

      assertPulledCable(box);
      printed = execute(box, "firmware", "upload", "small");

      assertThat(printed).contains("rig BOX-0001 greets").contains("small rig");
    }
    byte[] now = Files.readAllBytes(folder.resolve("eeprom"));
    Arrays.fill(now, RECORD_FROM, RECORD_TO, (byte) 0xFF);
    assertThat(now).isEqualTo(stored);
  }

  private static void assertPulledCable(BenchInABox box) throws IOException {
    FirmwareWork work =
        new FirmwareWork(new WithReset(box), box::nanos, () -> true, ShippedFirmware.images());
    FirmwareWork.Target target = work.target(RigSelector.any(), Optional.of("small"), true);
    AtomicBoolean pulled = new AtomicBoolean();
    assertThatThrownBy(
            () ->
                work.upload(
                    target,
                    (step, fraction) -> {
                      if (step == UploadStep.WRITING && fraction > 0.25 && !pulled.get()) {
                        pulled.set(true);
                        say(box, "unplug +0");
                      }
                    }))
        .isInstanceOfSatisfying(
            UploadTrouble.class,
            trouble -> assertThat(trouble.reason()).isEqualTo(Reason.UNPLUGGED));
    box.say("plug +0");
  }

  private String execute(BenchInABox box, String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Terminal terminal =
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new ByteArrayInputStream(new byte[0]));
    int code =
        Halflight.execute(
            new Surroundings(
                terminal,
                given -> new WithReset(box),
                box::nanos,
                () -> Instant.EPOCH,
                folder,
                "test"),
            words);
    String printed = out.toString(StandardCharsets.UTF_8);
    assertThat(code).as(printed).isZero();
    return printed;
  }

  private static void say(BenchInABox box, String line) {
    try {
      box.say(line);
    } catch (IOException gone) {
      throw new UncheckedIOException(gone);
    }
  }

  /** The port of the simulated board, where the bench presses reset as DTR would. */
  private record WithReset(BenchInABox box) implements Ports {
    @Override
    public List<PortCandidate> candidates() {
      return List.of(new PortCandidate(box.port(), "simulated", true));
    }

    @Override
    public Link open(PortCandidate candidate, int baudRate) {
      Link link = new SerialPorts(List.of(box.port())).open(candidate, baudRate);
      return new Link() {
        @Override
        public String name() {
          return link.name();
        }

        @Override
        public int read(byte[] buffer) {
          return link.read(buffer);
        }

        @Override
        public void write(byte[] bytes) {
          link.write(bytes);
        }

        @Override
        public void setBaudRate(int baud) {
          link.setBaudRate(baud);
        }

        @Override
        public void setDtr(boolean on) {
          link.setDtr(on);
          if (on) {
            say(box, "reset +0");
          }
        }

        @Override
        public void close() {
          link.close();
        }
      };
    }
  }
}
