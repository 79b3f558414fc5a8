package org.halflight.shuttermodel;

/**
 * Blades that spring back after closing and let in a second, small pulse of light, half a sine
 * wave. The pulse is the same at all speeds, because the blades close alike at all of them; so its
 * share of the exposure is greatest at the fastest.
 *
 * @param share effective time of the pulse as a share of the exact time of the fastest marked
 *     speed; 0 is no bounce
 * @param delayMillis from dark to the start of the pulse
 * @param widthMillis length of the pulse, above zero
 */
public record Bounce(double share, double delayMillis, double widthMillis) {
  /** No bounce. */
  public static final Bounce NONE = new Bounce(0, 1, 1);

  public Bounce {
    if (!(share >= 0 && share < 1) || !(delayMillis > 0) || !(widthMillis > 0)) {
      throw new IllegalArgumentException(
          "a bounce has a share of 0 up to 1, and delay and width above zero");
    }
  }
}
