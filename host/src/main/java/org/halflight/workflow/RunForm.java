package org.halflight.workflow;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.halflight.bench.LightPlan;
import org.halflight.extratest.FNumber;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.CameraCustoms;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.trouble.Trouble;
import org.halflight.words.OptionWords;
import org.halflight.words.Words;

/**
 * The set-up of a run as it is typed and chosen, in the window or on the command line.
 *
 * @param camera the owner's label; may be empty
 * @param phase where in the work it stands
 * @param dial key of a dial, see {@link Dial#key}
 * @param speeds the marked speeds to fire, with commas between, in the order wanted
 * @param reference how markings are read
 * @param firings good firings wanted of each speed
 * @param restSeconds how long the shutter has rested, where known
 * @param checks B, T and other checks that are wanted
 * @param customs what the camera wants
 * @param options what was written or chosen, by option; usual where there is nothing
 */
public record RunForm(
    String camera,
    Phase phase,
    String dial,
    String speeds,
    Reference reference,
    int firings,
    OptionalDouble restSeconds,
    List<UntimedTest> checks,
    CameraCustoms customs,
    Map<RunOption<?>, String> options) {
  /** More firings of a speed than this are not planned. */
  public static final int MOST_FIRINGS = 100;

  /** So many are planned where nobody says. */
  public static final int USUAL_FIRINGS = 5;

  /** Rests to choose from, in seconds, by the name of their words; empty for not noted. */
  public static final Map<String, OptionalDouble> RESTS = rests();

  public RunForm {
    Objects.requireNonNull(camera);
    Objects.requireNonNull(phase);
    Objects.requireNonNull(dial);
    Objects.requireNonNull(speeds);
    Objects.requireNonNull(reference);
    Objects.requireNonNull(restSeconds);
    Objects.requireNonNull(customs);
    checks = List.copyOf(checks);
    options = Map.copyOf(options);
  }

  /** The same form with other options. */
  public RunForm with(Map<RunOption<?>, String> others) {
    return new RunForm(
        camera, phase, dial, speeds, reference, firings, restSeconds, checks, customs, others);
  }

  /** A form of a phase with everything else as it usually is. */
  public static RunForm usual(String camera, Phase phase, Dial dial) {
    return new RunForm(
        camera,
        phase,
        dial.key(),
        list(dial.speeds()),
        dial.reference(),
        USUAL_FIRINGS,
        OptionalDouble.empty(),
        List.of(),
        CameraCustoms.NONE,
        Map.of());
  }

  /** The form for the run that follows another: the next phase once that is done. */
  public static RunForm after(RunSetup before, String camera, boolean done) {
    return new RunForm(
        camera,
        done ? Phase.AS_LEFT : before.phase(),
        before.dial(),
        list(before.order()),
        before.reference(),
        before.firingsPerSpeed(),
        OptionalDouble.empty(),
        before.untimedTests(),
        before.customs(),
        texts(before));
  }

  /** The options of a run as they are written. */
  public static Map<RunOption<?>, String> texts(RunSetup setup) {
    Map<RunOption<?>, String> texts = new LinkedHashMap<>();
    RunOption.CRITERIA.forEach(option -> texts.put(option, setup.criteria().text(option)));
    RunOption.CONDITIONS.forEach(
        option -> texts.put(option, setup.conditions().noted().getOrDefault(option.name(), "")));
    return texts;
  }

  /** Speeds as they are typed. */
  public static String list(List<MarkedSpeed> speeds) {
    return speeds.stream().map(MarkedSpeed::label).collect(Collectors.joining(", "));
  }

  /** Stops as they are typed, one by one. */
  public static List<String> stops(String typed) {
    return Arrays.asList(typed.strip().split("[,;\\s]+"));
  }

  /**
   * Reads the form.
   *
   * @throws Trouble where something cannot be understood: what, and what to do
   */
  public RunSetup read() {
    List<MarkedSpeed> order = order();
    if (order.isEmpty() && checks.isEmpty()) {
      throw new Trouble(Words.say("run.nothingToDo"));
    }
    if (firings < 1 || firings > MOST_FIRINGS) {
      throw new Trouble(Words.say("run.badFirings", firings, MOST_FIRINGS));
    }
    AcceptanceCriteria criteria = criteria(options, AcceptanceCriteria.USUAL);
    Map<String, String> noted = new LinkedHashMap<>();
    for (RunOption<?> option : RunOption.CONDITIONS) {
      String text = options.getOrDefault(option, "").strip();
      if (!text.isEmpty()) {
        value(option, text);
        noted.put(option.name(), text);
      }
    }
    boolean onDial = Dial.ofKey(dial).filter(d -> d.speeds().containsAll(order)).isPresent();
    return new RunSetup(
        camera,
        phase,
        onDial ? dial : Dial.CUSTOM,
        order,
        reference,
        firings,
        checks,
        customs,
        new RunConditions(restSeconds, noted),
        criteria);
  }

  private List<MarkedSpeed> order() {
    return Arrays.stream(speeds.split("[,;]", -1))
        .map(String::strip)
        .filter(each -> !each.isEmpty())
        .map(
            each ->
                MarkedSpeed.find(each)
                    .orElseThrow(() -> new Trouble(Words.say("run.badSpeed", each))))
        .distinct()
        .toList();
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
    String written =
        option == RunOption.STOPS && !text.isBlank()
            ? LightPlan.numbers(stops(text)).stream()
                .map(FNumber::engraved)
                .collect(Collectors.joining(","))
            : text;
    return criteria.with(option, value(option, written));
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
        .orElseThrow(() -> new Trouble(OptionWords.bad(option, text)));
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
