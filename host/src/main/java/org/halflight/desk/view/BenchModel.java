package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.bench.BenchDriver;
import org.halflight.link.LinkState;
import org.halflight.rig.LinkChange;
import org.halflight.rig.LinkStatistics;
import org.halflight.session.AdjustedAt;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.Outcome;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.Source;
import org.halflight.session.TwoSpeeds;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.verdict.TwoAtOnce;
import org.halflight.words.ClockWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.BenchLight;
import org.halflight.workflow.BenchLinkage;

/**
 * Turns what happens at the bench into what the window shows, and into sounds. Shows nothing and
 * plays nothing itself. For the bench thread only.
 */
public final class BenchModel {
  private final BenchDriver driver;
  private final BenchLight light;
  private final BenchLinkage linkage;
  private final Source source;
  private LinkState linkState = LinkState.SEARCHING;
  private String linkSentence = Words.say("desk.link.searching");
  private Optional<LastFiring> last = Optional.empty();
  private OptionalDouble openSeconds = OptionalDouble.empty();
  private Optional<DialSetting> justDone = Optional.empty();
  private List<FiringResult> results = List.of();
  private List<LightReading> readings = List.of();
  private final Announcer announcer;
  private String camera = "";
  private Optional<Dial> dial = Optional.empty();
  private final RigModel rig = new RigModel();
  private final PortsModel ports;
  private Optional<Pair> pair = Optional.empty();
  private Optional<TwoAtOnce> two = Optional.empty();

  /** All that the judgement of two speeds at once hangs on: a view of each line asks for it. */
  private record Pair(
      TwoSpeeds speeds,
      RunSetup setup,
      int run,
      List<FiringResult> results,
      List<AdjustedAt> adjusted) {
    private TwoAtOnce judged() {
      return TwoAtOnce.of(speeds, setup, run, results, adjusted);
    }
  }

  /**
   * @param source what stands on the bench, until a rig greets
   */
  public BenchModel(BenchDriver driver, BenchLight light, BenchLinkage linkage, Source source) {
    this.driver = driver;
    this.light = light;
    this.linkage = linkage;
    announcer =
        new Announcer(this::session, () -> light.underWay().isPresent() || light.isAiming());
    this.source = source;
    this.ports = new PortsModel(source);
    results = List.copyOf(session().results());
    readings = List.copyOf(session().readings());
  }

  /** Something happened; gives the sounds that go with it. */
  public List<Cue> happened(BenchDriver.Happening happening) {
    happening.change().ifPresent(this::changed);
    announcer.forgetMadeCheck();
    return news(happening.news());
  }

  /** There are news because of something that the person did. */
  public List<Cue> news(List<SessionEvent> news) {
    Optional<DialSetting> before = Optional.empty();
    for (SessionEvent each : news) {
      if (each instanceof SessionEvent.Settled settled) {
        before = settled.result().setting();
      }
      show(each, before);
    }
    boolean other = news.stream().anyMatch(BenchModel::isAnotherSession);
    if (other || news.stream().anyMatch(SessionEvent.LightWasRead.class::isInstance)) {
      readings = List.copyOf(session().readings());
    }
    if (other || changesResults(news)) {
      results = List.copyOf(session().results());
    }
    List<Cue> cues = announcer.announce(news);
    news.stream()
        .flatMap(each -> light.ofOpening(each).stream())
        .forEach(said -> say(new Message(Message.Kind.ATTENTION, said)));
    return cues;
  }

  private void show(SessionEvent news, Optional<DialSetting> before) {
    if (news instanceof SessionEvent.Settled settled) {
      settled(settled.result());
    } else if (news instanceof SessionEvent.Provisional provisional) {
      justDone = Optional.empty();
      openSeconds = OptionalDouble.empty();
      last =
          Optional.of(
              new LastFiring.Provisional(
                  provisional.exposure(), provisional.errorStops(), session().setting()));
    } else if (news instanceof SessionEvent.StillOpen open) {
      justDone = Optional.empty();
      openSeconds = OptionalDouble.of(open.seconds());
    } else if (news instanceof SessionEvent.RunDone) {
      justDone = before.or(() -> justDone);
    } else if (news instanceof SessionEvent.OfFiring of) {
      replaceLast(of.result());
    } else if (isAnotherSession(news)) {
      justDone = Optional.empty();
    } else if (before.isPresent()
        && Announcer.shownBy(news).filter(next -> !next.equals(before.get())).isPresent()) {
      justDone = before;
    }
  }

  /** A run is to begin, or goes on. */
  public void runBegins() {
    justDone = Optional.empty();
    last = Optional.empty();
    announcer.forget();
  }

  /** The camera on the bench was named. */
  public void named(String label, Dial speeds) {
    camera = label;
    dial = Optional.of(speeds);
  }

  /** Another camera is on the bench, and nobody has named it yet. */
  public void isNobodys() {
    camera = "";
    dial = Optional.empty();
  }

  /** The marked speeds of the camera that was named. */
  public Optional<Dial> dial() {
    return dial;
  }

  /** How the two speeds stand that are adjusted at once. */
  private Optional<TwoAtOnce> two() {
    Session session = session();
    Optional<Pair> now =
        session
            .two()
            .map(
                two ->
                    new Pair(
                        two,
                        session.setup().orElseThrow(),
                        session.run(),
                        results,
                        List.copyOf(session.adjusted())));
    if (!now.equals(pair)) {
      pair = now;
      two = now.map(Pair::judged);
    }
    return two;
  }

