package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.link.LinkState;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.session.SessionInput.LevelStands;
import org.halflight.session.SessionNews;
import org.halflight.signal.Channel;

/**
 * Joins a rig and a session at work: keeps and works out every line, sets the light, puts the
 * thresholds back after the rig has started anew. Terminal and window only show what comes out of
 * it. For one thread.
 */
public final class BenchDriver implements AutoCloseable {
  /**
   * One thing that happened.
   *
   * @param change of the link, if it was one
   * @param news of the session
   */
  public record Happening(Optional<LinkChange> change, List<SessionNews> news) {
    public Happening {
      news = List.copyOf(news);
    }
  }

  private final Workbench workbench;
  private final RigFeed feed;
  private final ThresholdKeeper thresholds = new ThresholdKeeper();
  private final LevelTurner turner = new LevelTurner();
  private Optional<LightSetting> lightSetting = Optional.empty();

  /** Asked and said once: until the rig is greeted again, another one may be there. */
  private boolean rigCannotSweep;

  /** Beats, or answers in their place, after which a rig that was lent has come to rest. */
  private static final int SETTLE_BEATS = 3;

  /** A rig that says nothing for so many short whiles is gone. */
  private static final int SETTLE_IDLE_MOST = 20;

  /** Any single work of the rig is done by then; the LED goes out by itself after 10 s. */
  private static final int DARK_TRIES = 40;

  private int beats;
  private boolean refused;

  /** What the rig says is for the work that it is lent to. */
  private boolean lent;

  public BenchDriver(Workbench workbench, RigFeed feed) {
    this.workbench = workbench;
    this.feed = feed;
  }

  /** Takes the next thing that came; empty when nothing did for a short while. */
  public Optional<Happening> step() {
    return feed.next()
        .map(
            item ->
                item instanceof RigFeed.Item.Line line
                    ? hear(line.event())
                    : changed(((RigFeed.Item.Changed) item).change()));
  }

  /** Begins to set the light; the shutter is closed. */
  public LightSetting setLight() {
    LightSetting setting = new LightSetting(!rigCannotSweep, session().isOneLevelRig());
    lightSetting = Optional.of(setting);
    workbench.tell(new SessionInput.LightBeingSet(true));
    feed.send(setting.begin());
    return setting;
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
    workbench.tell(new SessionInput.RigAtWork(true));
    lent = true;
    return new RigWork(
        new RigFeed() {
          @Override
          public Optional<Item> next() {
            meanwhile.run();
            Optional<Item> item = feed.next();
            item.ifPresent(
                came ->
                    tell.accept(
                        came instanceof Item.Line line
                            ? hear(line.event())
                            : changed(((Item.Changed) came).change())));
            return item;
          }

          @Override
          public void send(RigCommand command) {
            feed.send(command);
          }

          @Override
          public void close() {
            giveBack(this);
          }
        },
        workbench.fold().greeting());
  }

  /** The person holds the shutter open, as the light setting asked. */
  public void shutterIsOpen() {
    lightSetting.ifPresent(setting -> feed.send(setting.shutterIsOpen()));
  }

  /** The LED that goes out and thresholds that move make edges: they are no shutter's either. */
  private void giveBack(RigFeed lentFeed) {
    // A rig that was stopped in the middle of something is busy with it for a while.
    for (int tries = 0; tries < DARK_TRIES; tries++) {
      refused = false;
      feed.send(RigCommand.DriveReference.off());
      rest(lentFeed, 1);
      if (!refused) {
        break;
      }
    }
    if (session().light().isEmpty() && !session().isOneLevelRig()) {
      ThresholdCodes codes = ThresholdCodes.AFTER_START;
      feed.send(new RigCommand.SetThresholds(codes.low(), codes.high()));
    }
    restoreThresholds();
    rest(lentFeed, SETTLE_BEATS);
    lent = false;
    workbench.tell(new SessionInput.RigAtWork(false));
  }

  /** Lets beats go by, or as many answers to the question for the time. */
  private void rest(RigFeed lentFeed, int howMany) {
    beats = 0;
    for (int idle = 0; beats <= howMany && idle < SETTLE_IDLE_MOST; ) {
      if (lentFeed.next().isEmpty()) {
        feed.send(new RigCommand.AskStatus());
        idle++;
      }
    }
  }

