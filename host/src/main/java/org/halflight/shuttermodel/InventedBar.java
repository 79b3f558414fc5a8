package org.halflight.shuttermodel;

/** Ways of placing and lighting the three sensors behind the gate, right and wrong. Invented. */
public enum InventedBar {
  /** As it should be. */
  RIGHT,
  /** The plugs of the outer sensors are exchanged, or the camera lies the other way round. */
  TURNED,
  /** The plugs of the centre and of outer sensor A are exchanged. */
  CROSSED,
  /** The lamp is too near: the curtains' places shrink, and the outer sensors get less light. */
  LAMP_NEAR,
  /** The lens was left on: light comes from its whole pupil, less of it to the outer sensors. */
  LENS_ON,
  /** Outer sensor A sees no light. */
  A_DARK,
  /** Outer sensor B sees no light. */
  B_DARK,
  /** The trimmer of outer sensor A is turned down: seven tenths of the centre's light. */
  A_WEAK;

  private static final double NEAR_MILLIMETRES = 40;

  /** Of the light at the outer sensors under a near lamp: cos^4 at 16 mm in 40 mm. */
  private static final double NEAR_SHARE = 0.75;

  private static final double LENS_SHARE = 0.9;
  private static final double DARK_SHARE = 1e-3;
  private static final double WEAK_SHARE = 0.84;

  /** Where the sensors are behind a frame. */
  public SensorBar bar(double frameMillimetres) {
    SensorBar usual = SensorBar.usual(frameMillimetres);
    return switch (this) {
      case RIGHT, A_DARK, B_DARK, A_WEAK -> usual;
      case TURNED -> usual.in(SensorBar.Order.B_FIRST);
      case CROSSED -> usual.in(SensorBar.Order.CENTRE_FIRST);
      case LAMP_NEAR -> usual.withLamp(NEAR_MILLIMETRES);
      case LENS_ON -> usual.behindLens();
    };
  }

  /** The sensors in the light they get there. */
  public SensorSet sensors() {
    SensorSet usual = SensorSet.BEHIND_SLITS;
    return switch (this) {
      case RIGHT, TURNED, CROSSED -> usual;
      case LAMP_NEAR -> usual.lit(1.2, NEAR_SHARE, NEAR_SHARE);
      case LENS_ON -> usual.lit(1, LENS_SHARE, LENS_SHARE);
      case A_DARK -> usual.lit(1, DARK_SHARE, 1);
      case B_DARK -> usual.lit(1, 1, DARK_SHARE);
      case A_WEAK -> usual.lit(1, WEAK_SHARE, 1);
    };
  }
}
