package org.halflight.session;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.halflight.speeds.FrameSize;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Millimetres;
import org.halflight.speeds.Tolerances;

/**
 * A choice of a run that has a usual value, declared once. The window and the command line ask for
 * it, session files and the record keep it, and the page, the comparison and the tables show it,
 * all from what is written here; its sentences are under {@code run.option}.
 *
 * <p>An option has one text form: what a person types, and what is stored. The usual value is the
 * empty text, and is not stored.
 *
 * @param <T> what it comes to
 */
public final class RunOption<T> {
  /** Where options are kept. */
  public enum In {
    /** The mark of a run in a session file. */
    MARK,
    /** What is noted of a run in the record. */
    RECORD
  }

  /** What the verdict on each speed is judged by. */
  public static final RunOption<Tolerances> TOLERANCE =
      criterion("tolerance", Tolerances.USUAL, Tolerances::find, Tolerances::text);

  /** What the verdict is about. */
  public static final RunOption<Measurand> ABOUT =
      new RunOption<>(
          "about",
          "about",
          "aim-measurand",
          Measurand.MEAN_OF_SETTING,
          Measurand.WORDS.all(),
          Measurand.WORDS::find,
          Measurand.WORDS::word);

  /** Whether a speed is fired until its verdict is in, and not a number of times fixed before. */
  public static final RunOption<Boolean> UNTIL_DECIDED =
      flag("until-decided", "fired", "aim-until-decided", "until-decided");

  /**
   * Whether each speed is fired once, B last, and then the largest error until it is known; the
   * number of firings is the most of any speed.
   */
  public static final RunOption<Boolean> QUICK = flag("quick", "quick", "aim-quick", "quick");

  /** The stops of an aperture check, as engraved, from the widest on. */
  public static final RunOption<List<String>> STOPS =
      criterion(
          "stops", StopsAsked.USUAL.markings(), RunOption::stops, stops -> String.join(",", stops));

  /** How far a stop may be off its marking. */
  public static final RunOption<Double> STOP_TOLERANCE =
      criterion(
          "stop-tolerance",
          StopsAsked.USUAL_TOLERANCE_STOPS,
          RunOption::stopTolerance,
          stops -> Double.toString(stops));

  /**
   * What earlier versions judged the linkage by, in milliseconds such as {@code 0.5..2.0}. It is
   * kept as it was written, is not offered any more, and judges nothing.
   */
  public static final RunOption<String> LINKAGE =
      criterion("linkage", "", Optional::of, Function.identity());

  /** How far ahead of the shutter the advance may unlock, in mm on a screw plunger. */
  public static final RunOption<Optional<GapLimits>> LINKAGE_GAP =
      known("linkage-gap", GapLimits::find, GapLimits::text);

  /**
   * Whether the flash contact is wired and asked about, so that one that never closes is at fault.
   */
  public static final RunOption<Boolean> CONTACT =
      flag("contact", "contact", "aim-flash-contact", "wired");

  /**
   * Whether the run is a stage of assembly: B, the slowest speed three times, the top speed once.
   */
  public static final RunOption<Boolean> STAGES = flag("stages", "stages", "aim-stages", "stages");

  /** In the camera (its ring tight), loose in it, or out of it. */
  public static final RunOption<String> PLACE = condition("place", "in-camera", "loose", "out");

  /** Lens cells: both, the rear or the front one alone, none. */
  public static final RunOption<String> CELLS = condition("cells", "on", "rear", "front", "off");

  /** Cover of the shutter on or off. */
  public static final RunOption<String> COVER = condition("cover", "on", "off");

  /** Which way is up. */
  public static final RunOption<String> ATTITUDE =
      condition("attitude", "lens-level", "lens-up", "lens-down", "on-its-side", "upside-down");

  /** Just cleaned and still wet, or dry. */
  public static final RunOption<String> WET = condition("wet", "dry", "wet");

  /** Released by finger or cable. */
  public static final RunOption<String> RELEASE = condition("release", "finger", "cable");

  /** Working stop, in the person's words. */
  public static final RunOption<String> STOP = condition("stop");

  /** Where the sync lever is set; empty where there is none, or nobody knows. */
  public static final RunOption<Optional<SyncLever>> SYNC_LEVER =
      new RunOption<>(
          "sync-lever",
          "with.sync-lever",
          "sync-lever",
          Optional.empty(),
          SyncLever.WORDS.all(),
          given(SyncLever.WORDS::find),
          written(SyncLever.WORDS::word));

  /** The camera's own figure of the travel of its curtains, with the distance it was taken over. */
  public static final RunOption<Optional<OwnTravel>> OWN_TRAVEL =
      known("own-travel", OwnTravel::find, OwnTravel::text);

