package org.halflight.stats;

import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Function;

/**
 * A figure that firings may or may not carry: known, or the reason why it is not. Takes the place
 * of NaN.
 */
public sealed interface Figure<T> {
  /** The figure. */
  record Known<T>(T figure) implements Figure<T> {}

  /**
   * Too few firings for it.
   *
   * @param firings how many there are; of two samples the smaller
   * @param least how many it needs
   */
  record NotEnoughFirings<T>(int firings, int least) implements Figure<T> {
    public NotEnoughFirings {
      if (firings < 0 || firings >= least) {
        throw new IllegalArgumentException(firings + " firings are enough where " + least + " are");
      }
    }
  }

  /**
   * The firings are all alike, so what divides by their scatter does not exist. Mostly a sign that
   * the resolution is too coarse.
   */
  record NoScatter<T>() implements Figure<T> {}

  /** The figure where it is known. */
  default Optional<T> known() {
    return this instanceof Known<T> known ? Optional.of(known.figure()) : Optional.empty();
  }

  /**
   * The figure, for callers who have made sure of it.
   *
   * @throws NoSuchElementException when it is not known
   */
  default T get() {
    return known().orElseThrow(() -> new NoSuchElementException(toString()));
  }

  /** Another figure from this one; a reason stays the reason. */
  default <R> Figure<R> map(Function<? super T, ? extends R> change) {
    if (this instanceof Known<T> known) {
      return new Known<>(change.apply(known.figure()));
    }
    if (this instanceof NotEnoughFirings<T> few) {
      return new NotEnoughFirings<>(few.firings(), few.least());
    }
    return new NoScatter<>();
  }
}
