package org.halflight.desk;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.bench.LightProbe;
import org.halflight.desk.view.LightTestModel;
import org.halflight.everyday.StopScale;
import org.halflight.session.LightReading;
import org.halflight.session.Session;
import org.halflight.session.SessionNews;
import org.halflight.trouble.Trouble;
import org.halflight.words.NewsSentences;
import org.halflight.words.Words;

/**
 * Leak test and stop check at the bench: each reading is asked for, taken, skipped or asked for
 * again. For the bench thread only.
 */
final class LightTestHands {
  /** The model camera has done what was asked well before. */
  private static final long MODEL_NANOS = 300_000_000;

  private final BenchDriver driver;
  private final LightTestModel model;
  private final Optional<ModelCamera> camera;
  private Optional<LightProbe> probe = Optional.empty();
  private OptionalLong readFromNanos = OptionalLong.empty();

  LightTestHands(BenchDriver driver, LightTestModel model, Optional<ModelCamera> camera) {
    this.driver = driver;
    this.model = model;
    this.camera = camera;
  }

  /** Whether a test goes on. */
  boolean isUnderWay() {
    return model.step().isPresent();
  }

  /**
   * Begins the leak test.
   *
   * @param ready whether the rig has nothing else to do
   */
  void leak(boolean ready) {
    begin(LightPlan.leak(), ready);
  }

  /**
   * Begins the stop check.
   *
   * @param stops as the person wrote them
   * @param ready whether the rig has nothing else to do
   */
  void stops(List<String> stops, boolean ready) {
    try {
      begin(LightPlan.stops(LightPlan.numbers(stops)), ready);
    } catch (Trouble noStops) {
      model.says(noStops.getMessage());
    }
  }

  private void begin(LightPlan plan, boolean ready) {
    if (isUnderWay()) {
      return;
    }
    if (!ready) {
      model.says(Words.say("desk.tried.notNow"));
    } else if (session().light().isEmpty()) {
      model.says(Words.say("desk.tried.noLight"));
    } else {
      driver.beginReadings();
      model.begins(plan);
    }
  }

  /** The person has done what was asked. */
  void done() {
    if (!isUnderWay() || model.isReading()) {
      return;
    }
    camera.ifPresent(its -> its.does(model.step().orElseThrow()));
    readFromNanos =
        OptionalLong.of(driver.workbench().now() + (camera.isEmpty() ? 0 : MODEL_NANOS));
    model.reads();
  }

  /** The person skips this reading. */
  void skip() {
    if (isUnderWay()) {
      forget();
      if (!model.skipped()) {
        end();
      }
    }
  }

  /** Ends the test; what was read stays. */
  void stop() {
    if (isUnderWay()) {
      forget();
      end();
    }
  }

  private void forget() {
    probe = Optional.empty();
    readFromNanos = OptionalLong.empty();
  }

  private void end() {
    camera.ifPresent(ModelCamera::isAtRest);
    driver.endReadings();
    model.ends(session().readings(), session().runs(), session().run());
  }

  /**
   * Goes on with the reading that is under way.
   *
   * @return whether the window has something new to show
   */
  boolean goesOn() {
    if (readFromNanos.isPresent() && driver.workbench().now() >= readFromNanos.getAsLong()) {
      readFromNanos = OptionalLong.empty();
      LightPlan.Step step = model.step().orElseThrow();
      probe = Optional.of(driver.readLight(step.what(), step.at(), step.opening()));
    }
    if (probe.isEmpty()) {
      return false;
    }
    LightProbe under = probe.get();
    model.progress(under.progress());
    if (under.step() == LightProbe.Step.READING) {
      return false;
    }
    probe = Optional.empty();
    switch (under.step()) {
      case NOT_STILL -> model.again(Words.say("reading.notStill"));
      case NO_ANSWER -> model.again(Words.say("desk.tried.noAnswer"));
      default -> read(under.reading().orElseThrow());
    }
    return true;
  }

  private void read(LightReading reading) {
    boolean opens = model.step().orElseThrow().needed() && reading.what() == LightReading.What.STOP;
    double dark = session().light().map(light -> light.darkCounts()).orElse(0.0);
    if (opens && reading.counts() - dark < StopScale.LEAST_COUNTS) {
      model.again(Words.say("desk.tried.notOpen"));
    } else if (!model.wasRead(
        NewsSentences.of(new SessionNews.LightWasRead(reading)).orElseThrow())) {
      end();
    }
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
