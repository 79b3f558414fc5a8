package org.halflight.link.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import org.halflight.link.PortSurvey.Service;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files as Linux has them in /proc and /sys, in a folder of the test. */
class LinuxPortsTest {
  @TempDir private Path root;

  @Test
  void namesTheServicesThatRun() throws IOException {
    write("proc/12/comm", "ModemManager\n");
    write("proc/13/comm", "brltty\n");
    write("proc/self/comm", "java\n");
    write("proc/version", "Linux\n");

    assertThat(new LinuxPorts(root).services())
        .containsExactlyInAnyOrder(Service.MODEM_MANAGER, Service.BRLTTY);
    assertThat(new LinuxPorts(root.resolve("none")).services()).isEmpty();
  }

  @Test
  void namesTheProgramThatHasAPortOpenButNotThisOne() throws IOException {
    write("proc/12/comm", "a-monitor\n");
    link("proc/12/fd/0", "/dev/null");
    link("proc/12/fd/3", "/dev/ttyUSB0");
    write("proc/99/comm", "java\n");
    link("proc/99/fd/7", "/dev/ttyUSB1");

    assertThat(new LinuxPorts(root).holders(Set.of("/dev/ttyUSB0", "/dev/ttyUSB1"), 99))
        .isEqualTo(Map.of("/dev/ttyUSB0", "a-monitor"));
  }

  @Test
  void namesChipsOfBoardsThatHaveNoPort() throws IOException {
    device("1-1", "1a86", "7523", "USB2.0-Ser!");
    device("1-2", "0403", "6001", "a converter");
    Files.createDirectories(root.resolve("sys/bus/usb/devices/1-2/1-2:1.0/ttyUSB0"));
    device("1-3", "2341", "0043", "a board");
    Files.createDirectories(root.resolve("sys/bus/usb/devices/1-3/1-3:1.0/tty/ttyACM0"));
    device("1-4", "046d", "c077", "a mouse");

    assertThat(new LinuxPorts(root).chipsWithoutPort()).containsExactly("1a86:7523 USB2.0-Ser!");
  }

  @Test
  void knowsWhoJoinedAGroupButHasNotLoggedInSince() throws IOException {
    write("etc/group", "root:x:0:\ndialout:x:20:anna,ben\nodd line\n");

    assertThat(DeviceFiles.isListed(root.resolve("etc/group"), "dialout", "ben")).isTrue();
    assertThat(DeviceFiles.isListed(root.resolve("etc/group"), "dialout", "carl")).isFalse();
    assertThat(DeviceFiles.isListed(root.resolve("etc/none"), "dialout", "ben")).isFalse();
    assertThat(
            Refusals.foretold(
                    "/dev/ttyUSB0",
                    java.util.Optional.of(new DeviceFiles.Rights(false, "dialout", true, true)))
                .orElseThrow())
        .hasMessageContaining("log out and in again");
  }

  private void device(String name, String vendor, String product, String words) throws IOException {
    write("sys/bus/usb/devices/" + name + "/idVendor", vendor + "\n");
    write("sys/bus/usb/devices/" + name + "/idProduct", product + "\n");
    write("sys/bus/usb/devices/" + name + "/product", words + "\n");
    Files.createDirectories(
        root.resolve("sys/bus/usb/devices/" + name + "/" + name + ":1.0/ep_02"));
  }

  private void write(String path, String text) throws IOException {
    Path file = root.resolve(path);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private void link(String path, String target) throws IOException {
    Path file = root.resolve(path);
    Files.createDirectories(file.getParent());
    Files.createSymbolicLink(file, Path.of(target));
  }
}