  /** Whether the light is being set now. */
  public boolean isSettingLight() {
    return lightSetting.isPresent();
  }

  /** Something that the person did. */
  public List<SessionNews> tell(SessionInput input) {
    return workbench.tell(input);
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
      for (Optional<Happening> rest = step(); rest.isPresent(); rest = step()) {
        // Taken, and so kept; nobody is there to be told.
      }
      endLightSetting();
    }
  }

  private Happening hear(BenchEvent event) {
    BenchFold.Brought brought = workbench.take(event);
    List<SessionNews> news = new ArrayList<>(brought.news());
    refused |=
        brought.said().stream()
            .anyMatch(
                said ->
                    said instanceof RigEvent.Answered answered
                        && answered.result() == RigMessage.Result.BUSY);
    beats += (int) brought.said().stream().filter(RigEvent.TimeAt.class::isInstance).count();
    for (RigEvent said : lent ? List.<RigEvent>of() : brought.said()) {
      if (lightSetting.isPresent()) {
        go(lightSetting.get(), said);
      } else if (said instanceof RigEvent.Restarted) {
        // Its greeting may not have come through; without it nobody knows which start this is.
        feed.send(new RigCommand.AskGreeting());
      } else if (said instanceof RigEvent.Greeted) {
        rigCannotSweep = false;
        restoreThresholds();
      } else if (session().isOneLevelRig()) {
        turner.hear(said).ifPresent(next -> news.addAll(follow(next)));
      } else {
        thresholds.hear(said).ifPresent(feed::send);
      }
    }
    if (session().isOneLevelRig()
        && lightSetting.isEmpty()
        && news.stream().anyMatch(BenchDriver::sawLight)) {
      move(turner.turn());
    }
    if (thresholds.isOff()) {
      news.addAll(workbench.tell(new SessionInput.LightForgotten()));
    }
    return new Happening(Optional.empty(), news);
  }

  private void go(LightSetting setting, RigEvent said) {
    setting.hear(said).ifPresent(feed::send);
    if (setting.step() == LightSetting.Step.DONE || setting.step() == LightSetting.Step.REFUSED) {
      endLightSetting();
      rigCannotSweep |= setting.rigCannotSweep();
      TripPoints trips = setting.trips().orElse(TripPoints.EXACT);
      setting.levels().ifPresent(set -> workbench.tell(new SessionInput.LightSet(set, trips)));
    }
    if (setting.step() == LightSetting.Step.REFUSED
        || (setting.step() == LightSetting.Step.DONE && session().isOneLevelRig())) {
      // It may have moved the thresholds already.
      restoreThresholds();
    }
  }

  private void endLightSetting() {
    if (lightSetting.isPresent()) {
      lightSetting = Optional.empty();
      workbench.tell(new SessionInput.LightBeingSet(false));
    }
  }

  /** A board that starts has its own thresholds; those of this session's light go back to it. */
  private void restoreThresholds() {
    if (session().isOneLevelRig()) {
      move(turner.begin(session().light(), session().trips()));
    } else {
      session()
          .light()
          .flatMap(light -> thresholds.restore(light, session().trips()))
          .ifPresent(feed::send);
    }
  }

  private List<SessionNews> follow(LevelTurner.Next next) {
    if (next instanceof LevelTurner.Next.Send send) {
      feed.send(send.command());
      return List.of();
    }
    return workbench.tell(
        next instanceof LevelTurner.Next.Stands stands
            ? new LevelStands(Optional.of(stands.level()))
            : new SessionInput.LightForgotten());
  }

  private void move(RigCommand threshold) {
    workbench.tell(new LevelStands(Optional.empty()));
    feed.send(threshold);
  }

  private Session session() {
    return workbench.fold().session();
  }

  private static boolean sawLight(SessionNews news) {
    return news instanceof SessionNews.Settled settled
        && !settled.result().firing().of(Channel.CENTRE_LOW).isEmpty();
  }

  private Happening changed(LinkChange change) {
    List<SessionNews> news =
        change.state() == LinkState.LOST ? workbench.tell(new SessionInput.LinkLost()) : List.of();
    return new Happening(Optional.of(change), news);
  }
}
