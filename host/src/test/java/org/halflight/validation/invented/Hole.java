package org.halflight.validation.invented;

/** A hole that blades leave open, by how far they have moved: place 0 is shut, 1 fully open. */
public enum Hole {
  /** Round, its radius as large as the place. */
  ROUND {
    @Override
    double[] means(double place) {
      double area = place * place;
      return new double[] {area, area * area};
    }
  },
  /** Round, its area as large as the place. */
  EVEN_AREA {
    @Override
    double[] means(double place) {
      return new double[] {place, place * place};
    }
  },
  /** Five points that reach the edge of the pupil first; the notches between them come last. */
  STAR {
    @Override
    double[] means(double place) {
      return Star.means(place);
    }
  };

  /**
   * Mean over all directions of the square of the hole's radius, and of its fourth power; the
   * radius of the pupil is 1.
   */
  abstract double[] means(double place);

  /** The part of the pupil's area that is open. */
  public double area(double place) {
    return means(place)[0];
  }

  /**
   * The light that a sensor sees, as a part of that of the open pupil, where the light falls with
   * the square of the radius.
   *
   * @param fall from the middle to the edge of the pupil, 0 for even light
   */
  public double seen(double place, double fall) {
    double[] means = means(place);
    return (2 * means[0] - fall * means[1]) / (2 - fall);
  }

  /** The place at which so much light is seen. */
  public double placeSeen(double light, double fall) {
    double low = 0;
    double high = 1;
    for (int i = 0; i < 52; i++) {
      double middle = (low + high) / 2;
      if (seen(middle, fall) < light) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /**
   * A star whose notches lie at less than half of its points' radius, summed up over directions.
   */
  private static final class Star {
    private static final double NOTCH = 0.45;
    private static final int DIRECTIONS = 720;
    private static final int PLACES = 4000;
    private static final double[][] MEANS = table();

    static double[] means(double place) {
      double at = Math.min(1, Math.max(0, place)) * PLACES;
      int left = (int) Math.min(PLACES - 1, Math.floor(at));
      double part = at - left;
      return new double[] {
        MEANS[left][0] + part * (MEANS[left + 1][0] - MEANS[left][0]),
        MEANS[left][1] + part * (MEANS[left + 1][1] - MEANS[left][1])
      };
    }

    private static double[][] table() {
      double[] outline = new double[DIRECTIONS];
      for (int i = 0; i < DIRECTIONS; i++) {
        outline[i] = outline(Math.PI / 5 * (i + 0.5) / DIRECTIONS);
      }
      double[][] means = new double[PLACES + 1][2];
      for (int k = 0; k <= PLACES; k++) {
        double size = (double) k / PLACES / NOTCH;
        for (double radius : outline) {
          double square = Math.min(1, size * size * radius * radius);
          means[k][0] += square / DIRECTIONS;
          means[k][1] += square * square / DIRECTIONS;
        }
      }
      return means;
    }

    /** Radius of the edge from a point (at 0) to a notch (at 36 degrees). */
    private static double outline(double angle) {
      double notchX = NOTCH * Math.cos(Math.PI / 5);
      double notchY = NOTCH * Math.sin(Math.PI / 5);
      // On the line from (1, 0) to the notch.
      return notchY / (Math.cos(angle) * notchY + Math.sin(angle) * (1 - notchX));
    }
  }
}
