package org.halflight.extratest;

import java.util.List;
import java.util.Optional;
import org.halflight.exposure.AlternatingLevels;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.time.TickRate;

/**
 * One trial of the advance timing of an earlier version: how long before the blades the advance
 * unlocked. Above zero the advance came first.
 *
 * <p>The opening is when the light rises through the low level, a fifth of full light. The advance
 * is a contact at it, or the one click that is not the shutter's own. Where there is no such click,
 * or more than one, nothing is claimed.
 *
 * @param firing the firing
 * @param openingTicks when the blades opened; empty where that was not seen
 * @param heard clicks near the opening
 * @param touched moves of the contact near the opening; none where that is the flash contact
 * @param finding what it comes to
 */
public record AdvanceTrial(
    FiringResult firing,
    Optional<Long> openingTicks,
    List<Click> heard,
    List<Click> touched,
    Finding finding) {
  /**
   * How well the onset of a click is known, plus or minus, in seconds: sound travels, the piezo
   * swells, and the comparator waits for its threshold. Common practice, no source.
   */
  public static final double CLICK_SECONDS = 0.0003;

  /** The same for a contact, whose first touch is chatter. Our choice. */
  public static final double CONTACT_SECONDS = 0.00005;

  /** A small rig sees every other opening at its high level, later by up to this. Our choice. */
  static final double HIGH_LEVEL_SECONDS = 0.0005;

  /** More clicks than this around one opening are no camera. Our choice. */
  static final int MOST_CLICKS = 8;

  /** A sound that goes on for longer than this is no click, in seconds. Our choice. */
  static final double LONGEST_SECONDS = 0.03;

  /** Sounds of the closing: from the start of closing to bounce, in seconds after dark. */
  private static final double CLOSING_SECONDS = 0.01;

  private static final double CLOSING_EARLY_SECONDS = 0.001;

  /** What a trial comes to. */
  public sealed interface Finding {}

  /**
   * The interval.
   *
   * @param seconds from the advance coming free to the opening; above zero the advance comes first
   * @param plusMinusSeconds how far off it may be
   * @param byContact whether a contact told it, and not a click
   * @param advance the click, or the move of the contact
   * @param from how the shutter's own sound was told from it
   */
  public record Interval(
      double seconds,
      double plusMinusSeconds,
      boolean byContact,
      Click advance,
      OwnSounds.From from)
      implements Finding {}

  /** No interval. */
  public record NotTold(Reason reason) implements Finding {}

  /** Why there is no interval. */
  public enum Reason {
    /** The advance and the shutter sound too close together to be separated. */
    TOO_CLOSE,
    /** Several clicks may be the advance. */
    WHICH_CLICK,
    /** The only other click came when the blades were closing, and may be theirs. */
    CLOSING_CLICK,
    /** Nothing was heard, and no contact moved. */
    NO_CLICK,
    /** Clicks without end: the sensor hears something else. */
    NOISE,
    /** Nothing was heard, and the only contact opened with the blades: it is the flash contact. */
    FLASH_CONTACT,
    /** The release was pressed and no light came. */
    NO_LIGHT,
    /** Edges are or may be missing. */
    DAMAGED
  }

  public AdvanceTrial {
    heard = List.copyOf(heard);
    touched = List.copyOf(touched);
  }

  /** What a firing says, with what is known of the shutter's own sounds. */
  static AdvanceTrial of(FiringResult firing, OwnSounds own) {
    Optional<ClickTrace> sounding = ClickTrace.of(firing);
    if (sounding.isEmpty()) {
      Reason reason = firing.outcome() == Outcome.DID_NOT_OPEN ? Reason.NO_LIGHT : Reason.DAMAGED;
      return new AdvanceTrial(firing, Optional.empty(), List.of(), List.of(), not(reason));
    }
    ClickTrace around = sounding.get();
    return new AdvanceTrial(
        firing,
        Optional.of(around.openingTicks()),
        around.heard(),
        around.contactIsFlash() ? List.of() : around.touched(),
        finding(firing, around, own));
  }

  /** The interval, where there is one. */
  public Optional<Interval> interval() {
    return finding instanceof Interval told ? Optional.of(told) : Optional.empty();
  }

  /** Why there is none. */
  public Optional<Reason> reason() {
    return finding instanceof NotTold not ? Optional.of(not.reason()) : Optional.empty();
  }

  /** Time from the onset of a click to the opening, in seconds. */
  static double before(ClickTrace around, Click click, TickRate rate) {
    return rate.seconds(around.openingTicks() - click.onsetTicks());
  }

  private static Finding finding(FiringResult firing, ClickTrace around, OwnSounds own) {
    TickRate rate = firing.rate();
    if (!around.touched().isEmpty() && !around.contactIsFlash()) {
      Click touch = around.touched().get(0);
      return new Interval(
          before(around, touch, rate),
          CONTACT_SECONDS + levelSeconds(firing),
          true,
          touch,
          own.from());
    }
    if (around.heard().isEmpty()) {
      return not(around.contactIsFlash() ? Reason.FLASH_CONTACT : Reason.NO_CLICK);
    }
    boolean endless =
        around.heard().stream()
            .anyMatch(c -> rate.seconds(c.endTicks() - c.onsetTicks()) > LONGEST_SECONDS);
    if (endless || around.heard().size() > MOST_CLICKS) {
      return not(Reason.NOISE);
    }
    return byClicks(firing, around, own);
  }

  private static Finding byClicks(FiringResult firing, ClickTrace around, OwnSounds own) {
    TickRate rate = firing.rate();
    List<Click> others =
        around.heard().stream().filter(c -> own.of(before(around, c, rate)).isEmpty()).toList();
    List<Click> shutters = around.heard().stream().filter(c -> !others.contains(c)).toList();
    List<Click> advances =
        others.stream().filter(c -> !isOfTheClosing(around, c, rate, own.isLearnt())).toList();
    if (advances.size() > 1) {
      return not(Reason.WHICH_CLICK);
    }
    if (advances.isEmpty()) {
      Optional<Click> behind =
          shutters.stream().flatMap(c -> behind(around, c, rate, own).stream()).findFirst();
      if (behind.isPresent()) {
        return interval(firing, around, behind.get(), own);
      }
      return not(shutters.isEmpty() ? Reason.CLOSING_CLICK : Reason.TOO_CLOSE);
    }
    Click advance = advances.get(0);
    // What is not known to be one sound alone may begin with the blades. A sound that was learnt to
    // come later cannot have made the first edge.
    boolean mayBeBoth = shutters.isEmpty() && covers(around, advance, rate, own);
    if (!own.isLearnt() && (mayBeBoth || advance.crowded())) {
      return not(Reason.TOO_CLOSE);
    }
    return interval(firing, around, advance, own);
  }

  private static Interval interval(
      FiringResult firing, ClickTrace around, Click advance, OwnSounds own) {
    return new Interval(
        before(around, advance, firing.rate()),
        CLICK_SECONDS + levelSeconds(firing),
        false,
        advance,
        own.from());
  }

  /** What begins behind the shutter's own sound, within what was taken for one click. */
  private static Optional<Click> behind(
      ClickTrace around, Click click, TickRate rate, OwnSounds own) {
    return own.of(before(around, click, rate))
        .flatMap(OwnSounds.OwnSound::ringing)
        .flatMap(ringing -> ringing.nextIn(click, rate))
        .filter(next -> !isOfTheClosing(around, next, rate, own.isLearnt()));
  }

  private static boolean covers(ClickTrace around, Click click, TickRate rate, OwnSounds own) {
    double from = before(around, click, rate);
    double to = from - Clicks.RINGING_SECONDS;
    return own.sounds().stream()
        .anyMatch(
            sound ->
                sound.beforeSeconds() - sound.reachSeconds() <= from
                    && sound.beforeSeconds() + sound.reachSeconds() >= to);
  }

  private static boolean isOfTheClosing(
      ClickTrace around, Click click, TickRate rate, boolean ownIsLearnt) {
    boolean closes =
        click.onsetTicks() >= around.closingTicks() - rate.ticks(CLOSING_EARLY_SECONDS)
            && click.onsetTicks() > around.openingTicks();
    boolean over = click.onsetTicks() > around.darkTicks() + rate.ticks(CLOSING_SECONDS);
    return closes && !(over && ownIsLearnt);
  }

  private static double levelSeconds(FiringResult firing) {
    return firing.oneLevel().filter(o -> o.level() == AlternatingLevels.Level.HIGH).isPresent()
        ? HIGH_LEVEL_SECONDS
        : 0;
  }

  private static NotTold not(Reason reason) {
    return new NotTold(reason);
  }
}
