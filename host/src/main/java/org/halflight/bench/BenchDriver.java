package org.halflight.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.halflight.calibration.HostClock;
import org.halflight.calibration.LiveClock;
import org.halflight.link.LinkState;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.signal.Channel;
import org.halflight.trouble.Trouble;

/**
 * Joins a rig and a session at work: keeps and works out every line, watches the clocks, lends the
 * rig. Terminal and window only show what comes out of it. For one thread.
 */
public final class BenchDriver implements AutoCloseable {
  private static final int MOST_FAULTS_AT_CLOSING = 100_000;

  /**
   * One thing that happened.
   *
   * @param change of the link, if it was one
   * @param news of the session
   */
  public record Happening(Optional<LinkChange> change, List<SessionEvent> news) {
    public Happening {
      news = List.copyOf(news);
    }
  }

  private final Workbench workbench;
  private final RigFeed feed;
  private final LightKeeper light;
  private final CurveLook curves = new CurveLook();
  private final ThresholdLook thresholds = new ThresholdLook();
  private final CommandsUnderWay commands = new CommandsUnderWay();
  private final ProfileSource profiles;
  private final LocalDate today;
  private final Set<String> profiledRigs = new HashSet<>();

  /** Empty where nobody wants the clocks held against each other. */
  private Optional<ClockKeeper> clock = Optional.empty();

  /** What the rig says is for the work that it is lent to. */
  private Optional<ExclusiveRig> lent = Optional.empty();

  /** Whether a rig has greeted and was not lost since. */
  private boolean isUp;

  /** A session that is told of no profile but by its own file. */
  public BenchDriver(Workbench workbench, RigFeed feed) {
    this(workbench, feed, ProfileSource.NONE, LocalDate.EPOCH);
  }

  /**
   * @param profiles asked once for each rig that greets
   * @param today the day of the work
   */
  public BenchDriver(Workbench workbench, RigFeed feed, ProfileSource profiles, LocalDate today) {
    this.workbench = workbench;
    this.feed = feed;
    this.profiles = profiles;
    this.today = today;
    light = new LightKeeper(workbench, this::send);
  }

  /**
   * Has the rig's clock held against the host's while nothing else happens.
   *
   * @param host what its clock is worth
   */
  public BenchDriver watchesClock(Supplier<HostClock> host) {
    clock = Optional.of(new ClockKeeper(host));
    return this;
  }

  /** What is known of the rig's clock while measuring. */
  public LiveClock clock() {
    return clock.map(ClockKeeper::now).orElseGet(LiveClock.NotWatched::new);
  }

  /** What the host's clock is worth. */
  public HostClock hostClock() {
    return clock.map(ClockKeeper::host).orElse(HostClock.NOT_KNOWN);
  }

  /** Takes the next thing that came; empty when nothing did for a short while. */
  public Optional<Happening> step() {
    return feed.next().map(this::happening);
  }

  private Happening happening(RigFeed.Item item) {
    if (item instanceof RigFeed.Item.Unanswered given) {
      boolean awaited = commands.unanswered(given.command()) && !CurveLook.isOne(given.command());
      if (CurveLook.isOne(given.command())) {
        curves.unanswered();
      }
      return new Happening(Optional.empty(), awaited ? light.unanswered() : List.of());
    }
    return item instanceof RigFeed.Item.Line line
        ? onEvent(line.event())
        : changed(((RigFeed.Item.Changed) item).change());
  }

  /**
   * Asks for the light curve of an outer sensor at the next firing, or of none any more. A rig that
   * does not know such curves goes on as before.
   */
  public void wantCurveOf(Optional<Channel> outerSensor) {
    curves.want(outerSensor);
  }

  /** The outer sensor whose light curve is still to come. */
  public Optional<Channel> curveWanted() {
    return curves.wanted();
  }

  /** The light of the session. */
  public LightKeeper light() {
    return light;
  }

  /**
   * Lends the rig to a calibration or a rig check. Every line still reaches the session file and
   * the session goes on, but it sees nothing of what the rig does meanwhile. Closing the work gives
   * the rig back, with the thresholds of the session's light.
   *
   * @param meanwhile is done at every step of the work, on its thread
   * @param tell takes what happens to the link
   */
  public RigWork lend(Runnable meanwhile, Consumer<Happening> tell) {
    light.endAim();
    workbench.handle(new SessionInput.RigAtWork(true));
    ExclusiveRig rig =
        new ExclusiveRig(
            feed,
            commands,
            item -> {
              meanwhile.run();
              item.ifPresent(came -> tell.accept(happening(came)));
            },
            this::giveBack);
    lent = Optional.of(rig);
    return new RigWork(rig, workbench.fold().greeting());
  }

  private void giveBack(ExclusiveRig rig) {
    light.standsAsBefore();
    rig.rest();
    lent = Optional.empty();
    workbench.handle(new SessionInput.RigAtWork(false));
  }

  /** Whether rig and camera have nothing to do that setting or reading the light would disturb. */
  public boolean isFree() {
    return lent.isEmpty()
        && workbench.fold().greeting().isPresent()
        && session().isQuiet()
        && !light.isUnderWay();
  }

  /** Whether there is a rig that is free to aim the light. */
  public boolean canAim() {
    return lent.isEmpty() && isUp && !light.isUnderWay();
  }

  /** Something that the person did. */
  public List<SessionEvent> handle(SessionInput input) {
    return workbench.handle(input);
  }

  /** The person does not count the last firing of the run. */
  public List<SessionEvent> reject(String reason) {
    return workbench.reject(reason);
  }

