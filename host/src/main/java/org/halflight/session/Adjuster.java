package org.halflight.session;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.stored.StoredWords;

/** What can be adjusted on a curtain shutter, in the order in which it is done. */
public enum Adjuster {
  /** The spring of the first curtain. */
  FIRST_TENSION,
  /** The spring of the second curtain. */
  SECOND_TENSION,
  /** The eccentric of the slit, or of the latch that lets the second curtain go. */
  SLIT,
  FIRST_BRAKE,
  SECOND_BRAKE,
  /** The flash contact. */
  CONTACT,
  /** The slow-speed train. */
  ESCAPEMENT;

  /** All that there are. */
  public static final Set<Adjuster> ALL =
      Collections.unmodifiableSet(EnumSet.allOf(Adjuster.class));

  /** As files store them, and as they are typed. */
  public static final StoredWords<Adjuster> WORDS =
      StoredWords.of(
          Adjuster.class,
          adjuster ->
              switch (adjuster) {
                case FIRST_TENSION -> "first-tension";
                case SECOND_TENSION -> "second-tension";
                case SLIT -> "slit";
                case FIRST_BRAKE -> "first-brake";
                case SECOND_BRAKE -> "second-brake";
                case CONTACT -> "contact";
                case ESCAPEMENT -> "escapement";
              });

  private static final String NONE = "none";

  /** Whether it is a spring whose turns are counted. */
  public boolean isTension() {
    return this == FIRST_TENSION || this == SECOND_TENSION;
  }

  /** Those that a person typed, with commas between; {@code none} for none. */
  public static Optional<Set<Adjuster>> findAll(String text) {
    Set<Adjuster> found = EnumSet.noneOf(Adjuster.class);
    if (text.strip().equals(NONE)) {
      return Optional.of(found);
    }
    for (String word : text.strip().split("[,;\\s]+", -1)) {
      Optional<Adjuster> adjuster = WORDS.find(word);
      if (adjuster.isEmpty()) {
        return Optional.empty();
      }
      found.add(adjuster.get());
    }
    return Optional.of(found);
  }

  /** As {@link #findAll} reads them. */
  public static String text(Set<Adjuster> adjusters) {
    return adjusters.isEmpty()
        ? NONE
        : Arrays.stream(values())
            .filter(adjusters::contains)
            .map(WORDS::word)
            .collect(Collectors.joining(","));
  }
}
