package org.halflight.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.halflight.trouble.Trouble;

/** Another program that goes on with a session, and waits there until it is killed. */
final class SessionLockChild {
  private SessionLockChild() {}

  public static void main(String[] arguments) throws IOException {
    try (SessionFile file = SessionFile.resume(Path.of(arguments[0]))) {
      file.add(new BenchEvent.Mark(1, "next", Map.of()));
      System.out.println("WRITES");
      System.out.flush();
      // Until the other side of the pipe is gone.
      System.in.read();
    } catch (Trouble refused) {
      System.out.println("REFUSED");
    }
  }
}
