package org.halflight.link.serial;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.halflight.link.PortSurvey.Service;

/**
 * What Linux tells of serial ports in {@code /proc} and {@code /sys}. Only reads; what may not be
 * read, such as the open files of other people's programs, is left out.
 */
final class LinuxPorts {
  private static final int HEX = 16;

  private final Path processes;
  private final Path usbDevices;

  /**
   * @param root of the file system
   */
  LinuxPorts(Path root) {
    processes = root.resolve("proc");
    usbDevices = root.resolve("sys/bus/usb/devices");
  }

  /** The services of {@link Service} that run. */
  Set<Service> services() {
    Set<Service> running = EnumSet.noneOf(Service.class);
    for (Path process : in(processes)) {
      String name = text(process.resolve("comm"));
      for (Service service : Service.values()) {
        if (service.program().equals(name)) {
          running.add(service);
        }
      }
    }
    return running;
  }

  /**
   * The programs that have device files open, by path.
   *
   * @param but the process to leave out, which is this program
   */
  Map<String, String> holders(Set<String> paths, long but) {
    Map<String, String> holders = new HashMap<>();
    for (Path process : in(processes)) {
      if (process.endsWith(String.valueOf(but))) {
        continue;
      }
      for (Path open : in(process.resolve("fd"))) {
        String path = target(open);
        if (paths.contains(path)) {
          holders.put(path, text(process.resolve("comm")));
        }
      }
    }
    return holders;
  }

  /** USB chips of boards that have no serial port, as they call themselves. */
  List<String> chipsWithoutPort() {
    List<String> chips = new ArrayList<>();
    for (Path device : in(usbDevices)) {
      String vendor = text(device.resolve("idVendor"));
      String product = text(device.resolve("idProduct"));
      if (BoardSigns.show(number(vendor), number(product), "") && !hasPort(device)) {
        String name = text(device.resolve("product"));
        chips.add((vendor + ":" + product + " " + name).strip());
      }
    }
    return chips;
  }

  /** The port is {@code ttyUSB0} in the folder of an interface, or in its folder {@code tty}. */
  private static boolean hasPort(Path device) {
    return in(device).stream()
        .filter(each -> name(each).startsWith(name(device) + ":"))
        .flatMap(each -> in(each).stream())
        .anyMatch(each -> name(each).startsWith("tty"));
  }

  private static int number(String hex) {
    try {
      return Integer.parseInt(hex, HEX);
    } catch (NumberFormatException none) {
      return 0;
    }
  }

  private static String target(Path link) {
    try {
      return Files.readSymbolicLink(link).toString();
    } catch (IOException | UnsupportedOperationException gone) {
      return "";
    }
  }

  private static String text(Path file) {
    try {
      return new String(Files.readAllBytes(file), StandardCharsets.UTF_8).strip();
    } catch (IOException gone) {
      return "";
    }
  }

  private static List<Path> in(Path folder) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    } catch (IOException | UncheckedIOException notAllowed) {
      return List.of();
    }
  }

  private static String name(Path file) {
    return String.valueOf(file.getFileName());
  }
}
