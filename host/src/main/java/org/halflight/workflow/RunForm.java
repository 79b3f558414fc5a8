package org.halflight.workflow;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.bench.LightPlan;
import org.halflight.exposure.CurtainGeometry;
import org.halflight.extratest.FNumber;
import org.halflight.job.Camera;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.CameraCustoms;
import org.halflight.session.Phase;
import org.halflight.session.QuickSpeeds;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunPlan;
import org.halflight.session.RunSetup;
import org.halflight.session.ShutterUnderTest;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.DecimalComma;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Millimetres;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.halflight.words.OptionWords;
import org.halflight.words.Words;

/**
 * The set-up of a run as it is typed and chosen, in the window or on the command line.
 *
 * @param shutter that it is about; its dial need not have the speeds
 * @param phase where in the work it is
 * @param speeds the marked speeds to fire, with commas between, in the order wanted
 * @param firings good firings wanted of each speed
 * @param restSeconds how long the shutter has rested, where known
 * @param untimedTests B, T and the like where they are wanted
 * @param options what was written or chosen, by option; usual where there is nothing
 */
public record RunForm(
    ShutterUnderTest shutter,
    Phase phase,
    String speeds,
    int firings,
    OptionalDouble restSeconds,
    List<UntimedTest> untimedTests,
    Map<RunOption<?>, String> options) {
  /** More firings of a speed than this are not planned. */
  public static final int MOST_FIRINGS = 100;

  /** So many are planned where nobody says. */
  public static final int USUAL_FIRINGS = 5;

  /** Rests to choose from, in seconds, by the name of their words; empty for not noted. */
  public static final Map<String, OptionalDouble> RESTS = rests();

  public RunForm {
    untimedTests = List.copyOf(untimedTests);
    options = Map.copyOf(options);
  }

  /** The same form with other options. */
  public RunForm with(Map<RunOption<?>, String> others) {
    return new RunForm(shutter, phase, speeds, firings, restSeconds, untimedTests, others);
  }

  /** A form of a phase with everything else as it usually is. */
  public static RunForm usual(String camera, Phase phase, Dial dial) {
    return new RunForm(
        new ShutterUnderTest(
            camera, ShutterKind.UNKNOWN, dial.key(), dial.reference(), CameraCustoms.NONE),
        phase,
        list(dial.speeds()),
        USUAL_FIRINGS,
        OptionalDouble.empty(),
        List.of(),
        Map.of());
  }

  /** The form for the run that follows another: the next phase once that is done. */
  public static RunForm after(RunSetup before, String camera, boolean done) {
    ShutterUnderTest shutter = before.shutter();
    if (before.isStage()) {
      Map<RunOption<?>, String> others = new LinkedHashMap<>(texts(before));
      others.remove(RunOption.STAGES);
      // A stage has two speeds of the dial; the runs after it have all of them again.
      RunForm next = usual(camera, Phase.AS_LEFT, before.markings()).with(others);
      return new RunForm(
          shutter, next.phase, next.speeds, next.firings, next.restSeconds, List.of(), others);
    }
    // A quick look and a few speeds of curtains are for a camera as found; after the work all its
    // speeds are of interest.
    boolean fewOfCurtains = shutter.isCurtain() && before.phase() != Phase.AS_LEFT;
    boolean wholeDial = done && (before.isQuick() || fewOfCurtains);
    return new RunForm(
        new ShutterUnderTest(
            camera, shutter.kind(), shutter.dial(), shutter.reference(), shutter.customs()),
        done ? Phase.AS_LEFT : before.phase(),
        list(wholeDial ? before.markings().speeds() : before.order()),
        done && fewOfCurtains ? USUAL_FIRINGS : before.firingsPerSpeed(),
        OptionalDouble.empty(),
        wholeDial ? List.of() : before.untimedTests(),
        wholeDial ? withoutQuick(texts(before)) : texts(before));
  }

  /** The form for the run on the day after one that was fired wet: the same again, dry. */
  public static RunForm dry(RunSetup wet, String camera) {
    RunForm again = after(wet, camera, true);
    Map<RunOption<?>, String> others = new LinkedHashMap<>(again.options);
    others.put(RunOption.WET, RunOption.WET.words().get(0));
    return again.with(others);
  }

  private static Map<RunOption<?>, String> withoutQuick(Map<RunOption<?>, String> texts) {
    Map<RunOption<?>, String> others = new LinkedHashMap<>(texts);
    others.put(RunOption.QUICK, "");
    return others;
  }

  /**
   * What is known of the next run: the same camera goes on where it is, another one begins as
   * found.
   *
   * @param before the last run, where there was one
   * @param done whether that is done
   * @param here the camera on the bench, once it was named
   * @param usual options of a camera that comes new
   */
  public static RunForm next(
      Optional<RunSetup> before,
      boolean done,
      Optional<Camera> here,
      Map<RunOption<?>, String> usual) {
    boolean sameCamera =
        before.isPresent()
            && (here.isEmpty()
                || before.get().camera().isBlank()
                || before.get().camera().equals(here.get().label()));
    RunForm next =
        sameCamera
            ? after(before.get(), here.map(Camera::label).orElse(before.get().camera()), done)
            : usual(
                    here.map(Camera::label).orElse(""),
                    Phase.AS_FOUND,
                    here.map(Camera::dial).orElse(Dial.builtIn().get(0)))
                .with(usual);
    RunForm known = here.map(next::of).orElse(next);
    return sameCamera ? known : known.asPlanned();
  }

  /**
   * The form for a camera with curtains that nobody has named: the same again where the run before
   * was of such, else as found.
   *
   * @param said what is known of it
   */
  public RunForm ofCurtains(ShutterKind kind, Map<RunOption<?>, String> said) {
    if (shutter.kind() == kind) {
      return this;
    }
    Dial dial = Dial.find("curtain").orElseThrow();
    Map<RunOption<?>, String> others = new LinkedHashMap<>(options);
    others.putAll(said);
    return new RunForm(
            new ShutterUnderTest(
                shutter.camera(), kind, dial.key(), dial.reference(), shutter.customs()),
            Phase.AS_FOUND,
            list(dial.speeds()),
            firings,
            restSeconds,
            List.of(),
            others)
        .asPlanned();
  }

  /** A curtain shutter that comes new is fired at few speeds, a few times each. */
  private RunForm asPlanned() {
    Optional<Dial> dial = Dial.ofKey(shutter.dial());
    if (!shutter.isCurtain() || phase != Phase.AS_FOUND || dial.isEmpty()) {
      return this;
    }
    Optional<MarkedSpeed> flash =
        Optional.ofNullable(options.get(RunOption.X_SPEED)).flatMap(MarkedSpeed::find);
    return new RunForm(
        shutter,
        phase,
        list(CurtainPlan.asFound(dial.get(), flash)),
        CurtainPlan.FOUND_FIRINGS,
        restSeconds,
        untimedTests,
        options);
  }

  /** The same form with what is known of a camera's shutter. */
  private RunForm of(Camera known) {
    Map<RunOption<?>, String> others = new LinkedHashMap<>(options);
    known.frame().ifPresent(frame -> others.put(RunOption.FRAME, frame.text()));
    if (known.shutter().isCurtain(known.dial().name())) {
      CurtainForm.of(known.curtains())
          .texts()
          .forEach(
              (option, text) -> {
                if (!text.isEmpty()) {
                  others.put(option, text);
                }
              });
    }
    return new RunForm(
        new ShutterUnderTest(
            shutter.camera(),
            known.shutter(),
            shutter.dial(),
            shutter.reference(),
            shutter.customs()),
        phase,
        speeds,
        firings,
        restSeconds,
        untimedTests,
        others);
  }

  /** The options of a run as they are written. */
  public static Map<RunOption<?>, String> texts(RunSetup setup) {
    return RunOption.ALL.stream()
        .filter(RunOption::isOffered)
        .collect(Collectors.toMap(option -> option, setup::text));
  }

  /** Speeds as they are typed. */
  public static String list(List<MarkedSpeed> speeds) {
    return speeds.stream().map(MarkedSpeed::label).collect(Collectors.joining(", "));
  }

  /**
   * Stops as they are typed, one by one: {@code 2.8, 4, 5.6}, {@code 2,8 4 5,6} or {@code 2,8; 4}.
   * Where commas could be either, they separate full stops, and otherwise they are decimal commas.
   */
  public static List<String> stops(String typed) {
    String list = typed.strip();
    List<String> separated = Arrays.asList(list.split("[,;\\s]+"));
    boolean blanks = list.matches(".*\\d\\s+\\S.*") && !list.contains(", ");
    boolean fullStops =
        separated.stream()
            .allMatch(each -> FNumber.find(each).filter(FNumber::isFullStop).isPresent());
    return list.contains(".") || (fullStops && !list.contains(";") && !blanks)
        ? separated
        : Arrays.asList(DecimalComma.pointed(list).split("[,;\\s]+"));
  }

  /**
   * Reads the form.
   *
   * @throws Trouble where something cannot be understood: what, and what to do
   */
  public RunSetup read() {
    List<MarkedSpeed> order = order();
    if (order.isEmpty() && untimedTests.isEmpty()) {
      throw wrong(WrongField.SPEEDS, "run.nothingToDo");
    }
    if (isQuick() && order.isEmpty()) {
      throw wrong(WrongField.SPEEDS, "run.quickNoSpeed");
    }
    if (isQuick() && phase != Phase.AS_FOUND) {
      throw wrong(WrongField.PHASE, "run.quickPhase");
    }
    if (firings < 1 || firings > MOST_FIRINGS) {
      throw wrong(WrongField.FIRINGS, "run.badFirings", firings, MOST_FIRINGS);
    }
    AcceptanceCriteria criteria = criteria(options, AcceptanceCriteria.USUAL);
    Map<String, String> noted = new LinkedHashMap<>();
    for (RunOption<?> option : RunOption.CONDITIONS) {
      String text = options.getOrDefault(option, "").strip();
      if (!text.isEmpty()) {
        noted.put(option.name(), canonical(option, text));
      }
    }
    boolean stage = criteria.stages();
    if (stage && order.size() < 2) {
      throw wrong(WrongField.SPEEDS, "run.stagesSpeeds");
    }
    if (stage && isQuick()) {
      throw wrong(RunOption.STAGES.name(), "run.quickOrStages");
    }
    RunConditions conditions = new RunConditions(restSeconds, noted);
    mustFit(conditions);
    boolean onDial =
        Dial.ofKey(shutter.dial()).filter(dial -> dial.speeds().containsAll(order)).isPresent();
    ShutterUnderTest its =
        new ShutterUnderTest(
            shutter.camera(),
            shutter.kind(),
            onDial ? shutter.dial() : Dial.CUSTOM,
            shutter.reference(),
            shutter.customs());
    return new RunSetup(
        its,
        stage ? Phase.ADJUSTING : phase,
        stage
            ? RunPlan.ofStage(order)
            : isQuick()
                ? new RunPlan(QuickSpeeds.of(order), firings, withHeldLast())
                : new RunPlan(order, firings, untimedTests),
        conditions,
        criteria);
  }

  /** The same in one way of writing, so that two runs that mean the same are noted alike. */
  private static <T> String canonical(RunOption<T> option, String text) {
    return option.text(value(option, text));
  }

  /** Sensors are within the frame, and the lamp is far enough from them. */
  private void mustFit(RunConditions conditions) {
    OptionalDouble along =
        conditions
            .get(RunOption.FRAME)
            .map(frame -> frame.alongTravelMillimetres(shutter.kind()))
            .orElse(OptionalDouble.empty());
    Optional<Double> outer = conditions.get(RunOption.OUTER_SENSORS);
    if (along.isPresent() && outer.filter(mm -> mm > along.getAsDouble() / 2).isPresent()) {
      throw wrong(
          RunOption.OUTER_SENSORS.name(),
          "run.option.outer-sensors.outside",
          Millimetres.text(outer.get()),
          Millimetres.text(along.getAsDouble() / 2));
    }
    double gap =
        conditions.get(RunOption.CURTAIN_GAP).orElse(CurtainGeometry.USUAL_GAP_MILLIMETRES);
    Optional<Double> lamp = conditions.get(RunOption.LAMP_DISTANCE);
    if (lamp.filter(mm -> CurtainGeometry.isLampTooNear(gap, mm)).isPresent()) {
      throw wrong(
          RunOption.LAMP_DISTANCE.name(),
          "run.option.lamp-distance.near",
          Millimetres.text(lamp.get()),
          Millimetres.text(gap * CurtainGeometry.LEAST_LAMP_GAPS));
    }
  }

  private static WrongField wrong(String field, String key, Object... about) {
    return new WrongField(field, Words.say(key, about));
  }

  private boolean isQuick() {
    return !options.getOrDefault(RunOption.QUICK, "").isBlank();
  }

  /** B sets the light and comes last; T does the same where a shutter has no B. */
  private List<UntimedTest> withHeldLast() {
    UntimedTest held =
        untimedTests.contains(UntimedTest.T) && !untimedTests.contains(UntimedTest.B)
            ? UntimedTest.T
            : UntimedTest.B;
    return Stream.concat(untimedTests.stream().filter(test -> test != held), Stream.of(held))
        .toList();
  }

  private List<MarkedSpeed> order() {
    List<String> separated = written(DecimalComma.separated(speeds));
    List<String> pointed = written(DecimalComma.pointedEach(speeds));
    boolean commasSeparate =
        separated.stream().allMatch(RunForm::isSpeed)
            || !pointed.stream().allMatch(RunForm::isSpeed);
    return (commasSeparate ? separated : pointed)
        .stream()
            .map(
                each ->
                    MarkedSpeed.find(each)
                        .orElseThrow(() -> wrong(WrongField.SPEEDS, "run.badSpeed", each)))
            .distinct()
            .toList();
  }

  private static List<String> written(List<String> parts) {
    return parts.stream().map(String::strip).filter(each -> !each.isEmpty()).toList();
  }

  private static boolean isSpeed(String text) {
    return MarkedSpeed.find(text).isPresent();
  }

  /**
   * The criteria that were written, the others as they are.
   *
   * @throws Trouble where one cannot be understood
   */
  public static AcceptanceCriteria criteria(
      Map<RunOption<?>, String> written, AcceptanceCriteria others) {
    AcceptanceCriteria criteria = others;
    for (RunOption<?> option : RunOption.CRITERIA) {
      String text = written.get(option);
      if (text != null) {
        criteria = with(criteria, option, text);
      }
    }
    return criteria;
  }

  private static <T> AcceptanceCriteria with(
      AcceptanceCriteria criteria, RunOption<T> option, String text) {
    // A marked stop may be written in several ways; it is kept as it is engraved.
    String written = option == RunOption.STOPS && !text.isBlank() ? engraved(text) : text;
    return criteria.with(option, value(option, written));
  }

  private static String engraved(String stops) {
    try {
      return LightPlan.numbers(stops(stops)).stream()
          .map(FNumber::engraved)
          .collect(Collectors.joining(","));
    } catch (Trouble notUnderstood) {
      throw new WrongField(RunOption.STOPS.name(), notUnderstood.getMessage());
    }
  }

  /**
   * The value that a person wrote for an option.
   *
   * @throws Trouble where it cannot be understood, with a sentence about it
   */
  public static <T> T value(RunOption<T> option, String text) {
    boolean known = option.words().isEmpty() || text.isEmpty() || option.words().contains(text);
    return option
        .find(text)
        .filter(value -> known)
        .orElseThrow(() -> new WrongField(option.name(), OptionWords.bad(option, text)));
  }

  private static Map<String, OptionalDouble> rests() {
    Map<String, OptionalDouble> rests = new LinkedHashMap<>();
    rests.put("unknown", OptionalDouble.empty());
    rests.put("none", OptionalDouble.of(0));
    rests.put("hour", OptionalDouble.of(3600));
    rests.put("day", OptionalDouble.of(86_400));
    rests.put("week", OptionalDouble.of(7 * 86_400));
    rests.put("long", OptionalDouble.of(90 * 86_400));
    return Collections.unmodifiableMap(rests);
  }
}
