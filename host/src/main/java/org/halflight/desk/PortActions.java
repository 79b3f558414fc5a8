package org.halflight.desk;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.function.Consumer;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LiveFeed;
import org.halflight.desk.view.BenchModel;
import org.halflight.desk.view.Message;
import org.halflight.link.ChosenPort;
import org.halflight.link.PortSurvey;
import org.halflight.rig.PortOutcome;
import org.halflight.rig.PortReport;
import org.halflight.rig.RigSelector;
import org.halflight.rig.RigWatch;
import org.halflight.session.Session;
import org.halflight.session.Source;
import org.halflight.words.Words;

/**
 * Which port and which bench is used, and what is plugged in meanwhile. For the bench thread only.
 */
final class PortActions {
  private final Source source;
  private final BenchDriver driver;
  private final BenchModel model;
  private final LiveFeed feed;
  private final ChosenPort ports;
  private final RememberedPort remembered;
  private final ExecutorService elsewhere;
  private final Optional<RigWatch> watch;
  private final Consumer<BenchChange> changes;
  private Consumer<Runnable> onBench = doing -> {};

  /** Whether a rig that is found may be used at once. */
  private boolean byItself;

  /** The first look of a bench that was chosen finds what was there before. */
  private boolean quiet;

  private Optional<List<Integer>> asked = Optional.empty();

  /**
   * @param ports of the computer, whichever bench this is
   * @param elsewhere does what takes a while
   * @param watch for rigs, on the practice bench
   * @param byPerson whether the person chose this bench
   * @param changes takes the wish for the other bench, from any thread
   */
  PortActions(
      Source source,
      BenchDriver driver,
      BenchModel model,
      LiveFeed feed,
      ChosenPort ports,
      RememberedPort remembered,
      ExecutorService elsewhere,
      Optional<RigWatch> watch,
      boolean byPerson,
      Consumer<BenchChange> changes) {
    this.source = source;
    this.driver = driver;
    this.model = model;
    this.feed = feed;
    this.ports = ports;
    this.remembered = remembered;
    this.elsewhere = elsewhere;
    this.watch = watch;
    this.changes = changes;
    byItself = !byPerson;
    quiet = byPerson;
    model.ports().chosen(ports.chosen());
  }

  /** How to do something on the bench thread, from any thread. */
  void joins(Consumer<Runnable> bench) {
    onBench = bench;
  }

  /** A chosen port is not there; from any thread. */
  void gone(String path) {
    onBench.accept(
        () -> {
          remembered.keep(Optional.empty());
          model.ports().chosen(Optional.empty());
          say(Message.Kind.ATTENTION, Words.say("desk.ports.gone", path));
        });
  }

  /**
   * Hears of what was plugged in.
   *
   * @return whether there is something new to show
   */
  boolean poll() {
    Optional<PortReport> report = watch.flatMap(RigWatch::poll);
    report.ifPresent(this::found);
    return report.isPresent();
  }

  private void found(PortReport report) {
    List<PortOutcome> before = model.ports().report().rigs();
    model.ports().report(report);
    boolean isNew = !quiet && !report.rigs().isEmpty() && !report.rigs().equals(before);
    quiet = false;
    if (!isNew) {
      return;
    }
    if (report.rigs().size() > 1) {
      say(Message.Kind.ATTENTION, report.causes().get(0).sentence());
    } else if (byItself && nothingWasDone()) {
      byItself = false;
      change(false, Words.say("desk.bench.byItself", name(report)));
    } else {
      say(Message.Kind.ATTENTION, Words.say("desk.bench.offer", name(report)));
    }
  }

  private static String name(PortReport report) {
    return report.rigs().get(0).name().orElse("");
  }

  private boolean nothingWasDone() {
    Session session = session();
    return session.results().isEmpty()
        && session.readings().isEmpty()
        && session.presses().isEmpty()
        && session.setup().isEmpty()
        && session.light().isEmpty()
        && driver.isFree();
  }

  /** The list of ports is wanted as it is now. */
  void list() {
    if (watch.isPresent()) {
      watch.get().tellAgain();
    } else {
      elsewhere.execute(
          () -> {
            PortSurvey survey = ports.survey();
            onBench.accept(() -> model.ports().surveyed(survey));
          });
    }
  }

  /** All ports are opened, those too that do not look like a board. */
  void lookAtAll() {
    choose(Optional.empty(), RigSelector.any().onEveryPort());
    watch.ifPresent(its -> its.lookAgain(true));
  }

  /** Only this port counts, until it is gone; empty for all likely ones. */
  void choose(Optional<String> path) {
    choose(path, RigSelector.any());
    watch.ifPresent(its -> its.lookAgain(false));
  }

  private void choose(Optional<String> path, RigSelector wish) {
    if (!isFree()) {
      say(Message.Kind.ATTENTION, Words.say("desk.rig.notNow"));
      return;
    }
    ports.choose(path);
    remembered.keep(path);
    model.ports().chosen(path);
    if (watch.isEmpty()) {
      feed.searchAgain(wish);
      // A rig that is there is let go, or the search would wait for its end.
      feed.withoutRig(() -> {});
    }
  }

  /** To the rig, or to the practice rig. A run that is under way is asked for once, and kept. */
  void change() {
    Session session = session();
    List<Integer> now = List.of(session.run(), session.results().size());
    if (!isFree()) {
      say(Message.Kind.ATTENTION, Words.say("desk.rig.notNow"));
    } else if (InterruptedRun.goesOn(session) && !asked.equals(Optional.of(now))) {
      asked = Optional.of(now);
      say(Message.Kind.ATTENTION, Words.say("desk.bench.ask", session.results().size()));
    } else {
      change(true, Words.say(source == Source.PRACTICE ? "desk.bench.rig" : "desk.bench.practice"));
    }
  }

  private void change(boolean byPerson, String words) {
    // A port that does not look like a board would not be opened again.
    model.ports().report().rigs().stream()
        .map(PortOutcome::candidate)
        .filter(port -> source == Source.PRACTICE && !port.likelyBoard())
        .findFirst()
        .ifPresent(port -> remembered.keep(Optional.of(port.path())));
    changes.accept(
        new BenchChange(
            source == Source.PRACTICE ? Source.RIG : Source.PRACTICE,
            byPerson,
            source == Source.PRACTICE && nothingWasDone(),
            Optional.of(new Message(Message.Kind.NEWS, words))));
  }

  /** Whether nothing is under way that another port would disturb. */
  private boolean isFree() {
    return driver.isFree() || !model.isLinkUp();
  }

  /** Looks at no port any more. */
  void close() {
    watch.ifPresent(RigWatch::close);
    elsewhere.shutdown();
  }

  private void say(Message.Kind kind, String words) {
    model.say(new Message(kind, words));
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
