package org.halflight.box;

import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.desk.Display;

/**
 * Builds the firmware and its simulator before tests run them, and says what the tests leave out
 * for want of tools, once for all processes of tests. The build runs it before the integration
 * tests.
 */
public final class BuildForTests {
  private BuildForTests() {}

  /** Fails when a tool is missing where all must be there, and when make fails. */
  public static void main(String[] args) throws Exception {
    Stream.of(AvrTools.leftOut(), Display.leftOut())
        .flatMap(Optional::stream)
        .forEach(System.err::println);
    if (AvrTools.leftOut().isEmpty()) {
      AvrTools.make("firmware", "-j2", "box");
    }
  }
}
