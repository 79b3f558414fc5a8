package org.halflight.link;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What the system says of its ports, and of what may keep a rig from being found; no port is opened
 * for it.
 *
 * @param system the kind of system
 * @param ports all ports, likely boards first
 * @param chipsWithoutPort USB chips of boards that are plugged in but have no port, as the system
 *     calls them; none where the system does not tell
 * @param services programs that run and are known to take serial ports
 */
public record PortSurvey(
    Kind system, List<Seen> ports, List<String> chipsWithoutPort, Set<Service> services) {
  /** A kind of system. */
  public enum Kind {
    LINUX,
    WINDOWS,
    MACOS,
    OTHER;

    /**
     * The kind of a system.
     *
     * @param name as {@code os.name} has it
     */
    public static Kind of(String name) {
      String lower = name.toLowerCase(Locale.ROOT);
      return lower.startsWith("linux")
          ? LINUX
          : lower.startsWith("windows") ? WINDOWS : lower.startsWith("mac") ? MACOS : OTHER;
    }
  }

  /** A program that takes serial ports by itself. */
  public enum Service {
    /** Tries each new port for a modem. */
    MODEM_MANAGER("ModemManager"),
    /** Takes USB chips that Braille displays have too. */
    BRLTTY("brltty");

    private final String program;

    Service(String program) {
      this.program = program;
    }

    /** The name of its program. */
    public String program() {
      return program;
    }
  }

  /**
   * A port.
   *
   * @param holder the other program that has it open; empty where none is known
   */
  public record Seen(PortCandidate port, Optional<String> holder) {}

  public PortSurvey {
    ports = List.copyOf(ports);
    chipsWithoutPort = List.copyOf(chipsWithoutPort);
    services = Set.copyOf(services);
  }

  /** Ports of which nothing else is known. */
  public static PortSurvey bare(List<PortCandidate> ports) {
    return new PortSurvey(
        Kind.OTHER,
        ports.stream().map(port -> new Seen(port, Optional.empty())).toList(),
        List.of(),
        Set.of());
  }
}
