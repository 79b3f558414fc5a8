package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.link.LinkState;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.SessionNews;
import org.halflight.words.Words;

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
  private Optional<LightSetting> lightSetting = Optional.empty();
  private boolean heldOpen;

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
    LightSetting setting = new LightSetting();
    lightSetting = Optional.of(setting);
    feed.send(setting.begin());
    return setting;
  }

  /** The person holds the shutter open, as the light setting asked: no firing, when it settles. */
  public void shutterIsOpen() {
    heldOpen |= lightSetting.isPresent();
    lightSetting.ifPresent(setting -> feed.send(setting.shutterIsOpen()));
  }

  /** Something that the person did. */
  public List<SessionNews> tell(SessionInput input) {
    return workbench.tell(input);
  }

  /** The session at work. */
  public Workbench workbench() {
    return workbench;
  }

  @Override
  public void close() {
    feed.close();
    workbench.close();
  }

  private Happening hear(BenchEvent event) {
    BenchFold.Brought brought = workbench.take(event);
    for (RigEvent said : brought.said()) {
      if (said instanceof RigEvent.Greeted && lightSetting.isEmpty()) {
        restoreThresholds();
      }
      lightSetting.ifPresent(setting -> go(setting, said));
    }
    List<SessionNews> news = new ArrayList<>(brought.news());
    boolean settled =
        news.stream()
            .anyMatch(
                n ->
                    n instanceof SessionNews.Settled firing
                        && firing.result().outcome().isOfTheShutter());
    if (heldOpen && settled) {
      heldOpen = false;
      news.addAll(workbench.tell(new SessionInput.LastRejected(Words.say("light.heldOpen"))));
    }
    return new Happening(Optional.empty(), news);
  }

  private void go(LightSetting setting, RigEvent said) {
    setting.hear(said).ifPresent(feed::send);
    if (setting.step() == LightSetting.Step.DONE) {
      lightSetting = Optional.empty();
      workbench.tell(new SessionInput.LightSet(setting.levels().orElseThrow()));
    } else if (setting.step() == LightSetting.Step.REFUSED) {
      lightSetting = Optional.empty();
    }
  }

  /** A board that starts has its own thresholds; those of this session's light go back to it. */
  private void restoreThresholds() {
    Optional<LightLevels> light = workbench.fold().session().light();
    if (light.isPresent()
        && ThresholdCodes.forLight(light.get().darkCounts(), light.get().fullCounts())
            instanceof ThresholdCodes.Found found) {
      feed.send(new RigCommand.SetThresholds(found.codes().low(), found.codes().high()));
    }
  }

  private Happening changed(LinkChange change) {
    List<SessionNews> news =
        change.state() == LinkState.LOST ? workbench.tell(new SessionInput.LinkLost()) : List.of();
    return new Happening(Optional.of(change), news);
  }
}
