package org.halflight.campaign;

import java.util.List;
import java.util.Random;

/** What a person and the program do at the bench, in the words of docs/file-formats.md. */
final class PersonMarks {
  private static final List<String> SPEEDS =
      List.of("1", "1/2", "1/15", "1/30", "1/60", "1/125", "1/250", "1/500");

  private final Random random;
  private final String rig;

  PersonMarks(Random random, String rig) {
    this.random = random;
    this.rig = rig;
  }

  /**
   * Something a person may do.
   *
   * @param firings keys of what was fired, {@code SERIAL/BOOT/TICKS}; not empty
   */
  String anything(List<String> firings) {
    return switch (random.nextInt(23)) {
      case 0 -> run();
      case 1 -> "speed is=" + any(SPEEDS);
      case 2 -> "check is=" + any(List.of("B", "T", "SELF_TIMER", "RELEASE_ALONE", "LINKAGE"));
      case 3, 4 -> "next";
      case 5 -> "previous";
      case 6, 7, 8 ->
          "reject because=" + SessionLines.value(any(List.of("thumb slipped", "", "ü=%")));
      case 9, 10 -> "accept";
      case 11, 12 -> "move firings=" + moved(firings) + " to=" + any(SPEEDS);
      case 13 -> "cocking learning=" + any(List.of("begins", "ends"));
      case 14 -> random.nextBoolean() ? SessionLines.LIGHT : "light-forgotten";
      case 15 -> "lens-cap is=" + any(List.of("on", "off"));
      case 16 -> "closed-by-hand";
      case 17 -> reading();
      case 18 -> "light-test-ends is=" + any(List.of("LEAK", "STOPS"));
      case 19 -> "profile is=" + any(List.of("left-out", "refused because=file-edited"));
      case 21 -> press();
      case 20 -> "rig-check rig=" + rig + " is=" + any(List.of("in-control", "signal"));
      default ->
          "clock rig="
              + rig
              + " fast-ppm="
              + (random.nextInt(60) - 30)
              + ".125 uncertainty-ppm=3.000";
    };
  }

  private String press() {
    return random.nextInt(4) == 0
        ? "plunger advance-mm=1.3 shutter-mm=1.45"
        : "press step="
            + any(List.of("rest", "stop", "squeeze", "tap"))
            + " wind="
            + any(List.of("turns", "locked"));
  }

  /** A run that is asked for. */
  String run() {
    StringBuilder run = new StringBuilder("run camera=");
    run.append(SessionLines.value(any(List.of("", "invented 1", "invented 2"))));
    run.append(" phase=").append(any(List.of("as-found", "adjusting", "as-left")));
    int from = random.nextInt(SPEEDS.size());
    int to = from + 1 + random.nextInt(SPEEDS.size() - from);
    run.append(" dial=custom speeds=").append(String.join(",", SPEEDS.subList(from, to)));
    run.append(" reference=").append(any(List.of("exact", "literal")));
    run.append(" firings=").append(1 + random.nextInt(4));
    maybe(run, " checks=" + any(List.of("B", "B,T", "SELF_TIMER", "LINKAGE", "LEAK", "STOPS")));
    maybe(run, " customs=top-speed-before-cocking,blades-shut-while-cocking");
    maybe(run, " rest-seconds=86400.0");
    maybe(run, " with.place=" + SessionLines.value("behind the lens"));
    maybe(run, " tolerance=" + any(List.of("1/3", "0.5")));
    maybe(run, " about=one-exposure");
    maybe(run, " fired=until-decided");
    return run.toString();
  }

  private void maybe(StringBuilder run, String words) {
    run.append(random.nextInt(4) == 0 ? words : "");
  }

  private String reading() {
    String stop = random.nextBoolean() ? "lamp-covered" : "stop at=5.6 turned=opening";
    return "light-read of="
        + stop
        + " counts="
        + (20 + random.nextInt(700))
        + ".500000 uncertainty=0.250000 blocks=32 ticks="
        + (1_000_000 + random.nextInt(1_000_000));
  }

  private String moved(List<String> firings) {
    String one = any(firings);
    return random.nextInt(3) == 0 ? one + ',' + any(firings) : one;
  }

  private <T> T any(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }
}
