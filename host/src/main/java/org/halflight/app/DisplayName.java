package org.halflight.app;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketAddress;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The display of a system with the X Window System, as the variable DISPLAY names it. It is asked
 * before the window's library is, since that library never recovers from a display that is dead.
 *
 * @param host empty for this computer
 * @param number of the display on that host
 */
record DisplayName(String host, int number) {
  private static final Pattern FORM =
      Pattern.compile("(?:unix|(?<host>[^:/]*)(?:/unix)?):(?<number>\\d{1,5})(?:\\.\\d+)?");
  private static final int FIRST_PORT = 6000;
  private static final int PATIENCE_MILLIS = 3000;
  private static final Path SOCKETS = Path.of("/tmp/.X11-unix");
  private static final Path LISTENING = Path.of("/proc/net/unix");

  /**
   * Reads a name such as {@code :0} or {@code localhost:10.0}; empty for a name of another form.
   */
  static Optional<DisplayName> of(String text) {
    Matcher form = FORM.matcher(text.strip());
    return form.matches()
        ? Optional.of(
            new DisplayName(
                Optional.ofNullable(form.group("host")).orElse(""),
                Integer.parseInt(form.group("number"))))
        : Optional.empty();
  }

  /** Whether something listens there. */
  boolean answers() {
    if (host.isEmpty() && (listensHere() || isKnownToTheSystem())) {
      return true;
    }
    int port = FIRST_PORT + number;
    return port <= 0xFFFF
        && connects(new InetSocketAddress(host.isEmpty() ? "localhost" : host, port));
  }

  private boolean listensHere() {
    Path socket = SOCKETS.resolve("X" + number);
    if (!Files.exists(socket)) {
      return false;
    }
    try (SocketChannel channel = SocketChannel.open(StandardProtocolFamily.UNIX)) {
      return channel.connect(UnixDomainSocketAddress.of(socket));
    } catch (IOException | UnsupportedOperationException dead) {
      return false;
    }
  }

  /** Some displays listen at a name that is no file, which Java cannot reach. */
  private boolean isKnownToTheSystem() {
    try {
      return Files.readString(LISTENING)
          .lines()
          .anyMatch(l -> l.endsWith("@" + SOCKETS + "/X" + number));
    } catch (IOException otherSystem) {
      return false;
    }
  }

  private static boolean connects(SocketAddress address) {
    try (Socket socket = new Socket()) {
      socket.connect(address, PATIENCE_MILLIS);
      return true;
    } catch (IOException | IllegalArgumentException dead) {
      return false;
    }
  }
}
