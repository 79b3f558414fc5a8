package org.halflight.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.exposure.CurtainCurve;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Place;
import org.halflight.session.OwnTravel;
import org.halflight.speeds.Stops;
import org.halflight.stats.Sample;
import org.halflight.verdict.CurtainSign.Kind;

/**
 * Tells apart, from the figures of a run, a wedge, a drag, a late latch, slow curtains and bounce.
 *
 * <p>All of a difference between the travels that comes in the second half of the way is a drag: a
 * curtain whose spring is weaker or stronger parts from the other all along. A wedge moves the time
 * at the centre too, alike at all speeds, as a late latch does; so its share is taken out before
 * the latch is judged.
 */
public final class CurtainSigns {
  /**
   * From this part of the difference in the second half on it is a drag. A wedge of even drift has
   * 0.4 to 0.5, since curtains are quicker there; a drag over the last third has 1. Our choice.
   */
  private static final double DRAG_SHARE = 0.72;

  /** And below this it comes from the start. Our choice. */
  private static final double START_SHARE = 0.2;

  private final CurtainRunFigures run;
  private final CurtainWanted wanted;
  private final List<CurtainSign> signs = new ArrayList<>();

  private CurtainSigns(CurtainRunFigures run, CurtainWanted wanted) {
    this.run = run;
    this.wanted = wanted;
  }

  /** What stands out, the gravest first; empty where all is within good practice. */
  public static List<CurtainSign> of(CurtainRunFigures run, CurtainWanted wanted) {
    CurtainSigns all = new CurtainSigns(run, wanted);
    all.capped(Place.END, Kind.CAPPED_AT_END);
    all.capped(Place.START, Kind.CAPPED_AT_START);
    all.afterRest();
    boolean own = all.travels();
    boolean drags = all.slope();
    all.offset(drags, own);
    all.bounce();
    all.window();
    return List.copyOf(all.signs);
  }

  private void add(Kind kind, double size) {
    signs.add(new CurtainSign(kind, size, Optional.empty()));
  }

  private void add(Kind kind, double size, CurtainSpeed at) {
    signs.add(new CurtainSign(kind, size, Optional.of(at.speed())));
  }

  private void capped(Place place, Kind kind) {
    run.speeds().stream()
        .filter(speed -> speed.capped().containsKey(place))
        .reduce((slower, faster) -> faster)
        .ifPresent(
            speed ->
                add(kind, (double) speed.capped().getOrDefault(place, 0) / speed.firings(), speed));
  }

  private void afterRest() {
    OptionalDouble usual = run.mean(CurtainFigure.FIRST_TRAVEL);
    OptionalDouble rested =
        run.shots().stream()
            .filter(CurtainShot::afterRest)
            .flatMapToDouble(shot -> CurtainFigure.FIRST_TRAVEL.of(shot).stream())
            .max();
    if (usual.isPresent() && rested.isPresent()) {
      double share = rested.getAsDouble() / usual.getAsDouble() - 1;
      if (share > CurtainLimits.TRAVEL_SHARE) {
        add(Kind.SLOW_AFTER_REST, share);
      }
    }
  }

  /** Both travels against the camera's own figure; whether there is one. */
  private boolean travels() {
    wanted
        .travel()
        .ifPresent(
            own -> {
              travel(own, CurtainTravel::firstCurve, Kind.FIRST_SLOW, Kind.FIRST_QUICK);
              travel(own, CurtainTravel::secondCurve, Kind.SECOND_SLOW, Kind.SECOND_QUICK);
            });
    return wanted.travel().isPresent();
  }

  private void travel(
      OwnTravel own,
      Function<CurtainTravel, Optional<CurtainCurve>> curtain,
      Kind slow,
      Kind quick) {
    OptionalDouble seconds = run.travelOver(own.spanMillimetres(), curtain);
    if (seconds.isPresent()) {
      double share = own.excessShare(seconds.getAsDouble());
      if (Math.abs(share) > CurtainLimits.TRAVEL_SHARE) {
        add(share > 0 ? slow : quick, Math.abs(share));
      }
    }
  }

  /** The slope at the fastest speed that has light at both ends; whether a curtain drags. */
  private boolean slope() {
    Optional<Sample> difference = run.overAllSpeeds(CurtainFigure.TRAVEL_DIFFERENCE);
    OptionalDouble late = run.lateShare();
    if (difference.isEmpty() || late.isEmpty()) {
      return false;
    }
    CurtainSpeed top = run.top();
    double mean = difference.get().mean().get();
    // By the travels, since bounce is no slope, and a top speed that is capped has none.
    double start = top.wantedSeconds() * Stops.ratio(top.mean(CurtainFigure.START).orElse(0));
    double slope = stopsAtEnd(start, mean);
    boolean shown =
        difference
            .get()
            .meanInterval(SpeedSummary.LEVEL)
            .known()
            .map(interval -> !interval.contains(0))
            .orElse(true);
    if (Math.abs(slope) <= CurtainLimits.slopeStops(top.wantedSeconds()) || !shown) {
      return false;
    }
    double share = late.getAsDouble();
    if (share < START_SHARE) {
      add(Kind.START_DIFFERS, Math.abs(slope), top);
      return false;
    }
    boolean drags = share > DRAG_SHARE;
    Kind darker = drags ? Kind.FIRST_DRAGS : Kind.WEDGE_END_DARKER;
    Kind brighter = drags ? Kind.SECOND_DRAGS : Kind.WEDGE_END_BRIGHTER;
    add(slope < 0 ? darker : brighter, Math.abs(slope), top);
    return drags;
  }

