package org.halflight.shuttermodel;

/**
 * The state of a model curtain shutter. All figures are invented; {@link #SOUND} is as it should
 * be.
 *
 * @param first the first curtain
 * @param second the second curtain
 * @param latch what releases the second curtain
 * @param escapement what makes the slow speeds
 * @param contactMillis when the flash contact closes, behind the first curtain's clearing the frame
 * @param releaseMillis what mirror and release add before the first curtain is let go
 * @param releaseScatterMillis standard deviation of that
 * @param shortWinds how often the wind does not go home, so that the first curtain starts short
 * @param holds how often the lever of B keeps hold of the second curtain
 */
public record CurtainCondition(
    CurtainState first,
    CurtainState second,
    Latch latch,
    Escapement escapement,
    double contactMillis,
    double releaseMillis,
    double releaseScatterMillis,
    double shortWinds,
    double holds) {
  /**
   * What releases the second curtain.
   *
   * @param lateMillis how late it is, whatever the speed; below zero it is early
   * @param scatterMillis standard deviation of that
   * @param restMillis how much later it is after a rest
   */
  public record Latch(double lateMillis, double scatterMillis, double restMillis) {
    static final Latch SOUND = new Latch(0, 0.01, 0);
  }

  /**
   * What makes the slow speeds.
   *
   * @param stops how slow it is, the same at all of them
   * @param scatterStops standard deviation of that
   * @param restStops how much slower the first firing after a rest is
   * @param hangs how often it stops dead at half a second and slower
   * @param engages whether it is picked up at all
   * @param oneSpeedStops how far one step of the cam is off, at the third slow speed
   * @param changesOver whether the change from slow to fast speeds comes where it should; else the
   *     fastest of the slow speeds stays open
   */
  public record Escapement(
      double stops,
      double scatterStops,
      double restStops,
      double hangs,
      boolean engages,
      double oneSpeedStops,
      boolean changesOver) {
    static final Escapement SOUND = new Escapement(0, 0.015, 0, 0, true, 0, true);
  }

  /** A contact that is set right closes so long after the frame is open. */
  public static final double CONTACT_MILLIS = 0.4;

  /** Nothing is wrong. */
  public static final CurtainCondition SOUND =
      new CurtainCondition(
          CurtainState.SOUND,
          CurtainState.SOUND,
          Latch.SOUND,
          Escapement.SOUND,
          CONTACT_MILLIS,
          0,
          0.2,
          0,
          0);

  /** The same with other curtains. */
  public CurtainCondition with(CurtainState newFirst, CurtainState newSecond) {
    return new CurtainCondition(
        newFirst,
        newSecond,
        latch,
        escapement,
        contactMillis,
        releaseMillis,
        releaseScatterMillis,
        shortWinds,
        holds);
  }

  /** The same with another latch. */
  public CurtainCondition with(Latch another) {
    return new CurtainCondition(
        first,
        second,
        another,
        escapement,
        contactMillis,
        releaseMillis,
        releaseScatterMillis,
        shortWinds,
        holds);
  }

  /** The same with another escapement. */
  public CurtainCondition with(Escapement another) {
    return new CurtainCondition(
        first,
        second,
        latch,
        another,
        contactMillis,
        releaseMillis,
        releaseScatterMillis,
        shortWinds,
        holds);
  }

  /** The same with another place of the flash contact. */
  public CurtainCondition withContact(double millis) {
    return new CurtainCondition(
        first,
        second,
        latch,
        escapement,
        millis,
        releaseMillis,
        releaseScatterMillis,
        shortWinds,
        holds);
  }

  /** The same with a late and uneven release. */
  public CurtainCondition withRelease(double millis, double scatterMillis) {
    return new CurtainCondition(
        first, second, latch, escapement, contactMillis, millis, scatterMillis, shortWinds, holds);
  }

  /** The same with what happens now and then. */
  public CurtainCondition withChances(double shortWind, double held) {
    return new CurtainCondition(
        first,
        second,
        latch,
        escapement,
        contactMillis,
        releaseMillis,
        releaseScatterMillis,
        shortWind,
        held);
  }

  /**
   * The same clean: nothing sticks, drags or lags after a rest. What somebody set wrong, or what
   * has worn, stays.
   */
  public CurtainCondition cleaned() {
    return with(first.cleaned(), second.cleaned())
        .with(new Latch(latch.lateMillis(), Latch.SOUND.scatterMillis(), 0))
        .with(
            new Escapement(
                escapement.stops() / 4,
                Escapement.SOUND.scatterStops(),
                0,
                0,
                escapement.engages(),
                escapement.oneSpeedStops(),
                escapement.changesOver()))
        .withRelease(0, SOUND.releaseScatterMillis())
        .withChances(shortWinds, holds);
  }
}
