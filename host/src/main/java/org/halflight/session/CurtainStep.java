package org.halflight.session;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stored.StoredWords;

/** A step of adjusting curtains, in the order in which they are done. */
public enum CurtainStep {
  /** Clean; count and note the turns of both springs and the place of brakes and eccentric. */
  CLEAN,
  /** Tension of the first curtain, at the flash speed. */
  FIRST_TENSION,
  /** Tension of the second curtain: difference and slope. */
  SECOND_TENSION,
  /** Slit or latch eccentric: the centre at the top speed, then every slit speed. */
  SLIT,
  /** The three before once more, until nothing changes. */
  AGAIN,
  /** The brakes: the least that ends the bounce. */
  BRAKE,
  /** Flash contact against the window. */
  CONTACT,
  /** Escapement: 1/8 first, then the other slow speeds. */
  ESCAPEMENT,
  /** The next day, first after rest. */
  NEXT_DAY;

  /**
   * What is turned in it; nothing in the first and the last, and all of the curtains' once more.
   */
  public Set<Adjuster> adjusters() {
    return switch (this) {
      case CLEAN, NEXT_DAY -> Set.of();
      case FIRST_TENSION -> Set.of(Adjuster.FIRST_TENSION);
      case SECOND_TENSION -> Set.of(Adjuster.SECOND_TENSION);
      case SLIT -> Set.of(Adjuster.SLIT);
      case AGAIN -> Set.of(Adjuster.FIRST_TENSION, Adjuster.SECOND_TENSION, Adjuster.SLIT);
      case BRAKE -> Set.of(Adjuster.FIRST_BRAKE, Adjuster.SECOND_BRAKE);
      case CONTACT -> Set.of(Adjuster.CONTACT);
      case ESCAPEMENT -> Set.of(Adjuster.ESCAPEMENT);
    };
  }

  /** As it is called: 0 for cleaning, 8 for the next day. */
  public int number() {
    return List.of(values()).indexOf(this);
  }

  /** Whether a camera with these adjusters has anything to turn in it. */
  public boolean isFor(Set<Adjuster> has) {
    return adjusters().isEmpty() || adjusters().stream().anyMatch(has::contains);
  }

  /** The next one that a camera with these adjusters has; the last is followed by the first. */
  public CurtainStep next(Set<Adjuster> has) {
    List<CurtainStep> all = List.of(values());
    CurtainStep next = all.get((all.indexOf(this) + 1) % all.size());
    return next.isFor(has) ? next : next.next(has);
  }

  /**
   * The speed that it is watched at: the flash speed for travel and contact, 1/8 or the speed next
   * to it for the slow train, else the top speed.
   *
   * @param flash the flash speed, where it is known
   * @param speeds of the dial, at least one
   */
  public MarkedSpeed speed(Optional<MarkedSpeed> flash, List<MarkedSpeed> speeds) {
    Comparator<MarkedSpeed> byTime = Comparator.comparingDouble(MarkedSpeed::exactSeconds);
    MarkedSpeed top = Collections.min(speeds, byTime);
    return switch (this) {
      case FIRST_TENSION, AGAIN, CONTACT -> flash.filter(speeds::contains).orElse(top);
      case ESCAPEMENT ->
          Collections.min(
              speeds,
              Comparator.comparingDouble(each -> Math.abs(Math.log(8 * each.exactSeconds()))));
      case CLEAN, SECOND_TENSION, SLIT, BRAKE, NEXT_DAY -> top;
    };
  }

  /** As files store them. */
  public static final StoredWords<CurtainStep> WORDS =
      StoredWords.of(
          CurtainStep.class,
          step ->
              switch (step) {
                case CLEAN -> "clean";
                case FIRST_TENSION -> "first-tension";
                case SECOND_TENSION -> "second-tension";
                case SLIT -> "slit";
                case AGAIN -> "again";
                case BRAKE -> "brake";
                case CONTACT -> "contact";
                case ESCAPEMENT -> "escapement";
                case NEXT_DAY -> "next-day";
              });
}
