package org.halflight.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.LeafExposure;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.signal.FiringGrouper;
import org.halflight.signal.Pulses;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;

/**
 * A session at the bench as a state machine: what happens to each release, which speed is next. It
 * reads no clock and no file; the same inputs always bring the same results. Not safe for use by
 * several threads.
 */
public final class Session {
  /** Quiet time that ends a firing, in seconds: longer than any bounce, shorter than a hand. */
  public static final double QUIET_SECONDS = 0.2;

  /** After so many tries without the firings asked for, a speed is erratic and the run goes on. */
  public static final int ENOUGH_TRIES = 10;

  /**
   * Light of a second opening, as a share of the main one, from which a release counts as double.
   */
  private static final double DOUBLE_SHARE = 0.3;

  private final List<FiringResult> results = new ArrayList<>();
  private final Set<FiringKey> known = new HashSet<>();
  private TickRate rate = TickRate.BOARD_16_MHZ;
  private FiringGrouper grouper = grouperFor(rate);
  private String rigSerial = "";
  private long bootCount;
  private Optional<LightLevels> light = Optional.empty();
  private Optional<RunSetup> setup = Optional.empty();
  private Optional<MarkedSpeed> shown = Optional.empty();
  private boolean runDone;
  private boolean closedByHand;
  private boolean provisionalTold;

  /**
   * Takes an input.
   *
   * @return what there is to tell because of it, in order
   */
  public List<SessionNews> take(SessionInput input) {
    List<SessionNews> news = new ArrayList<>();
    if (input instanceof SessionInput.RigIs rig) {
      meet(rig, news);
    } else if (input instanceof SessionInput.EdgeAt edge) {
      // The speed may change when a firing settles, so earlier firings settle before this edge is
      // looked at.
      settle(grouper.add(edge.edge()), news);
      tellUnderway(edge.edge().ticks(), news);
    } else if (input instanceof SessionInput.BeatAt beat) {
      settle(grouper.beat(beat.ticks(), beat.levels()), news);
      tellUnderway(beat.ticks(), news);
    } else if (input instanceof SessionInput.Damaged damaged) {
      grouper.damage(damaged.damage());
    } else if (input instanceof SessionInput.LinkLost) {
      settle(grouper.finish(Firing.Damage.LINK_LOST), news);
    } else if (input instanceof SessionInput.LightSet set) {
      light = Optional.of(set.levels());
    } else if (input instanceof SessionInput.RunBegins begins) {
      setup = Optional.of(begins.setup());
      runDone = false;
      show(begins.setup().order().get(0), news);
    } else if (input instanceof SessionInput.SpeedChosen chosen) {
      runDone = false;
      show(chosen.speed(), news);
    } else if (input instanceof SessionInput.LastRejected rejected) {
      rejectLast(rejected.reason(), news);
    } else if (input instanceof SessionInput.ClosedByHand) {
      closedByHand = grouper.isLight();
    } else if (input instanceof SessionInput.Ends) {
      settle(grouper.finish(), news);
    }
    return news;
  }

  /** All firings so far, the rejected ones too, in the order in which they settled. */
  public List<FiringResult> results() {
    return Collections.unmodifiableList(results);
  }

  /** The run under way or done. */
  public Optional<RunSetup> setup() {
    return setup;
  }

  /** The speed shown now. */
  public Optional<MarkedSpeed> shown() {
    return shown;
  }

  /** Whether every speed of the run has its firings. */
  public boolean isRunDone() {
    return runDone;
  }

  /** Whether no firing is under way. */
  public boolean isQuiet() {
    return grouper.underway().isEmpty() && !grouper.isLight();
  }

  /** The light as it was set last. */
  public Optional<LightLevels> light() {
    return light;
  }

  /** Firings of the run at a speed that have what was asked for. */
  public int goodAt(MarkedSpeed speed) {
    return (int) tries(speed).filter(FiringResult::answersTheQuestion).count();
  }

  /** Damage that fell into no firing: lines or edges lost while nothing happened. */
  public long damageBetweenFirings() {
    return grouper.damageBetweenFirings();
  }

  private void meet(SessionInput.RigIs rig, List<SessionNews> news) {
    boolean sameStart = rig.serial().equals(rigSerial) && rig.bootCount() == bootCount;
    if (!sameStart) {
      // Ticks of another start mean nothing beside these.
      settle(grouper.finish(Firing.Damage.RIG_RESTARTED), news);
      rate = rig.rate();
      grouper = grouperFor(rate);
      rigSerial = rig.serial();
      bootCount = rig.bootCount();
    }
  }

  private void settle(List<Firing> firings, List<SessionNews> news) {
    for (Firing firing : firings) {
      settle(firing, news);
    }
  }

  private void settle(Firing firing, List<SessionNews> news) {
    boolean byHand = closedByHand;
    closedByHand = false;
    provisionalTold = false;
    FiringKey key = new FiringKey(rigSerial, bootCount, firing.firstTicks());
    if (!known.add(key)) {
      return;
    }
    LeafExposure exposure = measure(firing);
    if (byHand && exposure instanceof LeafExposure.Timed timed) {
      exposure =
          new LeafExposure.StuckOpen(timed.widthLowSeconds(), timed.crossings().lowRiseTicks());
    }
    Optional<Phase> phase = setup.map(RunSetup::phase);
    Outcome outcome = outcome(firing, exposure);
    boolean first =
        phase.equals(Optional.of(Phase.AS_FOUND))
            && results.stream()
                .noneMatch(r -> r.phase().equals(phase) && r.outcome().isOfTheShutter());
    FiringResult result =
        new FiringResult(
            results.size() + 1,
            key,
            firing,
            rate,
            shown,
            setup.map(RunSetup::reference).orElse(Reference.EXACT),
            phase,
            outcome,
            exposure,
            levels(),
            first && outcome.isOfTheShutter(),
            Optional.empty());
    results.add(result);
    news.add(new SessionNews.Settled(result));
    goOn(news);
  }

