package org.halflight.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.EventLine;
import org.halflight.bench.LiveFeed;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.box.BenchInABox;
import org.halflight.link.serial.SerialPorts;
import org.halflight.rig.RigSelector;
import org.halflight.session.FiringResult;
import org.halflight.session.Session;
import org.halflight.signal.LightCurve;

/**
 * The real firmware in its simulator, on a pseudo-terminal, with faults of board, cable and line:
 * the link comes back, what is said is what was fired, and the file says what the bench said.
 */
final class BoardPart implements Part {
  static final String FALSE = "results without a mark that are not what was fired";
  static final String STUCK = "faults after which nothing was measured again";
  static final String SLOW =
      "faults after which it took longer than 30 s until a firing was measured";
  static final String DIFFER = "sessions whose file does not say what the bench said";
  static final String THROWN = "exceptions";

  private static final double[] SECONDS = {1 / 250.0, 1 / 64.0, 0.25};
  private static final double RAMP_SECONDS = 0.001;
  private static final double RELATIVE = 0.01;
  private static final long SLOW_NANOS = TimeUnit.SECONDS.toNanos(30);

  /** What is waited for, in the time of the board; nothing takes a third of it. */
  private static final long LIMIT_NANOS = TimeUnit.SECONDS.toNanos(20);

  /** Until the cable is in again. */
  private static final long PLUG_NANOS = TimeUnit.MILLISECONDS.toNanos(3500);

  /** In which a fault of the scenario happens. */
  private static final long FAULT_NANOS = TimeUnit.MILLISECONDS.toNanos(1500);

  /** In which a firing is measured where it is seen at all. */
  private static final long FIRING_NANOS = TimeUnit.SECONDS.toNanos(5);

  private static final int TRIES = 8;

  /** While the thresholds settle after a start, the comparators may switch: that is no firing. */
  private static final long START_TICKS = TrueEdge.ticks(1.5);

  private static final int FAULTS_A_BENCH = 6;

  @Override
  public String name() {
    return "board";
  }

  @Override
  public String unit() {
    return "faults of board and cable";
  }

  @Override
  public long shortSize() {
    return 3;
  }

  @Override
  public long longSize() {
    return 90;
  }

  @Override
  public Tally run(long seed, long size) throws Exception {
    Tally tally = new Tally(name());
    for (String law : List.of(FALSE, STUCK, SLOW, DIFFER, THROWN)) {
      tally.law(law);
    }
    for (long i = 0; i * FAULTS_A_BENCH < size; i++) {
      long caseSeed = Seeds.of(seed, i);
      bench(caseSeed, (int) Math.min(FAULTS_A_BENCH, size - i * FAULTS_A_BENCH), tally);
    }
    return tally;
  }

  @Override
  public Tally again(long caseSeed) throws Exception {
    Tally tally = new Tally(name());
    bench(caseSeed, FAULTS_A_BENCH, tally);
    return tally;
  }

  private void bench(long caseSeed, int faults, Tally tally) throws Exception {
    Path folder = Files.createTempDirectory("campaign-board");
    String replay = Seeds.replay(name(), caseSeed);
    List<String> scenario = List.of("light all 40 4000", BenchInABox.NAMED);
    try (BenchInABox box = BenchInABox.start(folder, scenario);
        Work work = new Work(box, folder.resolve("board.session"))) {
      work.ready();
      Random random = new Random(caseSeed);
      for (int i = 0; i < faults; i++) {
        tally.add(unit(), 1);
        String fault = fault(random);
        tally.add("after " + fault.split(" ", 2)[0], 1);
        long from = box.nanos();
        if (!work.suffers(fault, random)) {
          tally.breaks(STUCK, replay, fault);
          return;
        }
        long took = box.nanos() - from;
        tally.most(
            "milliseconds of the board from a fault to a firing that was measured, at most",
            took / 1_000_000);
        if (took > SLOW_NANOS) {
          tally.breaks(SLOW, replay, fault + ": " + took / 1_000_000 + " ms");
        }
      }
      work.judge(replay, tally);
    } catch (RuntimeException e) {
      tally.breaks(THROWN, replay, Thrown.said(e));
    } finally {
      Folders.delete(folder);
    }
  }

  /** In the words of the scenario; the first is what it is counted under. */
  private static String fault(Random random) {
    return switch (random.nextInt(8)) {
      case 0 -> "reset +0." + random.nextInt(10);
      case 1 -> "unplug +0." + random.nextInt(10) + "\nplug +" + (1 + random.nextInt(3));
      case 2 -> "stall +0." + random.nextInt(10);
      case 3, 4 -> "corrupt +0.0" + random.nextInt(10) + ' ' + (1 + random.nextInt(20));
      case 5 -> "raw +0.1 " + Hex.of(16, random.nextLong()) + Hex.of(16, random.nextLong());
      case 6 -> "overrun +0.1 " + Hex.of(16, random.nextLong());
      default -> "reset +0.05\nreset +0.4\ncorrupt +0.5 3";
    };
  }

