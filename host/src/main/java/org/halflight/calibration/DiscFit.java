package org.halflight.calibration;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What the edges of the slots have in common, by least squares over their places in a turn:
 *
 * <pre>place = nominal + start + a cos(nominal) + b sin(nominal) -+ (widening + share angle) / 2
 * </pre>
 *
 * <p>with minus for the edge that opens a slot and plus for the one that closes it. A disc off its
 * centre by {@code e} moves the edges at radius {@code r} by {@code e / r} as a sine of their
 * angle, and so does a speed that swings once a turn: {@code a} and {@code b} take both out,
 * whichever it is. What is left over is how the edges were cut.
 *
 * <p>All angles are in degrees.
 */
final class DiscFit {
  private static final int START = 0;
  private static final int COSINE = 1;
  private static final int SINE = 2;
  private static final int WIDENING = 3;
  private static final int SHARE = 4;
  private static final int UNKNOWNS = 5;

  /**
   * A slot in the mean of all turns.
   *
   * @param nominalMiddle where its middle should be, in the direction of time
   * @param nominalAngle what it should be
   * @param middle where it was
   * @param angle for how long it was open
   */
  record Seen(double nominalMiddle, double nominalAngle, double middle, double angle) {}

  private final List<Seen> slots;
  private final double[] solution;
  private final RealMatrix inverse;
  private final double residualSquares;

  private DiscFit(List<Seen> slots, double[] solution, RealMatrix inverse, double residualSquares) {
    this.slots = slots;
    this.solution = solution;
    this.inverse = inverse;
    this.residualSquares = residualSquares;
  }

  /** Fits three slots or more. */
  static DiscFit of(List<Seen> slots) {
    int rows = 2 * slots.size();
    double[][] design = new double[rows][];
    double[] off = new double[rows];
    for (int i = 0; i < rows; i++) {
      Seen slot = slots.get(i / 2);
      int side = i % 2 == 0 ? -1 : 1;
      design[i] = row(slot, side);
      off[i] =
          slot.middle() - slot.nominalMiddle() + side * (slot.angle() - slot.nominalAngle()) / 2;
    }
    RealMatrix x = new Array2DRowRealMatrix(design, false);
    RealMatrix inverse = new LUDecomposition(x.transpose().multiply(x)).getSolver().getInverse();
    double[] solution = inverse.operate(x.transpose().operate(off));
    double[] fitted = x.operate(solution);
    double squares = 0;
    for (int i = 0; i < rows; i++) {
      squares += (off[i] - fitted[i]) * (off[i] - fitted[i]);
    }
    return new DiscFit(List.copyOf(slots), solution, inverse, squares);
  }

  private static double[] row(Seen slot, int side) {
    double at = Math.toRadians(slot.nominalMiddle() + side * slot.nominalAngle() / 2);
    return new double[] {1, Math.cos(at), Math.sin(at), side * 0.5, side * slot.nominalAngle() / 2};
  }

  /** Edges less unknowns. */
  int degreesOfFreedom() {
    return 2 * slots.size() - UNKNOWNS;
  }

  /** Scatter of the edges around the fit; empty where none is left to tell it by. */
  OptionalDouble edgeSd() {
    return degreesOfFreedom() > 0
        ? OptionalDouble.of(Math.sqrt(residualSquares / degreesOfFreedom()))
        : OptionalDouble.empty();
  }

  /** By what every slot is too wide, whatever its angle. */
  double widening() {
    return solution[WIDENING];
  }

  /** By what share of its angle every slot is too wide beyond that. */
  double share() {
    return solution[SHARE];
  }

  /** How far the edges swing once a turn. */
  double swing() {
    return Math.hypot(solution[COSINE], solution[SINE]);
  }

  /**
   * Standard uncertainty of {@link #widening} where each edge has one of {@code edge}, all
   * independent.
   */
  double wideningSd(double edge) {
    return edge * Math.sqrt(inverse.getEntry(WIDENING, WIDENING));
  }

  /** The same of {@link #share}. */
  double shareSd(double edge) {
    return edge * Math.sqrt(inverse.getEntry(SHARE, SHARE));
  }

  /** The swing's part in the angle of a slot. */
  double swingOf(Seen slot) {
    double[] unlike = unlike(slot);
    return unlike[COSINE] * solution[COSINE] + unlike[SINE] * solution[SINE];
  }

  /**
   * Standard uncertainty of the angle of a slot less {@link #swingOf}: both its edges, and what the
   * swing is uncertain by.
   */
  double angleSd(Seen slot, double edge) {
    double[] unlike = unlike(slot);
    double swing = 0;
    for (int i = COSINE; i <= SINE; i++) {
      for (int j = COSINE; j <= SINE; j++) {
        swing += unlike[i] * unlike[j] * inverse.getEntry(i, j);
      }
    }
    return edge * Math.sqrt(2 + swing);
  }

  private static double[] unlike(Seen slot) {
    double[] opens = row(slot, -1);
    double[] closes = row(slot, 1);
    double[] unlike = new double[UNKNOWNS];
    for (int i = START; i < UNKNOWNS; i++) {
      unlike[i] = closes[i] - opens[i];
    }
    return unlike;
  }
}