  private LeafExposure measure(Firing firing) {
    return LeafExposureMethod.measure(firing, levels().orElse(LevelPair.GAUSS), rate);
  }

  private Optional<LevelPair> levels() {
    return light.flatMap(
        levels ->
            levels.levels() instanceof LightLevels.Known known
                ? Optional.of(known.levels())
                : Optional.empty());
  }

  private static Outcome outcome(Firing firing, LeafExposure exposure) {
    if (exposure instanceof LeafExposure.Timed timed) {
      return Math.max(timed.earlyLightShare(), timed.lateLightShare()) >= DOUBLE_SHARE
          ? Outcome.DOUBLE
          : Outcome.TIMED;
    }
    if (exposure instanceof LeafExposure.NeverFullyOpen) {
      return Outcome.NEVER_FULLY_OPEN;
    }
    if (exposure instanceof LeafExposure.StuckOpen) {
      return Outcome.STUCK_OPEN;
    }
    LeafExposure.Unusable unusable = (LeafExposure.Unusable) exposure;
    if (unusable.reason() != LeafExposure.Reason.NO_LIGHT) {
      return Outcome.UNUSABLE;
    }
    boolean pressed = !Pulses.of(firing, Channel.RELEASE).isEmpty();
    return pressed ? Outcome.DID_NOT_OPEN : Outcome.NOT_A_SHUTTER_EVENT;
  }

  private void rejectLast(String reason, List<SessionNews> news) {
    for (int i = results.size() - 1; i >= 0; i--) {
      FiringResult last = results.get(i);
      if (last.outcome().isOfTheShutter() && last.rejection().isEmpty()) {
        FiringResult rejected = last.rejected(reason);
        results.set(i, rejected);
        news.add(new SessionNews.Rejected(rejected));
        runDone = false;
        // The speed of the rejected firing is shown again: it lacks one now.
        last.shown().ifPresent(speed -> show(speed, news));
        return;
      }
    }
  }

  private void show(MarkedSpeed speed, List<SessionNews> news) {
    shown = Optional.of(speed);
    news.add(
        new SessionNews.SpeedShown(
            speed, goodAt(speed), setup.map(RunSetup::firingsPerSpeed).orElse(0)));
  }

  private void goOn(List<SessionNews> news) {
    if (setup.isEmpty() || shown.isEmpty() || runDone) {
      return;
    }
    MarkedSpeed speed = shown.get();
    if (!isDone(speed)) {
      show(speed, news);
      return;
    }
    int good = goodAt(speed);
    if (good < setup.get().firingsPerSpeed()) {
      news.add(new SessionNews.EnoughToKnow(speed, (int) tries(speed).count(), good));
    }
    List<MarkedSpeed> order = setup.get().order();
    int here = order.indexOf(speed);
    for (int step = 1; step <= order.size(); step++) {
      MarkedSpeed next = order.get(Math.floorMod(here + step, order.size()));
      if (!isDone(next)) {
        show(next, news);
        return;
      }
    }
    runDone = true;
    news.add(new SessionNews.RunDone());
  }

  private boolean isDone(MarkedSpeed speed) {
    return goodAt(speed) >= setup.orElseThrow().firingsPerSpeed()
        || tries(speed).count() >= ENOUGH_TRIES;
  }

  private java.util.stream.Stream<FiringResult> tries(MarkedSpeed speed) {
    Optional<Phase> phase = setup.map(RunSetup::phase);
    return results.stream()
        .filter(r -> r.phase().equals(phase) && r.shown().equals(Optional.of(speed)))
        .filter(r -> r.outcome().isOfTheShutter());
  }

  private void tellUnderway(long nowTicks, List<SessionNews> news) {
    Optional<Firing> underway = grouper.underway();
    if (underway.isEmpty()) {
      return;
    }
    if (grouper.isLight()) {
      Pulses low = Pulses.of(underway.get(), Channel.CENTRE_LOW);
      low.stillHighSince()
          .ifPresent(
              since -> {
                double open = rate.seconds(nowTicks - since);
                if (open > expectedSeconds()) {
                  news.add(new SessionNews.StillOpen(open));
                }
              });
      return;
    }
    if (provisionalTold || !(measure(underway.get()) instanceof LeafExposure.Timed timed)) {
      return;
    }
    provisionalTold = true;
    OptionalDouble error =
        shown.isPresent()
            ? OptionalDouble.of(
                Stops.between(
                    timed.effectiveSeconds(),
                    shown.get().seconds(setup.map(RunSetup::reference).orElse(Reference.EXACT))))
            : OptionalDouble.empty();
    news.add(new SessionNews.Provisional(timed, error));
  }

  /** How long the shutter may be open before that is worth saying. */
  private double expectedSeconds() {
    return Math.max(2, shown.map(speed -> 3 * speed.literalSeconds()).orElse(0.0));
  }

  private static FiringGrouper grouperFor(TickRate rate) {
    return new FiringGrouper(rate.ticks(QUIET_SECONDS));
  }
}
