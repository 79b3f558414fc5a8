package org.halflight.box;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.LightSetting;
import org.halflight.bench.LiveFeed;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.link.serial.SerialPorts;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigSelector;
import org.halflight.session.FiringResult;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;

/**
 * The host as it is used, on a simulated board: jSerialComm on the pseudo-terminal, session file,
 * session.
 */
final class BoxBench implements AutoCloseable {
  private final BenchInABox box;
  private final BenchDriver driver;
  private final List<SessionEvent> news = new ArrayList<>();
  private final List<LinkChange> changes = new ArrayList<>();

  BoxBench(BenchInABox box, Path sessionFile, List<String> ports) {
    this.box = box;
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(sessionFile),
            box::nanos,
            new BenchEvent.Mark(
                0, Marks.BEGINS, Map.of("version", "test", "at", Instant.EPOCH.toString())));
    driver =
        new BenchDriver(
            workbench, new LiveFeed(new SerialPorts(ports), RigSelector.any(), workbench::now));
  }

  Session session() {
    return driver.workbench().fold().session();
  }

  BenchDriver driver() {
    return driver;
  }

  List<SessionEvent> news() {
    return news;
  }

  List<LinkChange> changes() {
    return changes;
  }

  /** Goes on until a condition holds; fails when the board takes absurdly long or is gone. */
  void until(String what, BooleanSupplier condition) {
    BenchInABox.Limit limit = box.limit();
    while (!condition.getAsBoolean()) {
      if (limit.isOver()) {
        throw new AssertionError("never came: " + what + "; link: " + changes);
      }
      driver
          .step()
          .ifPresent(
              happened -> {
                happened.change().ifPresent(changes::add);
                news.addAll(happened.news());
              });
    }
  }

  /** Waits for the board of this bench, by its serial number. */
  void connect() {
    until(
        "the greeting of the board",
        () ->
            driver
                .workbench()
                .fold()
                .greeting()
                .filter(g -> g.serial().startsWith("BOX-"))
                .isPresent());
  }

  /** Sets the light, holding the simulated shutter open when asked. */
  void setLight() throws IOException {
    LightSetting setting = tryLight();
    if (setting.step() != LightSetting.Step.DONE) {
      throw new AssertionError("light refused: " + setting.refusal());
    }
  }

  /** The same, and it may be refused. */
  LightSetting tryLight() throws IOException {
    LightSetting setting = driver.light().set();
    until(
        "the dark level",
        () ->
            setting.step() == LightSetting.Step.OPEN_THE_SHUTTER
                || setting.step() == LightSetting.Step.REFUSED);
    if (setting.step() == LightSetting.Step.REFUSED) {
      return setting;
    }
    box.say("hold +0 1");
    until("the light of the open shutter", () -> !session().isQuiet());
    driver.light().shutterIsOpen();
    until(
        "the light",
        () ->
            setting.step() == LightSetting.Step.DONE
                || setting.step() == LightSetting.Step.REFUSED);
    box.say("hold +0 0");
    if (setting.step() == LightSetting.Step.DONE) {
      until("the shutter to close", () -> session().isQuiet());
    }
    return setting;
  }

  /** Tells the session something. */
  void handle(SessionInput input) {
    news.addAll(driver.handle(input));
  }

  /** Fires a curve and waits until the firing is settled. */
  FiringResult fire(String curve) throws IOException {
    int before = session().results().size();
    box.say("fire +0.02 " + curve);
    until("the firing of " + curve, () -> session().results().size() > before);
    return session().results().get(before);
  }

  @Override
  public void close() {
    driver.close();
  }
}
