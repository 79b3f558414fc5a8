package org.halflight.shuttermodel;

/**
 * An invented stop: blades that close too far as they are turned down, and lag behind when they are
 * turned up again.
 *
 * @param darkerStops how much too dark it is five stops down; it grows with the fourth power of the
 *     stops
 * @param backlashStops how much darker it is when it is turned up to a marking than when it is
 *     turned down to it; not at the widest, where the blades lie against their end
 */
public record InventedStops(double darkerStops, double backlashStops) {
  /** Within tolerance for four stops, and out of it at the fifth. */
  public static final InventedStops WORN = new InventedStops(0.45, 0.11);

  /** As marked. */
  public static final InventedStops EXACT = new InventedStops(0, 0);

  /**
   * The light against that of the widest stop, 0 to 1.
   *
   * @param markedStops how far below the widest it is marked, 0 or more
   */
  public double share(double markedStops, boolean opening) {
    if (!(markedStops >= 0)) {
      throw new IllegalArgumentException("no stop is wider than the widest: " + markedStops);
    }
    double off = darkerStops * Math.pow(markedStops / 5, 4);
    double behind = opening && markedStops > 0 ? backlashStops : 0;
    return Math.pow(2, -markedStops - off - behind);
  }
}
