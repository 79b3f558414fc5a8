package org.halflight.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.link.Link;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.PortCandidate;
import org.halflight.link.PortSurvey;
import org.halflight.link.PortSurvey.Service;
import org.halflight.link.Ports;
import org.halflight.words.Words;

/**
 * The serial ports of this computer: those that the system lists, and those that the person named.
 *
 * <p>Safe for use by several threads.
 */
public final class SerialPorts implements Ports {
  private static final String MACOS_DIAL_IN = "/dev/tty.";
  private static final String MACOS_DIAL_OUT = "/dev/cu.";

  private final List<String> given;
  private final DeviceFiles deviceFiles;

  /**
   * @param given paths of ports, or patterns of paths, that the person named; may be empty
   */
  public SerialPorts(List<String> given) {
    this(given, DeviceFiles::ofThisComputer);
  }

  SerialPorts(List<String> given, DeviceFiles deviceFiles) {
    this.given = List.copyOf(given);
    this.deviceFiles = deviceFiles;
  }

  @Override
  public List<PortCandidate> candidates() {
    List<PortCandidate> candidates = new ArrayList<>();
    for (String path : GivenPorts.paths(given)) {
      // The words change when the port goes, so that who watches the list sees it come back.
      String words =
          Words.say(GivenPorts.isMissing(path) ? "link.port.missing" : "link.port.given");
      candidates.add(new PortCandidate(path, words, true));
    }
    candidates.addAll(withoutTwins(listed()));
    return likelyFirst(candidates);
  }

  @Override
  public PortSurvey survey() {
    List<PortCandidate> candidates = candidates();
    PortSurvey.Kind system = PortSurvey.Kind.of(System.getProperty("os.name", ""));
    if (system != PortSurvey.Kind.LINUX) {
      return new PortSurvey(
          system, PortSurvey.bare(candidates).ports(), List.of(), EnumSet.noneOf(Service.class));
    }
    LinuxPorts linux = new LinuxPorts(Path.of("/"));
    Map<String, String> holders =
        linux.holders(
            candidates.stream().map(PortCandidate::path).collect(Collectors.toSet()),
            ProcessHandle.current().pid());
    return new PortSurvey(
        system,
        candidates.stream()
            .map(each -> new PortSurvey.Seen(each, Optional.ofNullable(holders.get(each.path()))))
            .toList(),
        linux.chipsWithoutPort(),
        linux.services());
  }

  @Override
  public Link open(PortCandidate candidate, int baudRate) {
    String path = candidate.path();
    Optional<LinkRefusedException> foretold = Refusals.foretold(path, deviceFiles.rights(path));
    if (foretold.isPresent()) {
      throw foretold.get();
    }
    try {
      SerialLibrary.start();
      SerialPort port = SerialPort.getCommPort(path);
      SerialLink.setUp(port, baudRate);
      // Success is what it returns: on a pseudo-terminal it leaves an error number behind as well.
      if (!port.openPort(0)) {
        int errorNumber = port.getLastErrorCode();
        throw isWindows()
            ? Refusals.ofWindows(path, errorNumber)
            : Refusals.ofUnix(path, errorNumber, GivenPorts.isMissing(path));
      }
      return SerialLink.over(port, path);
    } catch (SerialPortInvalidPortException absent) {
      throw Refusals.absent(path, absent);
    } catch (LinkageError notStarted) {
      throw Refusals.noDriver(notStarted);
    }
  }

  @Override
  public void beforeTheProgramIsEnded(Runnable last) {
    try {
      SerialLibrary.start();
      // The library closes all ports when the program ends; this goes before.
      SerialPort.addShutdownHook(new Thread(last, "halflight-last"));
    } catch (LinkageError notStarted) {
      throw Refusals.noDriver(notStarted);
    }
  }

  private static List<PortCandidate> listed() {
    List<PortCandidate> listed = new ArrayList<>();
    try {
      SerialLibrary.start();
      for (SerialPort port : SerialPort.getCommPorts()) {
        String description = port.getDescriptivePortName();
        boolean likely = BoardSigns.show(port.getVendorID(), port.getProductID(), description);
        listed.add(new PortCandidate(port.getSystemPortPath(), description, likely));
      }
    } catch (LinkageError notStarted) {
      throw Refusals.noDriver(notStarted);
    }
    return listed;
  }

  /**
   * Each path once, and of the two names that macOS gives a port only the one for calling out: the
   * other waits for a carrier.
   */
  static List<PortCandidate> withoutTwins(List<PortCandidate> listed) {
    Set<String> paths = listed.stream().map(PortCandidate::path).collect(Collectors.toSet());
    return listed.stream()
        .filter(
            candidate ->
                !candidate.path().startsWith(MACOS_DIAL_IN)
                    || !paths.contains(
                        MACOS_DIAL_OUT + candidate.path().substring(MACOS_DIAL_IN.length())))
        .toList();
  }

  /** Likely boards first, each path once, otherwise in the order given. */
  static List<PortCandidate> likelyFirst(List<PortCandidate> candidates) {
    List<PortCandidate> ordered = new ArrayList<>();
    for (PortCandidate candidate : candidates) {
      if (ordered.stream().noneMatch(known -> known.path().equals(candidate.path()))) {
        ordered.add(candidate);
      }
    }
    ordered.sort(Comparator.comparing(candidate -> !candidate.likelyBoard()));
    return ordered;
  }

  private static boolean isWindows() {
    return System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
  }
}
