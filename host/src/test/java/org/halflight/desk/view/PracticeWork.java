package org.halflight.desk.view;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.link.LinkState;
import org.halflight.rig.LinkChange;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.Source;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.ModelShutter;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.words.Words;
import org.halflight.workflow.BenchLight;
import org.halflight.workflow.BenchLinkage;
import org.halflight.workflow.CameraOperator;

/** A bench without a window, on the practice rig in virtual time: views, sounds, and no waiting. */
final class PracticeWork implements AutoCloseable {
  private static final int PATIENCE = 20_000;

  final PracticeRig rig;
  final BenchLight light;
  final BenchModel model;
  final List<Cue> cues = new ArrayList<>();
  private final BenchDriver driver;

  PracticeWork(Path folder) {
    this(folder, InventedShutters.soundLeaf(InventedShutters.dial(), 7));
  }

  PracticeWork(Path folder, ModelShutter shutter) {
    rig = PracticeRig.unpaced(shutter, SensorSet.IDEAL, 7);
    AtomicLong nanos = new AtomicLong();
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve("work.session")),
            nanos::incrementAndGet,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now));
    light = new BenchLight(driver, CameraOperator.PERSON);
    model =
        new BenchModel(
            driver, light, new BenchLinkage(driver, CameraOperator.PERSON, light), Source.PRACTICE);
    until(() -> workbench.fold().greeting().isPresent());
    link(LinkState.CONNECTED);
  }

  /** The link changes; here nobody listens to a cable. */
  void link(LinkState state) {
    model.happened(
        new BenchDriver.Happening(
            Optional.of(new LinkChange(0, state, Words.say("rig.lost.closed"), Optional.empty())),
            List.of()));
  }

  BenchView view() {
    return model.view();
  }

  void begin(Phase phase, int firings, String... speeds) {
    begin(phase, firings, AcceptanceCriteria.USUAL, speeds);
  }

  void begin(Phase phase, int firings, AcceptanceCriteria criteria, String... speeds) {
    RunSetup setup =
        new RunSetup(
                "invented",
                phase,
                "leaf",
                java.util.Arrays.stream(speeds).map(MarkedSpeed::parse).toList(),
                Reference.EXACT,
                firings)
            .withCriteria(criteria);
    begin(setup);
  }

  void begin(RunSetup setup) {
    model.runBegins();
    cues.addAll(model.news(driver.handle(new SessionInput.RunBegins(setup))));
  }

  void handle(SessionInput input) {
    cues.addAll(model.news(driver.handle(input)));
  }

  /** Turns the dial to the shown speed, fires, and goes on until that has settled. */
  BenchView fire() {
    return fire(view().shown().flatMap(s -> s.speed()), PracticeMishap.NONE);
  }

  BenchView fire(Optional<MarkedSpeed> dial, PracticeMishap mishap) {
    int before = view().results().size();
    fireOnly(dial, mishap);
    until(() -> view().results().size() > before);
    return view();
  }

  @SuppressWarnings("ReturnValueIgnored") // What the model did must be found out through the rig.
  void fireOnly(Optional<MarkedSpeed> dial, PracticeMishap mishap) {
    dial.ifPresent(rig::chooseSpeed);
    rig.fire(mishap);
  }

  /** Goes on until something holds, letting time pass where nothing happens. */
  void until(java.util.function.BooleanSupplier holds) {
    for (int i = 0; i < PATIENCE && !holds.getAsBoolean(); i++) {
      Optional<BenchDriver.Happening> happening = driver.step();
      if (happening.isEmpty()) {
        rig.rest(0.3);
      } else {
        cues.addAll(model.happened(happening.get()));
      }
      if (light.advance()) {
        cues.addAll(model.news(light.drainEvents()));
        light.pollEnded().flatMap(LightTestText::ended).ifPresent(model::say);
      }
    }
    if (!holds.getAsBoolean()) {
      throw new AssertionError("waited in vain; the view is " + view());
    }
  }

  @Override
  public void close() {
    driver.close();
  }
}
