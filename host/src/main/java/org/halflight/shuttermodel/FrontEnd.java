package org.halflight.shuttermodel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A sensor with its amplifier: from the light behind a shutter to a voltage, and to the times at
 * which that voltage passes a threshold.
 *
 * <p>Noise moves a crossing by noise over slope, within half the way to its neighbours; it does not
 * make a comparator chatter.
 *
 * @param darkMillivolts output in the dark
 * @param fullMillivolts output with the shutter fully open and the lamp at its first light
 * @param lagMicroseconds one-pole lag of the amplifier, 0 or more
 * @param noiseMillivolts standard deviation of the noise, 0 or more
 * @param lamp the light source
 */
public record FrontEnd(
    double darkMillivolts,
    double fullMillivolts,
    double lagMicroseconds,
    double noiseMillivolts,
    Lamp lamp) {
  /** Supply of the board, and full scale of its converter and its threshold outputs. */
  public static final double SUPPLY_MILLIVOLTS = 5000;

  private static final double SETTLED_LAGS = 40;

  public FrontEnd {
    if (!(darkMillivolts >= 0) || !(fullMillivolts > darkMillivolts)) {
      throw new IllegalArgumentException("full light gives more than the dark, and neither is < 0");
    }
    if (!(lagMicroseconds >= 0) || !(noiseMillivolts >= 0)) {
      throw new IllegalArgumentException("lag and noise are 0 or more");
    }
  }

  /** The same sensor under another lamp. */
  FrontEnd under(Lamp other) {
    return new FrontEnd(darkMillivolts, fullMillivolts, lagMicroseconds, noiseMillivolts, other);
  }

  /** The same sensor in another share of the light. */
  FrontEnd lit(double share) {
    return new FrontEnd(
        darkMillivolts,
        darkMillivolts + share * (fullMillivolts - darkMillivolts),
        lagMicroseconds,
        noiseMillivolts,
        lamp);
  }

  /** A sensor without lag and noise under a steady lamp. */
  public static FrontEnd ideal(double darkMillivolts, double fullMillivolts) {
    return new FrontEnd(darkMillivolts, fullMillivolts, 0, 0, Lamp.STEADY);
  }

  /** The voltage of a threshold code of 0 to 255, in millivolts; see the line protocol. */
  public static double thresholdMillivolts(int code) {
    if (code < 0 || code > 255) {
      throw new IllegalArgumentException("a threshold code is 0 to 255, not " + code);
    }
    return SUPPLY_MILLIVOLTS * (Math.max(code, 0) + 1) / 256;
  }

  /** The code whose threshold is nearest to a fraction of full light, less the dark. */
  public int codeNearest(double level) {
    double millivolts = darkMillivolts + level * (fullMillivolts - darkMillivolts);
    long code = Math.round(millivolts * 256 / SUPPLY_MILLIVOLTS) - 1;
    return (int) Math.max(0, Math.min(255, code));
  }

  /** The fraction of full light, less the dark, at which a threshold code stands. */
  public double levelOf(int code) {
    return (thresholdMillivolts(code) - darkMillivolts) / (fullMillivolts - darkMillivolts);
  }

  /**
   * The voltage in steady light, without noise.
   *
   * @param open fraction of full light
   * @param lampSeconds time since the lamp was lit
   */
  public double millivoltsAt(double open, double lampSeconds) {
    return darkMillivolts + open * lamp.at(lampSeconds) * (fullMillivolts - darkMillivolts);
  }

  /**
   * The output at some times, without noise; the sensor has settled at the path's first point.
   *
   * @param atSeconds times of the path, rising
   */
  public double[] millivolts(LightPath path, double lampSeconds, double[] atSeconds) {
    double[] found = new double[atSeconds.length];
    double lag = lagMicroseconds * 1e-6;
    double[] corners = path.seconds();
    int corner = 0;
    double at = atSeconds.length == 0 ? 0 : Math.min(atSeconds[0], corners[0]);
    double output = millivoltsAt(path.at(at), lampSeconds + at);
    for (int i = 0; i < atSeconds.length; i++) {
      while (at < atSeconds[i]) {
        while (corner < corners.length && corners[corner] <= at) {
          corner++;
        }
        double to = Math.min(atSeconds[i], at + lamp.lineSeconds());
        to = corner < corners.length ? Math.min(to, corners[corner]) : to;
        double before = millivoltsAt(path.at(at), lampSeconds + at);
        double after = millivoltsAt(path.at(to), lampSeconds + to);
        output = new LaggedLine(before, (after - before) / (to - at), output, lag).at(to - at);
        at = to;
      }
      found[i] = output;
    }
    return found;
  }

  /**
   * All crossings of a threshold, without noise; the sensor has settled at the path's first point.
   *
   * @param path the light
   * @param lampSeconds time since the lamp was lit at time 0 of the path
   * @param thresholdMillivolts the threshold
   */
  public List<Crossing> crossings(LightPath path, double lampSeconds, double thresholdMillivolts) {
    double[] seconds = path.seconds();
    double[] open = path.open();
    List<Crossing> found = new ArrayList<>();
    double output = millivoltsAt(open[0], lampSeconds + seconds[0]);
    for (int i = 1; i < seconds.length; i++) {
      output =
          follow(
              seconds[i - 1],
              seconds[i],
              open[i - 1],
              open[i],
              lampSeconds,
              output,
              thresholdMillivolts,
              found);
    }
    double end = path.endSeconds();
    follow(
        end,
        end + SETTLED_LAGS * lagMicroseconds * 1e-6,
        path.endOpen(),
        path.endOpen(),
        lampSeconds,
        output,
        thresholdMillivolts,
        found);
    return found;
  }

  /**
   * Where a comparator sees the light pass its threshold: beside it, and not before it was beyond
   * the other side of its hysteresis. Its delay is not in it.
   */
  List<Crossing> switches(
      LightPath path, double lampSeconds, double thresholdMillivolts, LevelComparator comparator) {
    double on = comparator.onMillivolts(thresholdMillivolts);
    double off = comparator.offMillivolts(thresholdMillivolts);
    if (on == off) {
      return crossings(path, lampSeconds, on);
    }
    List<Crossing> both = new ArrayList<>();
    crossings(path, lampSeconds, on).stream().filter(Crossing::rising).forEach(both::add);
    crossings(path, lampSeconds, off).stream().filter(c -> !c.rising()).forEach(both::add);
    both.sort(Comparator.comparingDouble(Crossing::seconds));
    List<Crossing> taken = new ArrayList<>();
    for (Crossing crossing : both) {
      if (taken.isEmpty() || taken.get(taken.size() - 1).rising() != crossing.rising()) {
        taken.add(crossing);
      }
    }
    return taken;
  }

  /** The same with noise and with the delay of the comparator. */
  public List<Crossing> noisySwitches(
      LightPath path,
      double lampSeconds,
      double thresholdMillivolts,
      LevelComparator comparator,
      SeededDraws draws) {
    List<Crossing> exact = switches(path, lampSeconds, thresholdMillivolts, comparator);
    return noisy(exact, draws).stream()
        .map(
            crossing ->
                new Crossing(
                    crossing.seconds() + comparator.delaySeconds(crossing.millivoltsPerSecond()),
                    crossing.rising(),
                    crossing.millivoltsPerSecond()))
        .toList();
  }

  /** The crossings of an ideal comparator, with noise. */
  public List<Crossing> noisyCrossings(
      LightPath path, double lampSeconds, double thresholdMillivolts, SeededDraws draws) {
    return noisySwitches(path, lampSeconds, thresholdMillivolts, LevelComparator.IDEAL, draws);
  }

  private List<Crossing> noisy(List<Crossing> exact, SeededDraws draws) {
    List<Crossing> noisy = new ArrayList<>();
    for (int i = 0; i < exact.size(); i++) {
      Crossing crossing = exact.get(i);
      double shift = noiseMillivolts * draws.normal() / Math.abs(crossing.millivoltsPerSecond());
      double least =
          i == 0 ? Double.NEGATIVE_INFINITY : (exact.get(i - 1).seconds() - crossing.seconds()) / 2;
      double most =
          i + 1 == exact.size()
              ? Double.POSITIVE_INFINITY
              : (exact.get(i + 1).seconds() - crossing.seconds()) / 2;
      double moved = crossing.seconds() + Math.max(least, Math.min(most, shift));
      noisy.add(new Crossing(moved, crossing.rising(), crossing.millivoltsPerSecond()));
    }
    return noisy;
  }

  /** Follows one line of the path in pieces that the lamp allows; returns the output at its end. */
  private double follow(
      double from,
      double to,
      double openFrom,
      double openTo,
      double lampSeconds,
      double output,
      double threshold,
      List<Crossing> found) {
    double span = to - from;
    double before = millivoltsAt(openFrom, lampSeconds + from);
    if (span == 0) {
      double after = millivoltsAt(openTo, lampSeconds + to);
      if (lagMicroseconds > 0) {
        return output;
      }
      if (output > threshold != after > threshold) {
        found.add(new Crossing(to, after > threshold, Double.POSITIVE_INFINITY));
      }
      return after;
    }
    int pieces = (int) Math.max(1, Math.ceil(span / lamp.lineSeconds()));
    for (int i = 0; i < pieces; i++) {
      double start = from + span * i / pieces;
      double end = i + 1 == pieces ? to : from + span * (i + 1) / pieces;
      double openAtEnd =
          i + 1 == pieces ? openTo : openFrom + (openTo - openFrom) * (i + 1) / pieces;
      double after = millivoltsAt(openAtEnd, lampSeconds + end);
      LaggedLine line =
          new LaggedLine(before, (after - before) / (end - start), output, lagMicroseconds * 1e-6);
      output = collect(line, start, end - start, output, threshold, found);
      before = after;
    }
    return output;
  }

  private static double collect(
      LaggedLine line,
      double start,
      double span,
      double output,
      double threshold,
      List<Crossing> found) {
    double turn = line.turnSeconds();
    double reached = 0;
    double at = output;
    if (turn > 0 && turn < span) {
      at = collectMonotone(line, start, 0, turn, at, threshold, found);
      reached = turn;
    }
    return collectMonotone(line, start, reached, span, at, threshold, found);
  }

  private static double collectMonotone(
      LaggedLine line,
      double start,
      double from,
      double to,
      double output,
      double threshold,
      List<Crossing> found) {
    double end = line.at(to);
    boolean above = output > threshold;
    if (above != end > threshold) {
      double left = from;
      double right = to;
      while (true) {
        double middle = (left + right) / 2;
        if (middle <= left || middle >= right) {
          break;
        }
        if (line.at(middle) > threshold == above) {
          left = middle;
        } else {
          right = middle;
        }
      }
      found.add(new Crossing(start + right, !above, line.slopeAt(right)));
    }
    return end;
  }
}