  /** The fastest marked speed at which electronic flash lights the whole frame. */
  public static final RunOption<Optional<MarkedSpeed>> X_SPEED =
      known("x-speed", MarkedSpeed::find, MarkedSpeed::label);

  /** What can be adjusted on the shutter; all where nobody said. */
  public static final RunOption<Set<Adjuster>> ADJUSTERS =
      criterion("adjusters", Adjuster.ALL, Adjuster::findAll, Adjuster::text);

  /** The size of the picture. */
  public static final RunOption<Optional<FrameSize>> FRAME =
      noted("frame", FrameSize::find, FrameSize::text);

  /** From the middle of the frame to each outer sensor, in mm. */
  public static final RunOption<Optional<Double>> OUTER_SENSORS = millimetres("outer-sensors");

  /** Width of the slit before each sensor, in mm. */
  public static final RunOption<Optional<Double>> SENSOR_SLIT = millimetres("sensor-slit");

  /** From the curtain to the slits before the sensors, in mm. */
  public static final RunOption<Optional<Double>> CURTAIN_GAP = millimetres("curtain-gap");

  /** From the lamp to the slits before the sensors, in mm; infinite for parallel light. */
  public static final RunOption<Optional<Double>> LAMP_DISTANCE =
      noted("lamp-distance", RunOption::lampDistance, RunOption::lampDistance);

  /** Width of the lamp in the direction of travel, in mm. */
  public static final RunOption<Optional<Double>> LAMP_SIZE = millimetres("lamp-size");

  /** Those that only curtains have, in the order in which they are asked. */
  public static final List<RunOption<?>> OF_CURTAINS =
      List.of(
          FRAME,
          OUTER_SENSORS,
          SENSOR_SLIT,
          CURTAIN_GAP,
          LAMP_DISTANCE,
          LAMP_SIZE,
          OWN_TRAVEL,
          X_SPEED,
          ADJUSTERS);

  /** Those of them that a camera has, whatever rig it is on. */
  public static final List<RunOption<?>> OF_CURTAIN_CAMERA =
      List.of(FRAME, OWN_TRAVEL, X_SPEED, ADJUSTERS);

  /** What verdicts are judged by, in the order in which it is asked. */
  public static final List<RunOption<?>> CRITERIA =
      List.of(
          TOLERANCE,
          ABOUT,
          UNTIL_DECIDED,
          QUICK,
          STOPS,
          STOP_TOLERANCE,
          LINKAGE,
          LINKAGE_GAP,
          CONTACT,
          STAGES,
          OWN_TRAVEL,
          X_SPEED,
          ADJUSTERS);

  /** What may be noted about the set-up, in the order in which it is asked. */
  public static final List<RunOption<?>> CONDITIONS =
      List.of(
          PLACE,
          CELLS,
          COVER,
          ATTITUDE,
          WET,
          RELEASE,
          STOP,
          SYNC_LEVER,
          FRAME,
          OUTER_SENSORS,
          SENSOR_SLIT,
          CURTAIN_GAP,
          LAMP_DISTANCE,
          LAMP_SIZE);

  /** All of them. */
  public static final List<RunOption<?>> ALL =
      Stream.concat(CRITERIA.stream(), CONDITIONS.stream()).toList();

  private static final String YES = "yes";
  private static final String PARALLEL = "parallel";

  private final String name;
  private final String mark;
  private final String row;
  private final T usual;
  private final List<String> words;
  private final Function<String, Optional<T>> reader;
  private final Function<T, String> writer;

  private RunOption(
      String name,
      String mark,
      String row,
      T usual,
      List<String> words,
      Function<String, Optional<T>> reader,
      Function<T, String> writer) {
    this.name = name;
    this.mark = mark;
    this.row = row;
    this.usual = usual;
    this.words = List.copyOf(words);
    this.reader = reader;
    this.writer = writer;
  }

  private static <T> RunOption<T> criterion(
      String name, T usual, Function<String, Optional<T>> reader, Function<T, String> writer) {
    return new RunOption<>(name, name, "aim-" + name, usual, List.of(), reader, writer);
  }

  private static RunOption<Boolean> flag(String name, String mark, String row, String word) {
    return new RunOption<>(
        name,
        mark,
        row,
        false,
        List.of(word),
        text -> text.equals(word) ? Optional.of(true) : Optional.empty(),
        on -> on ? word : "");
  }

  /** One that is noted in the person's words, or in one of these. */
  private static RunOption<String> condition(String name, String... words) {
    return new RunOption<>(
        name, "with." + name, name, "", Arrays.asList(words), Optional::of, Function.identity());
  }

