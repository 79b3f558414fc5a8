package org.halflight.validation.invented;

/** How firings of one setting scatter. Each has mean 0 and, but for the last, deviation 1. */
public enum Scatter {
  NORMAL(0) {
    @Override
    double draw(Draws draws) {
      return draws.normal();
    }
  },
  /** Student's t with 3 degrees of freedom: far ones are common. */
  T3(0) {
    @Override
    double draw(Draws draws) {
      double square = 0;
      for (int i = 0; i < 3; i++) {
        double each = draws.normal();
        square += each * each;
      }
      return draws.normal() / Math.sqrt(square);
    }
  },
  /** Exponential: hangs now and then, never hurries. */
  LATE(Math.log(2) - 1) {
    @Override
    double draw(Draws draws) {
      return -Math.log(1 - draws.between(0, 1)) - 1;
    }
  },
  /** The same the other way round. */
  EARLY(1 - Math.log(2)) {
    @Override
    double draw(Draws draws) {
      return 1 + Math.log(1 - draws.between(0, 1));
    }
  },
  /** Normal, but one in twenty is late by six deviations more. */
  FAR_OUT(-0.3 + 0.0660) {
    @Override
    double draw(Draws draws) {
      return draws.normal() + (draws.chance(0.05) ? 6 : 0) - 0.3;
    }
  };

  private final double median;

  Scatter(double median) {
    this.median = median;
  }

  abstract double draw(Draws draws);

  /** The median in standard deviations above the mean. */
  public double median() {
    return median;
  }
}
