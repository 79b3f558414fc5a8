package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.halflight.exposure.AlternatingLevels;
import org.halflight.exposure.AlternatingLevels.Level;
import org.halflight.exposure.Exposure;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/** What a session knows about the one threshold of a small rig, and how it measures with it. */
final class OneLevelWatch {
  private final Function<FiringResult, OptionalDouble> ownGap;
  private boolean oneLevel;
  private boolean fixed;
  private Optional<Level> stands = Optional.empty();

  /**
   * @param ownGap what the gap of a firing is taken to be where no others tell; empty for nothing
   */
  OneLevelWatch(Function<FiringResult, OptionalDouble> ownGap) {
    this.ownGap = ownGap;
  }

  /** Another rig, or the same one anew: where its threshold stands is not known yet. */
  void onRigIdentified(BoardTraits board) {
    oneLevel = board.oneLevel();
    fixed = board.fixedLevel();
    stands = Optional.empty();
  }

  /** The threshold stands at a level, or is on its way between them. */
  void onLevel(Optional<Level> level) {
    stands = level;
  }

  /** Where the threshold stands; empty while it is on its way, and with two levels. */
  Optional<Level> stands() {
    return stands;
  }

  boolean isOneLevel() {
    return oneLevel;
  }

  /** Whether the one level cannot be set, and the light curve completes each firing. */
  boolean isFixed() {
    return fixed;
  }

  /**
   * How a firing that is over now was seen; empty with a rig of two levels.
   *
   * @param others earlier firings of its speed
   */
  Optional<OneLevel> seen(Stream<FiringResult> others) {
    if (fixed) {
      return Optional.of(OneLevel.FIXED);
    }
    return oneLevel && stands.isPresent()
        ? Optional.of(new OneLevel(stands.get(), gapOf(others)))
        : Optional.empty();
  }

  /**
   * With a small rig each firing tells more about the others of its speed, never about itself.
   *
   * @param told the firing that is there now, or is seen otherwise
   */
  void measureAgain(FiringResult told, FiringLog log, List<SessionEvent> events) {
    if (!oneLevel || fixed) {
      return;
    }
    for (FiringResult each : log.at(told.run(), told.setting()).toList()) {
      OptionalDouble ofOthers =
          gapOf(log.at(told.run(), told.setting()).filter(r -> !r.key().equals(each.key())));
      OptionalDouble gap = ofOthers.isPresent() ? ofOthers : ownGap.apply(each);
      boolean waits = awaitsOtherLevel(each.exposure());
      if (each.oneLevel().isEmpty()
          || !(waits || each.outcome() == Outcome.TIMED)
          || each.oneLevel().get().gapSeconds().equals(gap)) {
        continue;
      }
      log.change(each.measuredAgain(new OneLevel(each.oneLevel().get().level(), gap)), events);
    }
  }

  /**
   * The gap that firings of one speed come to together. The firing that it is to complete is not
   * among them: a gap made of its own width would pull its figure to the mean, and one firing at
   * either level would seem not to scatter at all.
   */
  static OptionalDouble gapOf(Stream<FiringResult> others) {
    return gapSeconds(others.flatMap(r -> Width.of(r).stream()));
  }

  /** What is known of a firing while the threshold was on its way: no gap completes it. */
  static final OneLevel ON_ITS_WAY = new OneLevel(Level.LOW, OptionalDouble.empty());

  /** Whether a firing lacks nothing but the other level, or the light curve that shows it. */
  static boolean awaitsOtherLevel(Exposure exposure) {
    return exposure instanceof Exposure.Unusable unusable
        && unusable.reason() == Exposure.Reason.OTHER_LEVEL_WANTED;
  }

  private static OptionalDouble gapSeconds(Stream<Width> widths) {
    List<Width> all = widths.toList();
    return AlternatingLevels.gapSeconds(
        all.stream().filter(w -> w.level == Level.LOW).map(w -> w.seconds).toList(),
        all.stream().filter(w -> w.level == Level.HIGH).map(w -> w.seconds).toList());
  }

  private record Width(Level level, double seconds) {
    static Optional<Width> of(FiringResult result) {
      boolean counts =
          result.exposure() instanceof Exposure.Timed || awaitsOtherLevel(result.exposure());
      return result.oneLevel().isPresent() && counts && result.rejection().isEmpty()
          ? of(result.crossings(), result.oneLevel().get().level(), result.realRate())
          : Optional.empty();
    }

    static Optional<Width> of(Firing firing, Level level, TickRate rate) {
      OptionalDouble seconds = AlternatingLevels.widthSeconds(firing, rate);
      return seconds.isPresent()
          ? Optional.of(new Width(level, seconds.getAsDouble()))
          : Optional.empty();
    }
  }
}