  /** The host as it is used, on a simulated board. */
  private static final class Work implements AutoCloseable {
    private final BenchInABox box;
    private final Path file;
    private final BenchDriver driver;
    private boolean open = true;

    Work(BenchInABox box, Path file) {
      this.box = box;
      this.file = file;
      Workbench workbench =
          Workbench.begin(
              SessionFile.create(file),
              box::nanos,
              Marks.begins("test", Instant.EPOCH.atOffset(ZoneOffset.UTC), Optional.of("board")));
      driver =
          new BenchDriver(
              workbench,
              new LiveFeed(
                  new SerialPorts(List.of(box.port())), RigSelector.any(), workbench::now));
    }

    void ready() throws IOException {
      boolean greeted =
          until(
              () ->
                  driver
                      .workbench()
                      .fold()
                      .greeting()
                      .filter(greeting -> greeting.serial().startsWith("BOX-"))
                      .isPresent());
      if (!greeted) {
        throw new IllegalStateException("the board does not greet");
      }
      // Dark 40 mV and full 4000 mV, thresholds as the board starts with them.
      mark("light dark=8.1920 full=819.2000 low=176.0000 high=648.0000");
      mark("run camera= phase=adjusting dial=custom speeds=1/60 reference=exact firings=999");
      for (double seconds : SECONDS) {
        box.curve(name(seconds), curve(seconds));
      }
      fires(SECONDS[1]);
    }

    /** A fault, mostly with a firing near it; then firings until one is measured. */
    boolean suffers(String fault, Random random) throws IOException {
      if (random.nextInt(3) > 0) {
        box.say("fire +0." + (1 + random.nextInt(6)) + ' ' + name(SECONDS[random.nextInt(3)]));
      }
      box.say(fault);
      long until = box.nanos() + (fault.startsWith("unplug") ? PLUG_NANOS : FAULT_NANOS);
      until(() -> box.nanos() > until);
      long heard = lines();
      until(() -> lines() > heard + 2);
      for (int i = 0; i < TRIES; i++) {
        if (fires(SECONDS[random.nextInt(3)])) {
          return true;
        }
      }
      return false;
    }

    private long lines() {
      return driver.workbench().fold().linkStatistics().lines();
    }

    private boolean fires(double seconds) throws IOException {
      int before = session().results().size();
      box.say("fire +0.1 " + name(seconds));
      // While the cable is out nobody sees it: then it is fired again.
      long until = box.nanos() + FIRING_NANOS;
      if (!until(() -> session().results().size() > before || box.nanos() > until)) {
        return false;
      }
      List<FiringResult> results = session().results();
      return results.subList(before, results.size()).stream()
          .anyMatch(result -> isRight(result, List.of(seconds)));
    }

    void judge(String replay, Tally tally) {
      List<Double> all = new ArrayList<>();
      for (double each : SECONDS) {
        all.add(each);
      }
      for (FiringResult result : session().results()) {
        tally.add("results", 1);
        boolean marked = !result.firing().damage().isEmpty();
        boolean atStart = result.key().firstTicks() < START_TICKS;
        boolean light = result.firing().edges().stream().anyMatch(edge -> edge.channel().isLight());
        if (marked) {
          tally.add("results with a mark", 1);
        } else if (light && !atStart && !isRight(result, all)) {
          tally.breaks(
              FALSE,
              replay,
              result.outcome() + " " + result.effectiveSeconds() + " " + result.key());
        }
      }
      Folded live = Folded.of(driver.workbench().fold());
      close();
      live.breaksOff();
      try {
        String difference = live.difference(Folded.of(Files.readAllLines(file)));
        if (!difference.isEmpty()) {
          tally.breaks(DIFFER, replay, difference);
        }
      } catch (IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }

    private static boolean isRight(FiringResult result, List<Double> seconds) {
      double measured = result.effectiveSeconds().orElse(0);
      return seconds.stream().anyMatch(each -> Math.abs(measured / each - 1) < RELATIVE);
    }

    private Session session() {
      return driver.workbench().fold().session();
    }

    private void mark(String words) {
      driver
          .workbench()
          .onEvent(EventLine.parse("M " + driver.workbench().now() + ' ' + words).orElseThrow());
    }

    private boolean until(BooleanSupplier condition) {
      BenchInABox.Limit lives = box.limit();
      long limit = box.nanos() + LIMIT_NANOS;
      while (!condition.getAsBoolean()) {
        if (box.nanos() > limit || lives.isOver()) {
          return false;
        }
        driver.step();
      }
      return true;
    }

    private static String name(double seconds) {
      return "of" + Math.round(seconds * 1e6);
    }

    /** Opens and closes evenly in area. */
    private static LightCurve curve(double effective) {
      return new LightCurve(
          new double[] {0, RAMP_SECONDS, effective, effective + RAMP_SECONDS},
          new double[] {0, 1, 1, 0});
    }

    @Override
    public void close() {
      if (open) {
        open = false;
        driver.close();
      }
    }
  }
}
