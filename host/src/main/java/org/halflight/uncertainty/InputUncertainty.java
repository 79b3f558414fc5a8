package org.halflight.uncertainty;

/**
 * How far one input may be off.
 *
 * @param distribution of the input
 * @param standard standard uncertainty in the unit of the input, 0 or more; of a bias its bound
 * @param degrees degrees of freedom; infinite where it is not from readings
 * @param basis what it rests on
 */
public record InputUncertainty(
    Distribution distribution, double standard, double degrees, Basis basis) {
  private static final double ROOT_3 = Math.sqrt(3);

  /** Nothing to doubt. */
  public static final InputUncertainty NONE =
      new InputUncertainty(Distribution.NORMAL, 0, Double.POSITIVE_INFINITY, Basis.NO_RIG);

  public InputUncertainty {
    if (!(standard >= 0 && Double.isFinite(standard)) || !(degrees > 0)) {
      throw new IllegalArgumentException(
          "a standard uncertainty is 0 or more, its degrees of freedom above 0: "
              + standard
              + ", "
              + degrees);
    }
  }

  /** Anywhere within plus or minus a bound: the bound over the root of 3 (JCGM 100:2008, 4.3.7). */
  public static InputUncertainty within(double bound, Basis basis) {
    return new InputUncertainty(
        Distribution.RECTANGULAR, bound / ROOT_3, Double.POSITIVE_INFINITY, basis);
  }

  /** A normal one that is not from few readings. */
  public static InputUncertainty normal(double standard, Basis basis) {
    return new InputUncertainty(Distribution.NORMAL, standard, Double.POSITIVE_INFINITY, basis);
  }

  /** One unknown error of all firings, within plus or minus a bound. */
  public static InputUncertainty bias(double bound, Basis basis) {
    return new InputUncertainty(Distribution.BIAS, bound, Double.POSITIVE_INFINITY, basis);
  }

  /** One unknown error of all firings, from none to a bound by which they read long. */
  public static InputUncertainty readsLong(double bound, Basis basis) {
    return new InputUncertainty(Distribution.READS_LONG, bound, Double.POSITIVE_INFINITY, basis);
  }

  /** The bound of a rectangular one or of a bias. */
  public double bound() {
    return distribution.isBias() ? standard : standard * ROOT_3;
  }
}