  /** Darkness has no stops: an end that is as good as capped counts as four stops. */
  private static double stopsAtEnd(double startSeconds, double differenceSeconds) {
    return Stops.between(
        Math.max(startSeconds / 16, startSeconds + differenceSeconds), startSeconds);
  }

  private void offset(boolean drags, boolean own) {
    double wedge =
        drags
            ? 0
            : run.mean(CurtainFigure.TRAVEL_DIFFERENCE).orElse(0) * run.centreShare().orElse(0);
    Optional<CurtainOffset> line = run.offset();
    if (line.isEmpty()) {
      ofOneSpeed(wedge);
      return;
    }
    double latch = line.get().offsetSeconds() - wedge;
    // A latch shows in the times themselves: what only comes of taking out the wedge names none.
    double seen = line.get().offsetSeconds() * Math.signum(latch);
    if (Math.min(seen, Math.abs(latch)) > CurtainLimits.OFFSET_SECONDS
        && Math.abs(latch) > line.get().offsetPlusMinusSeconds()) {
      add(latch > 0 ? Kind.LATCH_LATE : Kind.LATCH_EARLY, Math.abs(latch));
    }
    double rate = line.get().rateShare();
    if (!own
        && Math.abs(rate) > CurtainLimits.TRAVEL_SHARE
        && Math.abs(rate) > line.get().ratePlusMinusShare()) {
      add(rate > 0 ? Kind.BOTH_SLOW : Kind.BOTH_QUICK, Math.abs(rate));
    }
  }

  /** One speed tells no latch from a rate: only what is more than a rate that is let pass. */
  private void ofOneSpeed(double wedge) {
    if (run.slitSpeeds().size() != 1) {
      return;
    }
    CurtainSpeed at = run.slitSpeeds().get(0);
    double latch = at.mean(CurtainFigure.EXCESS).orElse(0) - wedge;
    double limit = CurtainLimits.OFFSET_SECONDS + CurtainLimits.TRAVEL_SHARE * at.wantedSeconds();
    if (Math.abs(latch) > limit && at.isBeyond(CurtainFigure.EXCESS, Math.signum(latch) * limit)) {
      add(latch > 0 ? Kind.LATCH_LATE : Kind.LATCH_EARLY, Math.abs(latch), at);
    }
  }

  private void bounce() {
    run.speeds().stream()
        .filter(speed -> speed.isBeyond(CurtainFigure.END_BOUNCE, CurtainLimits.BOUNCE_STOPS))
        .reduce((slower, faster) -> faster)
        .ifPresent(
            speed ->
                add(
                    Kind.SECOND_BOUNCES,
                    speed.mean(CurtainFigure.END_BOUNCE).orElseThrow(),
                    speed));
    run.speeds().stream()
        .filter(
            speed ->
                speed.isBeyond(
                    CurtainFigure.END_DIP, CurtainLimits.BOUNCE_SHARE * speed.wantedSeconds()))
        .reduce((slower, faster) -> faster)
        .ifPresent(
            speed ->
                add(Kind.FIRST_BOUNCES, speed.mean(CurtainFigure.END_DIP).orElseThrow(), speed));
  }

  /** Judged at the flash speed alone, where that is known: at faster ones there is no window. */
  private void window() {
    Optional<CurtainSpeed> flash = wanted.flashSpeed().flatMap(run::at);
    if (flash.isEmpty() || flash.get().mean(CurtainFigure.WINDOW).isEmpty()) {
      return;
    }
    CurtainSpeed at = flash.get();
    double window = at.mean(CurtainFigure.WINDOW).getAsDouble();
    if (window < CurtainLimits.FLASH_SECONDS) {
      add(Kind.NO_WINDOW, window, at);
      return;
    }
    OptionalDouble contact = at.mean(CurtainFigure.CONTACT);
    if (contact.isEmpty()) {
      return;
    }
    double last = window - CurtainLimits.FLASH_SECONDS;
    if (contact.getAsDouble() < 0) {
      add(Kind.CONTACT_EARLY, -contact.getAsDouble(), at);
    } else if (contact.getAsDouble() > last) {
      add(Kind.CONTACT_LATE, contact.getAsDouble() - last, at);
    }
  }
}