  /** See {@link Workbench#changeReason}. */
  public List<SessionEvent> changeReason(OptionalInt number, String reason) {
    return workbench.changeReason(number, reason);
  }

  /** Undoes the last thing that the person did about speeds and firings. */
  public List<SessionEvent> undo() {
    return workbench.undo();
  }

  /** Takes the last undo back. */
  public List<SessionEvent> redo() {
    return workbench.redo();
  }

  /** The session at work. */
  public Workbench workbench() {
    return workbench;
  }

  /** Lets go of the rig; what it had sent by then still reaches the session file. */
  @Override
  public void close() {
    try (workbench) {
      feed.close();
      drain();
      light.end();
    }
  }

  /**
   * Takes one thing more, if there is one; what a full disk refuses waits, and comes in the end.
   */
  private boolean handleNext() {
    Optional<RigFeed.Item> rest = feed.next();
    try {
      rest.ifPresent(this::happening);
    } catch (Trouble full) {
      return true;
    }
    return rest.isPresent();
  }

  /** Takes, and so keeps, what the rig had sent; nobody is there to be told. */
  private void drain() {
    Optional<RuntimeException> first = Optional.empty();
    boolean more = true;
    for (int faults = 0; more && faults < MOST_FAULTS_AT_CLOSING; ) {
      try {
        more = handleNext();
      } catch (RuntimeException fault) {
        // A line that cannot be worked out must not keep those behind it from their file.
        faults++;
        first = first.or(() -> Optional.of(fault));
      }
    }
    if (first.isPresent()) {
      throw first.get();
    }
  }

  private Happening onEvent(BenchEvent event) {
    List<SessionEvent> news = new ArrayList<>();
    for (Workbench.Handled handled : workbench.handleEach(event)) {
      onEvent(handled.event(), handled.brought(), news);
    }
    return new Happening(Optional.empty(), news);
  }

  private void onEvent(BenchEvent event, SessionReducer.Brought brought, List<SessionEvent> all) {
    List<SessionEvent> news = new ArrayList<>(brought.news());
    List<RigEvent> heard = withoutPings(event, brought.said());
    if (event instanceof BenchEvent.Sent sent) {
      commands.sent(sent);
      curves.sent(sent);
    }
    for (RigEvent each : heard) {
      news.addAll(onRigEvent(each));
    }
    news.addAll(light.after(news));
    all.addAll(news);
  }

  private List<SessionEvent> onRigEvent(RigEvent said) {
    if (said instanceof RigEvent.Restarted) {
      commands.forget();
    }
    isUp |= said instanceof RigMessage.Greeting;
    // Heard whoever the rig works for.
    if (said instanceof RigEvent.EdgeAt) {
      commands.edge();
    }
    boolean answersNobody =
        said instanceof RigMessage.Answer answered && !commands.isWaitedFor(answered);
    boolean givenUp = said instanceof RigEvent.TimeAt && commands.beat();
    curves.onEvent(said);
    if (said instanceof RigEvent.TimeAt beat) {
      light.onTime(beat);
    }
    if (lent.isPresent()) {
      lent.get().onEvent(said);
      return List.of();
    }
    List<SessionEvent> news = new ArrayList<>();
    if (said instanceof RigMessage.Greeting greeted && profiledRigs.add(greeted.serial())) {
      profiles
          .forRig(greeted.serial(), Optional.of(today))
          .ifPresent(input -> news.addAll(workbench.handle(input)));
    }
    if (said instanceof RigEvent.TimeAt beat && isIdle()) {
      clock.flatMap(keeper -> keeper.ping(beat)).ifPresent(feed::send);
      clock
          .flatMap(keeper -> keeper.rate(beat))
          .ifPresent(found -> news.addAll(workbench.handle(found)));
    }
    if (said instanceof RigEvent.TimeAt && isIdle() && !commands.isWaiting()) {
      curves.next(session()).ifPresent(this::sendAhead);
      thresholds.next(session()).ifPresent(this::sendAhead);
    }
    if (givenUp) {
      news.addAll(light.unanswered());
    }
    boolean tooEarly =
        (said instanceof RigEvent.TimeAt && commands.isWaiting())
            || (said instanceof RigMessage.LightBlock && commands.isWaitingFor(AimMeter.STOP));
    if (!answersNobody && !tooEarly) {
      news.addAll(light.onEvent(said));
    }
    return news;
  }

  private void send(RigCommand command) {
    commands.asked(command);
    feed.send(command);
  }

  /** Sends a command whose answer nothing waits for. */
  private void sendAhead(RigCommand command) {
    commands.askedAhead(command);
    feed.send(command);
  }

  private List<RigEvent> withoutPings(BenchEvent event, List<RigEvent> said) {
    if (clock.isPresent() && event instanceof BenchEvent.Sent sent) {
      clock.get().sent(sent);
    }
    return clock.isPresent() && event instanceof BenchEvent.Received received
        ? clock.get().onEvents(received.hostNanos(), said)
        : said;
  }

  /** Nothing is under way that a ping and its echo could get between. */
  private boolean isIdle() {
    return session().isQuiet() && light.isIdle();
  }

  private Session session() {
    return workbench.fold().session();
  }

  private Happening changed(LinkChange change) {
    if (change.state() == LinkState.LOST) {
      commands.forget();
      curves.forget();
      isUp = false;
      light.isLost();
    }
    List<SessionEvent> news =
        change.state() == LinkState.LOST
            ? workbench.handle(new SessionInput.LinkLost())
            : List.of();
    return new Happening(Optional.of(change), news);
  }
}