  /** Something is said to the person. */
  public void say(Message sentence) {
    announcer.say(sentence);
  }

  /** The rig itself, and the work on it. */
  public RigModel rig() {
    return rig;
  }

  /** The ports, and why no rig is on one. */
  public PortsModel ports() {
    return ports;
  }

  /** Whether the rig answers. */
  public boolean isLinkUp() {
    return link().isUp();
  }

  /** What the window shows now. */
  public BenchView view() {
    Session session = session();
    Optional<DialSetting> shown = session.setting();
    return new BenchView(
        link(),
        new LightView(
            session.light(),
            light.settingPrompt(),
            light.refusal(),
            light.meter(),
            light.isAiming(),
            light.screen().map(ScreenView::of)),
        session.setup(),
        session.run(),
        camera,
        dial,
        shown,
        session.setup().filter(RunSetup::isStage).isPresent()
            ? session.goodHere()
            : shown.flatMap(DialSetting::speed).map(session::goodAt).orElse(0),
        session.wanted(),
        session.repeat(),
        session.isRunDone(),
        justDone,
        last,
        openSeconds,
        results,
        session.question(),
        List.copyOf(session.adjusted()),
        List.copyOf(session.turns()),
        session.step(),
        two(),
        session.runs(),
        session.isLearningCocking()
            ? BenchView.Cocking.LEARNING
            : session.cockingPattern().isPresent()
                ? BenchView.Cocking.LEARNT
                : BenchView.Cocking.UNKNOWN,
        session.isCapOn(),
        session.conditions(),
        announcer.said(),
        rig.view(driver.workbench().fold().greeting(), session, clock()),
        readings,
        session().presses(),
        session().plungers(),
        new LightTestView(light.testPrompt(), light.plan()),
        linkage(),
        new SessionUndo(
            driver.workbench().fold().toUndo().orElse(0),
            driver.workbench().fold().undoes(),
            driver.workbench().fold().redoes()));
  }

  /** The test that goes on, or has ended and no firing came after it. */
  private LinkageView linkage() {
    boolean ofTheLinkage =
        Stream.concat(session().setting().stream(), justDone.stream())
            .anyMatch(setting -> setting.untimedTest().equals(Optional.of(UntimedTest.LINKAGE)));
    return linkage
        .last()
        .filter(its -> ofTheLinkage)
        .map(LinkageView::of)
        .orElse(LinkageView.NOTHING);
  }

  private List<String> clock() {
    return ClockWords.lines(
        driver.clock(),
        driver.hostClock(),
        driver.workbench().fold().greeting().map(its -> its.serial()).orElse(""),
        session().profileUse());
  }

  private void settled(FiringResult result) {
    openSeconds = OptionalDouble.empty();
    if (result.outcome() != Outcome.HELD_FOR_LIGHT) {
      last = Optional.of(new LastFiring.Settled(result));
      boolean firing =
          result.outcome() != Outcome.NOT_A_SHUTTER_EVENT
              && result.outcome() != Outcome.LIGHT_WHILE_COCKING;
      justDone = firing ? Optional.empty() : justDone;
    }
  }

  private void replaceLast(FiringResult changed) {
    if (last.flatMap(LastFiring::over).filter(o -> o.key().equals(changed.key())).isPresent()) {
      last = Optional.of(new LastFiring.Settled(changed));
    }
  }

  private static boolean isAnotherSession(SessionEvent news) {
    return news instanceof SessionEvent.Undone || news instanceof SessionEvent.Redone;
  }

  private static boolean changesResults(List<SessionEvent> news) {
    return news.stream().anyMatch(SessionEvent.OfFiring.class::isInstance);
  }

  private void changed(LinkChange change) {
    boolean wasLost = linkState == LinkState.LOST;
    linkState = change.state();
    // The practice rig is on no port of the computer.
    change.ports().filter(found -> source != Source.PRACTICE).ifPresent(ports::report);
    linkSentence =
        change.state() == LinkState.SEARCHING && change.ports().isPresent()
            ? ports.forTheBench().orElse(change.sentence())
            : change.sentence();
    boolean passedOver = change.ports().filter(its -> its.outcomes().size() > 1).isPresent();
    if (change.state() == LinkState.CONNECTED && (wasLost || passedOver)) {
      say(new Message(Message.Kind.NEWS, change.sentence()));
    } else if (change.state() == LinkState.LOST) {
      openSeconds = OptionalDouble.empty();
      say(new Message(Message.Kind.TROUBLE, lostSentence()));
    } else if (change.state() == LinkState.BACK) {
      say(new Message(Message.Kind.NEWS, change.sentence()));
    }
  }

  private String lostSentence() {
    String at =
        session().setting().map(Sentences::dial).orElseGet(() -> Words.say("desk.link.noSpeed"));
    return Words.say("desk.link.lost", session().results().size() + 1, at, results.size());
  }

  private LinkView link() {
    LinkStatistics statistics = driver.workbench().fold().linkStatistics();
    String serial = driver.workbench().fold().greeting().map(g -> g.serial()).orElse("");
    return new LinkView(
        linkState,
        linkSentence,
        serial.isEmpty() ? source : Source.of(serial),
        serial,
        statistics.bad(),
        statistics.missing(),
        ports.view());
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
