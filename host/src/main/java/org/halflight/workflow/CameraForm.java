package org.halflight.workflow;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.speeds.DecimalComma;
import org.halflight.speeds.Dial;
import org.halflight.speeds.FrameSize;
import org.halflight.speeds.ShutterKind;
import org.halflight.words.Words;

/**
 * A camera as it is typed and chosen.
 *
 * @param label the owner's label
 * @param serialNumber as engraved
 * @param shutter how its shutter is built
 * @param speeds its marked speeds, with commas between
 * @param widest f-number of the widest stop
 * @param frame size of the picture in millimetres, such as 36 x 24
 * @param firing how it is fired without film
 * @param curtains what is typed of its curtains, where it has some
 */
public record CameraForm(
    String label,
    String serialNumber,
    ShutterKind shutter,
    String speeds,
    String widest,
    String frame,
    String firing,
    CurtainForm curtains) {
  private static final Pattern STOP =
      Pattern.compile("(?:[fF]\\s*/?\\s*)?(\\d{1,3}(?:\\.\\d{1,2})?)");

  /**
   * What a form comes to.
   *
   * @param camera empty where something cannot be understood
   * @param trouble what, and what to do; empty otherwise
   * @param field which one: label, speeds, widest, frame or an option of a run; empty otherwise
   */
  public record Result(Optional<Camera> camera, String trouble, String field) {}

  /** A form in which nothing is typed of curtains. */
  public CameraForm(
      String label,
      String serialNumber,
      ShutterKind shutter,
      String speeds,
      String widest,
      String frame,
      String firing) {
    this(label, serialNumber, shutter, speeds, widest, frame, firing, CurtainForm.EMPTY);
  }

  /** An empty form with the dial that most cameras have. */
  public static CameraForm empty() {
    return new CameraForm(
        "", "", ShutterKind.LEAF, RunForm.list(Dial.builtIn().get(0).speeds()), "", "", "");
  }

  /** The form of a camera. */
  public static CameraForm of(Camera camera) {
    return new CameraForm(
        camera.label(),
        camera.serialNumber(),
        camera.shutter(),
        RunForm.list(camera.dial().speeds()),
        camera.widestFNumber().isPresent() ? plain(camera.widestFNumber().getAsDouble()) : "",
        camera.frame().map(FrameSize::text).orElse(""),
        camera.firingWithoutFilm(),
        CurtainForm.of(camera.curtains()));
  }

  /**
   * Reads the form.
   *
   * @param id of the camera that it is about
   */
  public Result read(Id<Camera> id) {
    if (label.isBlank()) {
      return trouble("label", "desk.camera.noLabel");
    }
    Optional<Dial> dial = dial();
    if (dial.isEmpty()) {
      return trouble("speeds", "desk.camera.badSpeeds");
    }
    OptionalDouble stop = OptionalDouble.empty();
    if (!widest.isBlank()) {
      Matcher matcher = STOP.matcher(DecimalComma.pointed(widest));
      if (!matcher.matches() || Double.parseDouble(matcher.group(1)) == 0) {
        return trouble("widest", "desk.camera.badStop");
      }
      stop = OptionalDouble.of(Double.parseDouble(matcher.group(1)));
    }
    Optional<FrameSize> size = FrameSize.find(frame);
    if (!frame.isBlank() && size.isEmpty()) {
      return trouble("frame", "desk.camera.badFrame");
    }
    try {
      return new Result(
          Optional.of(
              new Camera(
                      id,
                      label.strip(),
                      serialNumber.strip(),
                      shutter,
                      dial.get(),
                      stop,
                      size,
                      firing.strip())
                  .withCurtains(curtains.read())),
          "",
          "");
    } catch (WrongField wrong) {
      return new Result(Optional.empty(), wrong.getMessage(), wrong.field());
    }
  }

  private Optional<Dial> dial() {
    return Dial.custom(speeds)
        .map(
            typed ->
                Dial.builtIn().stream()
                    .filter(known -> known.speeds().equals(typed.speeds()))
                    .findFirst()
                    .orElse(typed));
  }

  private static Result trouble(String field, String key) {
    return new Result(Optional.empty(), Words.say(key), field);
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
  }
}
