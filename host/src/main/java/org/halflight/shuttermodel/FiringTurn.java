package org.halflight.shuttermodel;

/**
 * Where a firing stands among the firings of a model shutter.
 *
 * @param number its number in the life of the model, from 1; chooses the random part
 * @param sinceRest its number since the shutter last rested, from 1; the first lags
 * @param atThisSpeed its number at this marked speed since the last rest, from 1; creep follows it
 */
public record FiringTurn(long number, int sinceRest, int atThisSpeed) {
  public FiringTurn {
    if (number < 1 || sinceRest < 1 || atThisSpeed < 1) {
      throw new IllegalArgumentException("firings count from 1");
    }
  }
}