  /** A criterion that is not known unless somebody says it. */
  private static <T> RunOption<Optional<T>> known(
      String name, Function<String, Optional<T>> reader, Function<T, String> writer) {
    return criterion(name, Optional.empty(), given(reader), written(writer));
  }

  /** A condition that is not known unless somebody says it. */
  private static <T> RunOption<Optional<T>> noted(
      String name, Function<String, Optional<T>> reader, Function<T, String> writer) {
    return new RunOption<>(
        name, "with." + name, name, Optional.empty(), List.of(), given(reader), written(writer));
  }

  private static RunOption<Optional<Double>> millimetres(String name) {
    return noted(name, RunOption::length, Millimetres::text);
  }

  @SuppressWarnings("OptionalMapToOptional") // What is read may be nothing.
  private static <T> Function<String, Optional<Optional<T>>> given(
      Function<String, Optional<T>> reader) {
    return text -> Optional.of(reader.apply(text)).filter(Optional::isPresent);
  }

  private static <T> Function<Optional<T>, String> written(Function<T, String> writer) {
    return value -> value.map(writer).orElse("");
  }

  private static Optional<Double> length(String text) {
    return Millimetres.find(text).stream().boxed().findFirst();
  }

  private static Optional<Double> lampDistance(String text) {
    return text.strip().equals(PARALLEL) ? Optional.of(Double.POSITIVE_INFINITY) : length(text);
  }

  private static String lampDistance(double millimetres) {
    return Double.isInfinite(millimetres) ? PARALLEL : Millimetres.text(millimetres);
  }

  private static Optional<List<String>> stops(String text) {
    List<String> stops = Arrays.asList(text.strip().split("[,;\\s]+", -1));
    return StopsAsked.areStops(stops) ? Optional.of(stops) : Optional.empty();
  }

  private static Optional<Double> stopTolerance(String text) {
    OptionalDouble stops = StopsAsked.tolerance(text);
    return stops.isPresent() ? Optional.of(stops.getAsDouble()) : Optional.empty();
  }

  /** Its name on the command line, in settings and in the keys of its sentences. */
  public String name() {
    return name;
  }

  /** What it is when nothing is chosen. */
  public T usual() {
    return usual;
  }

  /** The words to choose from; empty where a person writes. */
  public List<String> words() {
    return words;
  }

  /** What to choose from as {@link #find} reads it, the usual first: the empty text. */
  public List<String> choices() {
    return Stream.concat(Stream.of(""), words.stream().filter(word -> !word.equals(usualWord())))
        .toList();
  }

  /** The word of the usual value; empty where it has none. */
  public String usualWord() {
    return words.isEmpty() ? "" : writer.apply(usual);
  }

  /** Whether a person may choose it; else only earlier versions did, and it is read. */
  public boolean isOffered() {
    return this != LINKAGE;
  }

  /** Whether only curtains have it. */
  public boolean isOfCurtains() {
    return OF_CURTAINS.contains(this);
  }

  /**
   * Whether only a shutter in or near a lens has it: its cells, its cover, its stops, its linkage.
   */
  public boolean isOfLeaves() {
    return List.of(CELLS, COVER, STOP, STOPS, STOP_TOLERANCE, LINKAGE, LINKAGE_GAP).contains(this);
  }

  /** Whether there is only yes or no. */
  public boolean isFlag() {
    return usual instanceof Boolean;
  }

  /** The value that a person chose or wrote; empty where it cannot be understood. */
  public Optional<T> find(String text) {
    return text.isBlank() ? Optional.of(usual) : reader.apply(text);
  }

  /** A value as {@link #find} reads it; empty for the usual one. */
  public String text(T value) {
    return value.equals(usual) ? "" : writer.apply(value);
  }

  /** What it is called where it is kept. */
  public String name(In place) {
    return place == In.MARK ? mark : row;
  }

  /** A value as it is kept; the record says yes where a mark has a word. */
  String stored(T value, In place) {
    return isFlag() && place == In.RECORD ? YES : text(value);
  }

  /**
   * The value that was kept. What cannot be read is never taken for the usual.
   *
   * @throws IllegalArgumentException where it makes no sense
   */
  T read(String text, In place) {
    boolean said = (isFlag() && place == In.RECORD) ? text.equals(YES) : !text.isBlank();
    return Optional.of((isFlag() && place == In.RECORD) ? words.get(0) : text)
        .filter(its -> said)
        .flatMap(reader)
        .orElseThrow(() -> new IllegalArgumentException(name(place) + " cannot be read: " + text));
  }

  @Override
  public String toString() {
    return name;
  }
}
