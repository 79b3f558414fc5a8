package org.halflight.link.serial;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.files.NativeLibraries;

/**
 * Starts the serial library as the program does, and prints which of its files are in the memory of
 * this process. Arguments: where the program keeps what may be made anew; then {@code stay} to wait
 * until it is killed.
 */
public final class LibraryPlaceChild {
  private LibraryPlaceChild() {}

  public static void main(String[] args) throws Exception {
    NativeLibraries.keepIn(Path.of(args[0]));
    System.out.println("PORTS " + new SerialPorts(List.of()).candidates().size());
    Path maps = Path.of("/proc/self/maps");
    if (Files.exists(maps)) {
      Files.readAllLines(maps).stream()
          .filter(line -> line.contains("jSerialComm"))
          .map(line -> line.substring(line.indexOf('/')))
          .distinct()
          .forEach(line -> System.out.println("LOADED " + line));
    }
    System.out.println("FOLDER " + NativeLibraries.folder());
    System.out.println("HOME " + System.getProperty("user.home"));
    System.out.println("DONE");
    System.out.flush();
    while (args.length > 1 && System.in.read() >= 0) {
      // Nobody ever writes: the parent kills.
    }
  }
}
