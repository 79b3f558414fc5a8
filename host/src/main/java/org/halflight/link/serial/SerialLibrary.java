package org.halflight.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Map;
import java.util.TreeMap;
import org.halflight.files.NativeLibraries;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.LinkRefusedException.Reason;
import org.halflight.trouble.Trouble;

/**
 * Starts the serial library. It unpacks its machine code under a name that anybody can foresee in
 * the temporary folder, or in the user's home, and takes what is there already, whoever put it
 * there (read in 2.11.4). It asks two properties of Java for these folders, once: for that moment
 * both name the folder of this process.
 */
final class SerialLibrary {
  private static boolean started;

  private SerialLibrary() {}

  /**
   * Starts it, where it was not started.
   *
   * @throws LinkRefusedException when there is no folder for it
   * @throws LinkageError when its machine code cannot be loaded
   */
  static synchronized void start() {
    if (started) {
      return;
    }
    String folder;
    try {
      folder = NativeLibraries.folder().toString();
    } catch (Trouble trouble) {
      throw new LinkRefusedException(Reason.NO_DRIVER, trouble.getMessage(), trouble);
    }
    Map<String, String> before = new TreeMap<>();
    for (String property : new String[] {"java.io.tmpdir", "user.home"}) {
      before.put(property, System.getProperty(property, ""));
      System.setProperty(property, folder);
    }
    try {
      // Any use of the class starts it.
      SerialPort.getVersion();
      started = true;
    } finally {
      before.forEach(System::setProperty);
    }
  }
}
