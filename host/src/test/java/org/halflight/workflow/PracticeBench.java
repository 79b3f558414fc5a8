package org.halflight.workflow;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;

/** A bench with a practice rig, without window and terminal; all in virtual time. */
final class PracticeBench implements AutoCloseable {
  private static final int PATIENCE = 5_000;
  private static final long SEED = 7;
  private static final long STEP_NANOS = 50_000_000;

  final PracticeRig rig;
  final PracticeOperator operator;
  final BenchDriver driver;
  final List<SessionEvent> news = new ArrayList<>();
  private final AtomicLong nanos;
  private final boolean paced;
  private Runnable each = () -> {};

  private PracticeBench(
      Path folder, PracticeRig rig, PracticeOperator operator, AtomicLong nanos, boolean paced) {
    this.rig = rig;
    this.operator = operator;
    this.nanos = nanos;
    this.paced = paced;
    // The clock goes on with the steps: there is nothing to wait for.
    rig.readsAtOnce();
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve((paced ? "paced" : "unpaced") + ".session")),
            nanos::incrementAndGet,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now));
    until("the rig answers", () -> workbench.fold().greeting().isPresent());
  }

  /** The camera needs nobody, as in the terminal. */
  static PracticeBench unpaced(Path folder) {
    PracticeRig rig =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(InventedShutters.dial(), SEED), SensorSet.IDEAL, SEED);
    return new PracticeBench(folder, rig, new PracticeOperator(rig, SEED), new AtomicLong(), false);
  }

  /** The person presses the keys, as in the window; the clock goes on with each step. */
  static PracticeBench paced(Path folder) {
    AtomicLong nanos = new AtomicLong();
    PracticeOperator operator = PracticeOperator.paced(SEED, nanos::get, Instant.EPOCH);
    PracticeRig[] rig = new PracticeRig[1];
    operator.ports().onBench(its -> rig[0] = its);
    return new PracticeBench(folder, rig[0], operator, nanos, true);
  }

  /** Is done after each step. */
  void each(Runnable doing) {
    each = doing;
  }

  Session session() {
    return driver.workbench().fold().session();
  }

  void steps(int count) {
    for (int i = 0; i < count; i++) {
      step();
    }
  }

  void until(String what, BooleanSupplier holds) {
    for (int i = 0; i < PATIENCE; i++) {
      if (holds.getAsBoolean()) {
        return;
      }
      step();
    }
    throw new AssertionError("waited in vain until " + what);
  }

  private void step() {
    Optional<BenchDriver.Happening> happened = driver.step();
    happened.ifPresent(its -> news.addAll(its.news()));
    if (happened.isEmpty() && paced) {
      nanos.addAndGet(STEP_NANOS);
    } else if (happened.isEmpty()) {
      rig.rest(STEP_NANOS / 1e9);
    }
    each.run();
  }

  @Override
  public void close() {
    driver.close();
  }
}
