package org.halflight.validation.invented;

/**
 * What became of one press, in seconds since its start; what did not happen is not a number.
 *
 * @param unlocked when the advance unlocked
 * @param tripped when the shutter tripped
 * @param light first light
 * @param dark last light
 * @param noticed when there was first something for the person to notice
 * @param bottomed when the button came to the end of its stroke
 * @param returned when the button was back
 * @param deepestMm how far the button went
 * @param windTurns whether the wind turns after the person has let go
 */
public record Press(
    double unlocked,
    double tripped,
    double light,
    double dark,
    double noticed,
    double bottomed,
    double returned,
    double deepestMm,
    boolean windTurns) {
  /** Whether the rig sees light. */
  public boolean fired() {
    return !Double.isNaN(light);
  }
}
