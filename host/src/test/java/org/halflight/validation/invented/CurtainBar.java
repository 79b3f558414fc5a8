package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * An invented bar of three sensors behind slits in a gate, with its lamp, as it really is. Places
 * are in millimetres from the centre of the frame in the direction of travel. All ranges are our
 * own.
 *
 * @param frame that it is made for
 * @param eyes at the start, at the centre and at the end
 * @param gapMillimetres from the first curtain to the slits
 * @param lampMillimetres from the slits to the lamp
 * @param lampAcross of the lamp, which is round
 * @param lampAside its middle, beside the middle of the frame
 * @param aAtStart whether outer sensor A is at the start
 * @param rig the electronics of the centre, the lamp's light and the clock
 * @param middle voltage at both outer comparators, in counts
 */
public record CurtainBar(
    double frame,
    List<Eye> eyes,
    double gapMillimetres,
    double lampMillimetres,
    double lampAcross,
    double lampAside,
    boolean aAtStart,
    Rig rig,
    double middle) {
  /** Strips across the lamp. */
  private static final int STRIPS = 32;

  private static final int CENTRE = 1;
  private static final double MOST_LIGHT = 700;
  private static final double STEP = 10e-6;

  /** As in {@link Rig}: 9 and 30 mV of 5 V. */
  private static final double OFFSET_COUNTS = 0.009 / 5 * 1024;

  private static final double HYSTERESIS_COUNTS = 0.030 / 5 * 1024;
  private static final double DELAY_SECONDS = 2e-6;
  private static final double NOISE_COUNTS = 0.1;
  private static final double READING_COUNTS = 0.2;
  private static final double READING_PART = 0.002;

  /** Software stamps are worse if another input changes so soon (docs/building-the-rig.md). */
  private static final double CROWDED_SECONDS = 4e-6;

  /**
   * One sensor behind its slit.
   *
   * @param place of the slit's middle
   * @param slit its width
   * @param dark counts in the dark
   * @param full counts with the gate open, when the light was set
   * @param offset how much more light than its threshold the comparator takes, in counts
   * @param hysteresis how much more to switch on than off
   * @param riseSeconds from the crossing to the stamp
   * @param fallSeconds likewise
   */
  public record Eye(
      double place,
      double slit,
      double dark,
      double full,
      double offset,
      double hysteresis,
      double riseSeconds,
      double fallSeconds) {}

  /**
   * What the rig stamps.
   *
   * @param channel its number on the wire: 0 and 1 centre, 2 outer A, 3 outer B
   * @param light whether it became light
   * @param ticks of the board
   */
  public record Stamp(int channel, boolean light, long ticks) {}

  /**
   * What a person is asked, and what readings say. Counts are off by their reading, sizes by
   * measuring them.
   *
   * @param outer from the centre to each outer slit, in millimetres
   * @param slit width of the slits
   * @param gap from the curtain to them
   * @param lamp from them to the lamp
   * @param across of the lamp
   * @param dark of each sensor, from start to end, in counts
   * @param full likewise
   * @param low threshold of the centre
   * @param high likewise
   */
  @SuppressWarnings("ArrayRecordComponent") // Handed on once and never compared.
  public record Said(
      double outer,
      double slit,
      double gap,
      double lamp,
      double across,
      double[] dark,
      double[] full,
      double low,
      double high) {}

  /** What everybody is told to build. */
  public static final double OUTER_SHARE = 0.45;

  /**
   * A bar for a frame, with each thing off by what making and setting it allow.
   *
   * @param least light of an outer sensor over that of the centre
   * @param most likewise
   */
  public static CurtainBar drawn(double frame, double least, double most, Draws draws) {
    Rig bright = Rig.drawn(draws);
    Rig rig = bright.withFull(Math.min(bright.full(), bright.dark() + MOST_LIGHT));
    double aside = draws.either(0.2);
    double slit = draws.between(0.3, 0.5);
    List<Eye> eyes = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      boolean centre = i == CENTRE;
      double light = centre ? 1 : draws.between(least, most);
      double dark = centre ? rig.dark() : draws.between(5, 30);
      eyes.add(
          new Eye(
              aside + (i - 1) * OUTER_SHARE * frame + (centre ? 0 : draws.either(0.1)),
              slit + draws.either(0.03),
              dark,
              dark + light * (rig.full() - rig.dark()),
              draws.either(OFFSET_COUNTS),
              draws.between(0, HYSTERESIS_COUNTS),
              draws.between(0, DELAY_SECONDS),
              draws.between(0, DELAY_SECONDS)));
    }
    // Two resistors of one percent make the mean of both thresholds.
    double share = 0.5 + draws.either(0.005);
    return new CurtainBar(
        frame,
        eyes,
        draws.between(2, 8),
        draws.around(300, 0.25),
        draws.between(3, 12),
        draws.either(10),
        draws.coin(),
        rig,
        rig.lowThreshold() + share * (rig.highThreshold() - rig.lowThreshold()));
  }

  /** What is said and read of it. */
  public Said said(Draws draws) {
    double[] dark = new double[eyes.size()];
    double[] full = new double[eyes.size()];
    double slits = 0;
    for (int i = 0; i < dark.length; i++) {
      dark[i] = read(eyes.get(i).dark() + READING_COUNTS * draws.normal(), 16);
      full[i] = read(eyes.get(i).full() * (1 + READING_PART * draws.normal()), 16);
      slits += eyes.get(i).slit() / dark.length;
    }
    return new Said(
        read(OUTER_SHARE * frame, 1000),
        read(slits, 1000),
        read(gapMillimetres + draws.either(0.5), 1000),
        read(lampMillimetres * (1 + draws.either(0.03)), 1000),
        read(lampAcross + draws.either(0.5), 1000),
        dark,
        full,
        read(rig.lowThreshold() + READING_COUNTS * draws.normal() / 2, 64),
        read(rig.highThreshold() + READING_COUNTS * draws.normal() / 2, 64));
  }

  /** The same with each slit in its place, of one width, and the bar in the middle. */
  public CurtainBar inPlace() {
    List<Eye> placed = new ArrayList<>();
    for (int i = 0; i < eyes.size(); i++) {
      Eye its = eyes.get(i);
      placed.add(
          new Eye(
              (i - 1) * OUTER_SHARE * frame,
              eyes.get(CENTRE).slit(),
              its.dark(),
              its.full(),
              its.offset(),
              its.hysteresis(),
              its.riseSeconds(),
              its.fallSeconds()));
    }
    return new CurtainBar(
        frame,
        placed,
        gapMillimetres,
        lampMillimetres,
        lampAcross,
        lampAside,
        aAtStart,
        rig,
        middle);
  }

  /** What is said, with all lengths as they are. */
  public Said measured(Said said) {
    return new Said(
        OUTER_SHARE * frame,
        eyes.get(CENTRE).slit(),
        gapMillimetres,
        lampMillimetres,
        lampAcross,
        said.dark(),
        said.full(),
        said.low(),
        said.high());
  }

  /** To the nearest of so many parts of one. */
  private static double read(double value, int parts) {
    return Math.rint(value * parts) / parts;
  }

  /** Where a sensor looks through the plane of the first curtain, from the middle of the lamp. */
  public double sees(int eye) {
    double nearer = gapMillimetres / lampMillimetres;
    return eyes.get(eye).place() * (1 - nearer) + lampAside * nearer;
  }

  /** Light at a sensor as a part of full light. */
  double seen(int eye, CurtainShot shot, double seconds) {
    double first = shot.firstAt(seconds);
    double second = shot.secondAt(seconds);
    Eye its = eyes.get(eye);
    double place = sees(eye);
    double blur =
        its.slit()
            + lampAcross * gapMillimetres / lampMillimetres
            + Math.abs(shot.apartMillimetres());
    if (first < place - blur || second > place + blur) {
      return 0;
    }
    if (first > place + blur && second < place - blur) {
      return 1;
    }
    double nearer = gapMillimetres / lampMillimetres;
    double nearerSecond = (gapMillimetres - shot.apartMillimetres()) / lampMillimetres;
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < STRIPS; i++) {
      double across = (2 * i + 1.0) / STRIPS - 1;
      double weight = Math.sqrt(1 - across * across);
      double lamp = lampAside + across * lampAcross / 2;
      double upTo = (first - lamp * nearer) / (1 - nearer) - its.place();
      double from = (second - lamp * nearerSecond) / (1 - nearerSecond) - its.place();
      double lit = Math.min(its.slit() / 2, upTo) - Math.max(-its.slit() / 2, from);
      sum += weight * Math.max(0, lit) / its.slit();
      weights += weight;
    }
    return sum / weights;
  }

  /** All light that a sensor truly gets in a firing, in seconds of full light. */
  public CurtainShot.Exposure truth(int eye, CurtainShot shot) {
    double main = 0;
    double late = 0;
    double dip = 0;
    double place = sees(eye);
    double blur = eyes.get(eye).slit() + lampAcross * gapMillimetres / lampMillimetres;
    double opened = shot.opensSeconds(place + blur);
    double shut = shot.coversSeconds(place + blur);
    double shuts = shot.coversSeconds(place - blur);
    for (double at = 0; at < shot.endSeconds() + STEP; at += STEP) {
      double seen = STEP * seen(eye, shot, at);
      main += at <= shut ? seen : 0;
      late += at > shut ? seen : 0;
      dip += at > opened && at < shuts ? STEP - seen : 0;
    }
    return new CurtainShot.Exposure(main, late, dip);
  }

  /** What the rig stamps of a firing, some time after it was switched on. */
  public List<Stamp> stamps(CurtainShot shot, Draws draws) {
    double light = (1 + rig.fade()) * (1 + rig.wander() * draws.normal());
    List<Crossing> all = new ArrayList<>();
    for (int i = 0; i < eyes.size(); i++) {
      if (i == CENTRE) {
        double rise = rig.lowRiseSeconds();
        Level low =
            new Level(
                0,
                rig.lowThreshold() + rig.lowOffset(),
                rig.lowHysteresis(),
                rise,
                rig.lowFallSeconds());
        Level high =
            new Level(
                1,
                rig.highThreshold() + rig.highOffset(),
                rig.highHysteresis(),
                rig.highRiseSeconds(),
                rig.highFallSeconds());
        cross(i, low, shot, light, draws, all);
        cross(i, high, shot, light, draws, all);
      } else {
        Eye outer = eyes.get(i);
        int channel = (i < CENTRE) == aAtStart ? 2 : 3;
        cross(
            i,
            new Level(
                channel,
                middle + outer.offset(),
                outer.hysteresis(),
                outer.riseSeconds(),
                outer.fallSeconds()),
            shot,
            light,
            draws,
            all);
      }
    }
    all.sort(Comparator.comparingDouble(Crossing::seconds));
    double zero = draws.between(1, 100);
    List<Stamp> stamps = new ArrayList<>();
    for (Crossing each : all) {
      boolean crowded =
          all.stream()
              .anyMatch(
                  other ->
                      other.channel() != 0
                          && !other.equals(each)
                          && Math.abs(other.seconds() - each.seconds()) < CROWDED_SECONDS);
      double error =
          each.channel() == 0 ? 0 : crowded ? draws.between(-19, 14) : draws.between(-2, 8);
      stamps.add(
          new Stamp(
              each.channel(),
              each.light(),
              (long) Math.floor((zero + each.seconds()) * rig.ticksPerSecond() + error)));
    }
    stamps.sort(Comparator.comparingLong(Stamp::ticks));
    return stamps;
  }

  private record Level(
      int channel, double counts, double hysteresis, double riseSeconds, double fallSeconds) {}

  private record Crossing(int channel, boolean light, double seconds) {}

  private void cross(
      int eye, Level level, CurtainShot shot, double light, Draws draws, List<Crossing> all) {
    Eye its = eyes.get(eye);
    boolean on = false;
    double span = light * (its.full() - its.dark());
    double share = share(level, false, span, its, draws);
    for (double at = 0; at < shot.endSeconds() + STEP; at += STEP) {
      if (on ? seen(eye, shot, at) < share : seen(eye, shot, at) > share) {
        double low = at - STEP;
        double high = at;
        for (int turn = 0; turn < 30; turn++) {
          double middleTime = (low + high) / 2;
          boolean there =
              on ? seen(eye, shot, middleTime) < share : seen(eye, shot, middleTime) > share;
          low = there ? low : middleTime;
          high = there ? middleTime : high;
        }
        on = !on;
        all.add(
            new Crossing(
                level.channel(), on, high + (on ? level.riseSeconds() : level.fallSeconds())));
        share = share(level, on, span, its, draws);
      }
    }
  }

  /** The part of full light at which a comparator that is on or off switches next. */
  private static double share(Level level, boolean on, double span, Eye its, Draws draws) {
    double half = level.hysteresis() / 2 * (on ? -1 : 1);
    return (level.counts() + half + NOISE_COUNTS * draws.normal() - its.dark()) / span;
  }
}
