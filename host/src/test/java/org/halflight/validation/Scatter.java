package org.halflight.validation;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.random.RandomGenerator;

/**
 * How invented firings scatter around the usual exposure, their median: each drawn with median 0,
 * in standard deviations of a sound firing, above 0 is slow.
 */
enum Scatter {
  NORMAL("normal") {
    @Override
    double draw(RandomGenerator random) {
      return random.nextGaussian();
    }
  },
  T3("Student's t with 3 degrees, sd 1") {
    @Override
    double draw(RandomGenerator random) {
      double chi2 = 0;
      for (int i = 0; i < 3; i++) {
        double z = random.nextGaussian();
        chi2 += z * z;
      }
      return random.nextGaussian() / Math.sqrt(chi2 / 3) / T3_SD;
    }
  },
  SLOW_TAIL("exponential, long tail slow") {
    @Override
    double draw(RandomGenerator random) {
      return exponential(random);
    }
  },
  FAST_TAIL("exponential, long tail fast") {
    @Override
    double draw(RandomGenerator random) {
      return -exponential(random);
    }
  },
  FAR_SLOW("normal, 5 % of them 10 sd slow") {
    @Override
    double draw(RandomGenerator random) {
      return far(random, FAR_SHARE);
    }
  },
  FAR_FAST("normal, 5 % of them 10 sd fast") {
    @Override
    double draw(RandomGenerator random) {
      return -far(random, FAR_SHARE);
    }
  },
  FAR_EITHER("normal, 5 % of them 10 sd off, either way") {
    @Override
    double draw(RandomGenerator random) {
      return random.nextDouble() < FAR_SHARE
          ? (random.nextBoolean() ? FAR : -FAR)
          : random.nextGaussian();
    }
  },
  HANGING("normal, one in five 10 sd slow") {
    @Override
    double draw(RandomGenerator random) {
      return far(random, HANGING_SHARE);
    }
  };

  static final double HANGING_SHARE = 0.2;
  private static final double FAR_SHARE = 0.05;
  private static final double FAR = 10;
  private static final double MEDIAN_FAR = median(FAR_SHARE);
  private static final double MEDIAN_HANGING = median(HANGING_SHARE);
  private static final double T3_SD = Math.sqrt(new TDistribution(null, 3).getNumericalVariance());

  final String words;

  Scatter(String words) {
    this.words = words;
  }

  /** One firing, off its median. */
  abstract double draw(RandomGenerator random);

  private static double exponential(RandomGenerator random) {
    return -Math.log(1 - random.nextDouble()) - Math.log(2);
  }

  private static double far(RandomGenerator random, double share) {
    return (random.nextDouble() < share ? FAR : random.nextGaussian()) - medianOfFar(share);
  }

  /** The median of normal firings of which a share lies far out to the slow side. */
  private static double medianOfFar(double share) {
    return share == FAR_SHARE ? MEDIAN_FAR : MEDIAN_HANGING;
  }

  private static double median(double share) {
    return new NormalDistribution(null, 0, 1).inverseCumulativeProbability(0.5 / (1 - share));
  }
}
