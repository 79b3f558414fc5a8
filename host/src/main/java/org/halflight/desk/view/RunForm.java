package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.CameraCustoms;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * The set-up of a run as it is typed and chosen.
 *
 * @param camera the owner's label; may be empty
 * @param phase where in the work it stands
 * @param dial key of a dial, see {@link Dial#key}
 * @param speeds the marked speeds to fire, with commas between, in the order wanted
 * @param exact whether markings are held against the exact times behind them
 * @param firings good firings wanted of each speed
 * @param restSeconds how long the shutter has rested, where known
 * @param noted conditions by name
 * @param checks B and T where they are wanted
 * @param topBeforeCocking whether the top speed is to be set before cocking
 * @param bladesShut whether the blades stay shut when the shutter is cocked
 * @param criteria what its verdicts are about
 */
public record RunForm(
    String camera,
    Phase phase,
    String dial,
    String speeds,
    boolean exact,
    int firings,
    OptionalDouble restSeconds,
    Map<String, String> noted,
    List<UntimedTest> checks,
    boolean topBeforeCocking,
    boolean bladesShut,
    CriteriaForm criteria) {
  /** More firings of a speed than this are not planned. */
  public static final int MOST_FIRINGS = 100;

  /** Rests to choose from, in seconds, by the name of their words; empty for not noted. */
  public static final Map<String, OptionalDouble> RESTS = rests();

  /**
   * What a form comes to.
   *
   * @param setup empty where something cannot be understood
   * @param trouble what, and what to do; empty otherwise
   */
  public record Result(Optional<RunSetup> setup, String trouble) {}

  public RunForm {
    Objects.requireNonNull(criteria);
    Objects.requireNonNull(camera);
    Objects.requireNonNull(phase);
    Objects.requireNonNull(dial);
    Objects.requireNonNull(speeds);
    Objects.requireNonNull(restSeconds);
    noted = Map.copyOf(noted);
    checks = List.copyOf(checks);
  }

  /** The same form with verdicts about something else. */
  public RunForm withCriteria(CriteriaForm other) {
    return new RunForm(
        camera,
        phase,
        dial,
        speeds,
        exact,
        firings,
        restSeconds,
        noted,
        checks,
        topBeforeCocking,
        bladesShut,
        other);
  }

  /** A form of a phase with everything else as it usually is. */
  public static RunForm usual(String camera, Phase phase, Dial dial) {
    return new RunForm(
        camera,
        phase,
        dial.key(),
        list(dial),
        dial.reference() == Reference.EXACT,
        5,
        OptionalDouble.empty(),
        Map.of(),
        List.of(),
        false,
        false,
        CriteriaForm.USUAL);
  }

  /** The form for the run that follows another: the next phase once that is done. */
  public static RunForm after(RunSetup before, String camera, boolean done) {
    Phase phase =
        done
            ? switch (before.phase()) {
              case AS_FOUND, ADJUSTING -> Phase.AS_LEFT;
              case AS_LEFT -> Phase.AS_LEFT;
            }
            : before.phase();
    return new RunForm(
        camera,
        phase,
        before.dial(),
        before.order().stream().map(MarkedSpeed::label).collect(Collectors.joining(", ")),
        before.reference() == Reference.EXACT,
        before.firingsPerSpeed(),
        OptionalDouble.empty(),
        before.conditions().noted(),
        before.untimedTests(),
        before.customs().topSpeedBeforeCocking(),
        before.customs().bladesShutWhileCocking(),
        CriteriaForm.of(before.criteria()));
  }

  /** The speeds of a dial as they are typed. */
  public static String list(Dial dial) {
    return dial.speeds().stream().map(MarkedSpeed::label).collect(Collectors.joining(", "));
  }

  /** Reads the form. */
  public Result read() {
    List<MarkedSpeed> order = new ArrayList<>();
    for (String each : Arrays.stream(speeds.split("[,;]", -1)).map(String::strip).toList()) {
      if (each.isEmpty()) {
        continue;
      }
      Optional<MarkedSpeed> speed = MarkedSpeed.find(each);
      if (speed.isEmpty()) {
        return new Result(Optional.empty(), Words.say("desk.run.badSpeed", each));
      }
      if (!order.contains(speed.get())) {
        order.add(speed.get());
      }
    }
    if (order.isEmpty() && checks.isEmpty()) {
      return new Result(Optional.empty(), Words.say("desk.run.noSpeed"));
    }
    if (firings < 1 || firings > MOST_FIRINGS) {
      return new Result(Optional.empty(), Words.say("desk.run.badFirings", MOST_FIRINGS));
    }
    AcceptanceCriteria read;
    try {
      read = criteria.read();
    } catch (Trouble notUnderstood) {
      return new Result(Optional.empty(), notUnderstood.getMessage());
    }
    boolean onDial = Dial.ofKey(dial).filter(d -> d.speeds().containsAll(order)).isPresent();
    return new Result(
        Optional.of(
            new RunSetup(
                camera,
                phase,
                onDial ? dial : Dial.CUSTOM,
                order,
                exact ? Reference.EXACT : Reference.LITERAL,
                firings,
                checks,
                new CameraCustoms(topBeforeCocking, bladesShut),
                new RunConditions(restSeconds, noted),
                read)),
        "");
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
