package org.halflight.link.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.LinkRefusedException.Reason;
import org.halflight.link.PortCandidate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SerialPortsTest {
  @TempDir Path folder;

  @Test
  void listsNamedPathsAndTheFilesThatPatternsFit() throws IOException {
    Files.createFile(folder.resolve("tty2"));
    Files.createFile(folder.resolve("tty1"));
    Files.createFile(folder.resolve("other"));
    String pattern = folder.resolve("tty").toString() + "*";

    assertThat(GivenPorts.paths(List.of("COM7", pattern, "COM7")))
        .containsExactly(
            "COM7", folder.resolve("tty1").toString(), folder.resolve("tty2").toString());
  }

  @Test
  void takesAPatternThatFitsNothingAsNoPort() {
    assertThat(GivenPorts.paths(List.of(folder + "/none*", "/no/such/folder/*", folder + "/[")))
        .isEmpty();
  }

  @Test
  void namesThePortsOfThePersonAsLikelyAndShowsWhenTheyGo() throws IOException {
    String path = folder.resolve("tty1").toString();
    SerialPorts ports = new SerialPorts(List.of(path, "COM7"));

    assertThat(ports.candidates())
        .startsWith(
            new PortCandidate(path, "named by you, not there now", true),
            new PortCandidate("COM7", "named by you", true));
    Files.createFile(Path.of(path));
    assertThat(ports.candidates()).startsWith(new PortCandidate(path, "named by you", true));
  }

  @Test
  void namesTheGroupThatMayUseAPort() {
    SerialPorts ports =
        new SerialPorts(
            List.of(), path -> Optional.of(new DeviceFiles.Rights(false, "dialout", true, false)));

    LinkRefusedException refused = refusal(ports, "/dev/ttyUSB0");

    assertThat(refused.reason()).isEqualTo(Reason.NO_PERMISSION);
    assertThat(refused)
        .hasMessage(
            "You may not use the port /dev/ttyUSB0, so the rig on it cannot be read. Join the"
                + " group dialout: sudo usermod -a -G dialout $USER, then log in again.");
  }

  @Test
  void namesNoGroupThatMayNotUseThePortEither() {
    SerialPorts ports =
        new SerialPorts(
            List.of(), path -> Optional.of(new DeviceFiles.Rights(false, "root", false, false)));

    assertThat(refusal(ports, "/dev/ttyUSB0").getMessage())
        .contains("Ask whoever looks after this computer")
        .doesNotContain("root");
  }

  @Test
  void readsTheRightsOfAFile() throws IOException {
    Path file = Files.createFile(folder.resolve("tty1"));
    DeviceFiles.Rights rights = DeviceFiles.ofThisComputer(file.toString()).orElseThrow();

    assertThat(rights.usable()).isTrue();
    assertThat(rights.group())
        .isEqualTo(
            Files.readAttributes(file, java.nio.file.attribute.PosixFileAttributes.class)
                .group()
                .getName());
    assertThat(DeviceFiles.ofThisComputer(folder + "/none")).isEmpty();
    assertThat(DeviceFiles.ofThisComputer("COM7")).isEmpty();
  }

  @Test
  void saysThatAPortIsNotThere() {
    LinkRefusedException refused = refusal(new SerialPorts(List.of()), folder + "/none");

    assertThat(refused.reason()).isEqualTo(Reason.ABSENT);
    assertThat(refused).hasMessageContaining("There is no port " + folder + "/none.");
  }

  @Test
  void readsTheErrorNumbersOfTheSystems() {
    // Numbers of errno.h (Linux, BSD) and of the system error codes of Windows.
    assertThat(Refusals.ofUnix("p", 16, false).reason()).isEqualTo(Reason.BUSY);
    assertThat(Refusals.ofUnix("p", 11, false).reason()).isEqualTo(Reason.BUSY);
    assertThat(Refusals.ofUnix("p", 35, false).reason()).isEqualTo(Reason.BUSY);
    assertThat(Refusals.ofUnix("p", 13, false).reason()).isEqualTo(Reason.NO_PERMISSION);
    assertThat(Refusals.ofUnix("p", 2, true).reason()).isEqualTo(Reason.ABSENT);
    assertThat(Refusals.ofUnix("p", 2, false).reason()).isEqualTo(Reason.BUSY);
    assertThat(Refusals.ofUnix("p", 5, false).reason()).isEqualTo(Reason.FAILED);
    assertThat(Refusals.ofUnix("p", 5, false)).hasMessageContaining("error 5 of the system");
    assertThat(Refusals.ofWindows("p", 5).reason()).isEqualTo(Reason.BUSY);
    assertThat(Refusals.ofWindows("p", 2).reason()).isEqualTo(Reason.ABSENT);
    assertThat(Refusals.ofWindows("p", 31).reason()).isEqualTo(Reason.FAILED);
  }

  @Test
  void saysWhatToDoWhenTheLibraryDoesNotStart() {
    assertThat(Refusals.noDriver(new UnsatisfiedLinkError("x")))
        .hasMessageContaining(System.getProperty("java.io.tmpdir"))
        .hasMessageContaining("The practice rig and stored runs still work");
  }

  @Test
  void knowsBoardsByTheirUsbNumbersAndElseByTheirWords() {
    assertThat(BoardSigns.show(0x2341, 0x0043, "")).isTrue();
    assertThat(BoardSigns.show(0x1A86, 0x7523, "")).isTrue();
    assertThat(BoardSigns.show(0x1A86, 0x0001, "USB Serial")).isFalse();
    assertThat(BoardSigns.show(-1, -1, "USB Serial Port")).isTrue();
    assertThat(BoardSigns.show(-1, -1, "Bluetooth modem")).isFalse();
  }

  @Test
  void keepsOneOfTheTwoNamesOfAPort() {
    PortCandidate in = new PortCandidate("/dev/tty.usb1", "x", true);
    PortCandidate out = new PortCandidate("/dev/cu.usb1", "x", true);
    PortCandidate alone = new PortCandidate("/dev/tty.old", "x", false);

    assertThat(SerialPorts.withoutTwins(List.of(in, out, alone))).containsExactly(out, alone);
  }

  @Test
  void putsLikelyBoardsFirstAndEachOnce() {
    PortCandidate other = new PortCandidate("/dev/ttyS0", "x", false);
    PortCandidate board = new PortCandidate("/dev/ttyUSB0", "named by you", true);
    PortCandidate again = new PortCandidate("/dev/ttyUSB0", "listed", false);

    assertThat(SerialPorts.likelyFirst(List.of(other, board, again))).containsExactly(board, other);
  }

  private static LinkRefusedException refusal(SerialPorts ports, String path) {
    return catchThrowableOfType(
        LinkRefusedException.class,
        () -> ports.open(new PortCandidate(path, "", true), 250_000).close());
  }
}
