package org.halflight.shuttermodel;

/**
 * The state of one curtain of a model shutter. All figures are invented; {@link #SOUND} is as it
 * should be.
 *
 * @param tension of its spring, as a share of what it should be
 * @param gum what old oil adds to its friction, as a share of the pull; it comes with speed
 * @param rested how much more gum there is after a rest, as a share of it
 * @param sticks what holds it at its start after a rest, as a share of the pull
 * @param drags what drags in the last third of the frame, as a share of the pull
 * @param brake how tight its brake is, 1 as it should be, 0 worn out
 * @param shiftMillimetres how much too far back its edge stands when wound
 * @param scatter of its friction from firing to firing, as a share of the pull
 */
public record CurtainState(
    double tension,
    double gum,
    double rested,
    double sticks,
    double drags,
    double brake,
    double shiftMillimetres,
    double scatter) {
  /** Nothing is wrong. */
  public static final CurtainState SOUND = new CurtainState(1, 0, 0, 0, 0, 1, 0, 0.004);

  /** The same with a spring of another tension. */
  public CurtainState withTension(double share) {
    return new CurtainState(share, gum, rested, sticks, drags, brake, shiftMillimetres, scatter);
  }

  /** The same with old oil, and more of it after a rest. */
  public CurtainState withGum(double share, double moreAfterRest) {
    return new CurtainState(
        tension, share, moreAfterRest, sticks, drags, brake, shiftMillimetres, 0.004 + share / 8);
  }

  /** The same with an edge that sticks after a rest. */
  public CurtainState withSticking(double share) {
    return new CurtainState(tension, gum, rested, share, drags, brake, shiftMillimetres, scatter);
  }

  /** The same with something that drags in the last third. */
  public CurtainState withDrag(double share) {
    return new CurtainState(tension, gum, rested, sticks, share, brake, shiftMillimetres, scatter);
  }

  /** The same with another brake. */
  public CurtainState withBrake(double tightness) {
    return new CurtainState(
        tension, gum, rested, sticks, drags, tightness, shiftMillimetres, scatter);
  }

  /** The same with its edge elsewhere when wound, as with a pinion that is a tooth out. */
  public CurtainState withShift(double millimetres) {
    return new CurtainState(tension, gum, rested, sticks, drags, brake, millimetres, scatter);
  }

  /** The same clean; its spring, its brake and its place are not touched. */
  public CurtainState cleaned() {
    return withGum(0, 0).withSticking(0).withDrag(0);
  }

  /**
   * What moves it.
   *
   * @param design of the shutter
   * @param sound as it should be
   * @param turnedTension what its spring was wound further, as a share of what it should be
   * @param turnedBrake what its brake was tightened
   * @param afterRest 1 after a rest, less and less from firing to firing
   * @param luck a normal deviate
   */
  CurtainDrive drive(
      CurtainDesign design,
      CurtainDrive sound,
      double turnedTension,
      double turnedBrake,
      double afterRest,
      double luck) {
    double pull = sound.pull() * Math.max(0.05, tension + turnedTension);
    double thickness = gum * (1 + rested * afterRest) * sound.pull();
    double tight = Math.max(0, brake + turnedBrake);
    return new CurtainDrive(
        sound.startsAt() - shiftMillimetres,
        pull,
        sound.slackening() * pull / sound.pull(),
        Math.max(0, sound.dry() + scatter * luck * sound.pull()),
        sound.viscous() + thickness * design.travelMillis() * 1e-3 / design.frameMillimetres(),
        sticks * afterRest * sound.pull(),
        sound.dragsFrom(),
        drags * sound.pull(),
        sound.stopsAt(),
        // A brake that is set tighter than it should be also begins earlier.
        sound.brakeMillimetres() * Math.max(1, tight),
        sound.brake() * tight,
        sound.rebound());
  }
}
