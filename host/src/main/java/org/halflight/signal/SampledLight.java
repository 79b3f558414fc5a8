package org.halflight.signal;

import java.util.List;

/**
 * The light of a sensor during one opening, as the rig's converter sampled it: raw, kept for ever
 * beside the edges of the firing. It is the centre sensor's unless somebody asked for another.
 *
 * @param sensor {@link Channel#CENTRE_LOW}, {@link Channel#OUTER_A} or {@link Channel#OUTER_B}
 * @param parts in order of time, at least one
 * @param cutOff whether the rig stopped before it was dark again
 */
public record SampledLight(Channel sensor, List<Part> parts, boolean cutOff) {
  /** What a part of the curve holds. */
  public enum Kind {
    /** Single eight-bit readings around the opening. */
    OPENING,
    /** Means of many readings, as sums of 16 ten-bit readings. */
    PLATEAU,
    /** Single eight-bit readings around the closing. */
    CLOSING,
    /**
     * Means of a few readings after the opening window of a long curve, which looks for a rebound:
     * closing and some 12 ms of dark, as sums of 16 ten-bit readings.
     */
    TAIL;

    /** Whether its values are means of several readings, on the scale of ten bits. */
    public boolean isOfMeans() {
      return this == PLATEAU || this == TAIL;
    }
  }

  /**
   * Values at equal distances.
   *
   * @param firstTicks when the first value was sampled; of means, when their first span began
   * @param periodTicks from one value to the next, above 0
   * @param values eight-bit readings (0 to 255), means as sums of 16 ten-bit readings (0 to 16368);
   *     -1 where a value was lost on the way
   * @param gapBefore whether readings are missing between the part before and this one
   */
  public record Part(
      Kind kind, long firstTicks, long periodTicks, List<Integer> values, boolean gapBefore) {
    public Part {
      values = List.copyOf(values);
      if (periodTicks <= 0) {
        throw new IllegalArgumentException("values need a time between them, not " + periodTicks);
      }
    }

    /**
     * A value on the scale of the ten-bit converter, 0 to 1023. The middle of what an eight-bit
     * reading can stand for: a reading of v is a voltage from v/256 to (v + 1)/256 of the supply.
     * NaN where the value was lost.
     */
    public double counts(int index) {
      int value = values.get(index);
      if (value < 0) {
        return Double.NaN;
      }
      return kind.isOfMeans() ? value / 16.0 : 4 * value + 1.5;
    }
  }

  /** Of the centre sensor. */
  public SampledLight(List<Part> parts, boolean cutOff) {
    this(Channel.CENTRE_LOW, parts, cutOff);
  }

  /** Whether it is the centre sensor's, by which firings are timed. */
  public boolean isOfCentre() {
    return sensor == Channel.CENTRE_LOW;
  }

  /** Whether it is a long curve, that looks for a rebound after the closing. */
  public boolean isLong() {
    return parts.get(parts.size() - 1).kind() == Kind.TAIL;
  }

  /** Ticks of the first reading. */
  public long firstTicks() {
    return parts.get(0).firstTicks();
  }

  /** Ticks at which the last part ends: one period after its last value. */
  public long endTicks() {
    Part last = parts.get(parts.size() - 1);
    return last.firstTicks() + last.values().size() * last.periodTicks();
  }

  public SampledLight {
    parts = List.copyOf(parts);
    if (parts.isEmpty()) {
      throw new IllegalArgumentException("a sampled curve has at least one part");
    }
  }
}
