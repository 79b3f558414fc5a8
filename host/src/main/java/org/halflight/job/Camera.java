package org.halflight.job;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.speeds.Dial;
import org.halflight.speeds.FrameSize;
import org.halflight.speeds.ShutterKind;

/**
 * A camera that comes to the bench.
 *
 * @param id what the record knows it by
 * @param label the owner's label; two cameras may bear the same
 * @param serialNumber as engraved; empty when there is none or it is not known
 * @param shutter how its shutter is built
 * @param dial the marked speeds, as the user made them out
 * @param widestFNumber the f-number of the widest stop, above 0; empty when not known
 * @param frame the size of the picture; empty when not known
 * @param firingWithoutFilm how it is fired without film; empty when nothing is peculiar about it
 * @param details those of a camera
 * @param curtains what is known of its curtains, where it has some
 */
public record Camera(
    Id<Camera> id,
    String label,
    String serialNumber,
    ShutterKind shutter,
    Dial dial,
    OptionalDouble widestFNumber,
    Optional<FrameSize> frame,
    String firingWithoutFilm,
    Details details,
    CurtainCamera curtains) {
  public Camera {
    if (widestFNumber.isPresent() && !isFNumber(widestFNumber.getAsDouble())) {
      throw new IllegalArgumentException("not an f-number: " + widestFNumber.getAsDouble());
    }
  }

  /** A camera without details, of whose curtains nothing is known. */
  public Camera(
      Id<Camera> id,
      String label,
      String serialNumber,
      ShutterKind shutter,
      Dial dial,
      OptionalDouble widestFNumber,
      Optional<FrameSize> frame,
      String firingWithoutFilm) {
    this(
        id,
        label,
        serialNumber,
        shutter,
        dial,
        widestFNumber,
        frame,
        firingWithoutFilm,
        Details.NONE,
        CurtainCamera.NOT_KNOWN);
  }

  /** A camera that is in no record yet, and of which only label, shutter and dial are known. */
  public static Camera of(String label, ShutterKind shutter, Dial dial) {
    return new Camera(
        Id.ofNew(), label, "", shutter, dial, OptionalDouble.empty(), Optional.empty(), "");
  }

  /** The same camera under a number of the record. */
  public Camera withId(Id<Camera> id) {
    return with(id, dial, details, curtains);
  }

  /** The same camera with another dial. */
  public Camera withDial(Dial dial) {
    return with(id, dial, details, curtains);
  }

  /** The same camera with other details. */
  public Camera withDetails(Details details) {
    return with(id, dial, details, curtains);
  }

  /** The same camera with something else known of its curtains. */
  public Camera withCurtains(CurtainCamera curtains) {
    return with(id, dial, details, curtains);
  }

  private Camera with(Id<Camera> number, Dial speeds, Details more, CurtainCamera ofCurtains) {
    return new Camera(
        number,
        label,
        serialNumber,
        shutter,
        speeds,
        widestFNumber,
        frame,
        firingWithoutFilm,
        more,
        ofCurtains);
  }

  static boolean isFNumber(double value) {
    return value > 0 && value < 10_000;
  }
}
