package org.halflight.bench;

import java.nio.file.Path;
import org.halflight.session.FiringResult;
import org.halflight.session.Session;
import org.halflight.trouble.Trouble;

/** A program that may write no more than so much into a file, and goes on all the same. */
final class FullDiskChild {
  private static final int STEPS = 400;

  private FullDiskChild() {}

  public static void main(String[] arguments) {
    WrittenBench at = new WrittenBench(Path.of(arguments[0]));
    int refused = 0;
    for (int step = 0; step < STEPS; step++) {
      try {
        if (step % 5 == 4) {
          at.bench().reject("knocked the bench");
        } else {
          at.fire(1 / 30.0);
        }
      } catch (Trouble full) {
        refused++;
      }
    }
    System.out.println(stand(at.session()));
    System.out.println(refused);
    System.out.flush();
    // As a kill would end it: nothing more is written.
    Runtime.getRuntime().halt(0);
  }

  /** How many firings there are and how many count. */
  static String stand(Session session) {
    long rejected =
        session.results().stream().map(FiringResult::rejection).filter(r -> r.isPresent()).count();
    return session.results().size() + " firings, " + rejected + " rejected";
  }
}
