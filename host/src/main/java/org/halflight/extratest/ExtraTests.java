package org.halflight.extratest;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.LinkagePress;
import org.halflight.session.Phase;
import org.halflight.session.PlungerAt;
import org.halflight.session.PlungerReading;
import org.halflight.session.RunConditions;
import org.halflight.session.RunSetup;
import org.halflight.session.Source;

/** All that was tried beside the marked speeds. */
public final class ExtraTests {
  /**
   * One run of a session.
   *
   * @param number counts the runs of the session from 1; 0 before one was begun
   * @param phase of the run; empty before a run was begun
   */
  public record Of(int number, Optional<Phase> phase) {}

  /**
   * What there is of a run to find out from.
   *
   * @param criteria what it is judged by
   * @param conditions what was noted about its set-up
   */
  record Run(
      Of of,
      List<FiringResult> firings,
      List<LightReading> readings,
      List<LinkagePress> presses,
      List<PlungerReading> plungers,
      AcceptanceCriteria criteria,
      RunConditions conditions) {}

  /** A kind of thing that is tried; empty where a run has nothing of it. */
  private interface Kind {
    Optional<? extends ExtraTest> of(Run run);
  }

  /** In the order in which they are told. */
  private static final List<Kind> KINDS =
      List.of(
          Linkage::of,
          run -> AdvanceTiming.of(run.of(), run.firings()),
          run -> Bounce.of(run.of(), run.firings()),
          run -> LightLeak.of(run.of(), run.readings()),
          run -> StopScale.of(run.of(), run.readings(), run.criteria().stops().toleranceStops()),
          run ->
              run.criteria().stages()
                  ? Optional.<Holds>empty() // A tap is no test of whether B holds.
                  : Holds.of(run.of(), run.firings()),
          run -> SelfTimer.of(run.of(), run.firings()),
          FlashContact::of);

  private ExtraTests() {}

  /**
   * What firings and light readings of a session say, run by run; nothing for what was not tried.
   *
   * @param firings of the session, in order
   * @param readings of the light with the shutter at rest, in order
   * @param runs what each run was set up for, in order
   */
  public static List<ExtraTest> of(
      List<FiringResult> firings, List<LightReading> readings, List<RunSetup> runs) {
    return of(Evidence.of(firings, readings), runs);
  }

  /**
   * What all that there is says, run by run; nothing for what was not tried.
   *
   * @param runs what each run was set up for, in order
   */
  public static List<ExtraTest> of(Evidence all, List<RunSetup> runs) {
    Set<Of> each = new LinkedHashSet<>();
    all.firings().forEach(firing -> each.add(new Of(firing.run(), firing.phase())));
    all.readings().forEach(reading -> each.add(new Of(reading.run(), reading.phase())));
    all.presses().forEach(press -> each.add(new Of(press.run(), press.phase())));
    all.plungers().forEach(read -> each.add(new Of(read.run(), read.phase())));
    List<ExtraTest> tried = new ArrayList<>();
    for (Of run : each) {
      List<FiringResult> fired =
          all.firings().stream().filter(f -> run.equals(new Of(f.run(), f.phase()))).toList();
      List<LightReading> read =
          all.readings().stream().filter(r -> run.equals(new Of(r.run(), r.phase()))).toList();
      Run its =
          new Run(
              run,
              fired,
              read,
              all.presses().stream().filter(p -> run.equals(new Of(p.run(), p.phase()))).toList(),
              all.plungers().stream()
                  .filter(p -> run.equals(new Of(p.run(), p.phase())))
                  .map(PlungerAt::reading)
                  .toList(),
              criteria(run, runs),
              setup(run, runs).map(RunSetup::conditions).orElse(RunConditions.NONE));
      KINDS.forEach(kind -> kind.of(its).ifPresent(tried::add));
    }
    return List.copyOf(tried);
  }

  private static AcceptanceCriteria criteria(Of run, List<RunSetup> runs) {
    return setup(run, runs).map(RunSetup::criteria).orElse(AcceptanceCriteria.USUAL);
  }

  /**
   * What a run was set up for. Runs of several sessions count anew in each, so a number that does
   * not fit its phase is of another one: then the last run of the phase is taken.
   *
   * @param runs what each run was set up for, in order
   */
  public static Optional<RunSetup> setup(Of run, List<RunSetup> runs) {
    List<RunSetup> ofPhase =
        runs.stream().filter(setup -> run.phase().equals(Optional.of(setup.phase()))).toList();
    return Optional.of(run.number())
        .filter(number -> number >= 1 && number <= runs.size())
        .map(number -> runs.get(number - 1))
        .filter(ofPhase::contains)
        .or(() -> ofPhase.stream().reduce((first, second) -> second));
  }

  /**
   * The stop checks of a session.
   *
   * @param runs what each run was set up for, in order
   * @param toleranceStops how far a stop may be off its marking, above 0; empty for that of the run
   */
  public static List<StopScale> stops(
      List<LightReading> readings, List<RunSetup> runs, OptionalDouble toleranceStops) {
    List<StopScale> scales = new ArrayList<>();
    readings.stream()
        .map(reading -> new Of(reading.run(), reading.phase()))
        .distinct()
        .forEach(
            run ->
                StopScale.of(
                        run,
                        readings.stream()
                            .filter(r -> run.equals(new Of(r.run(), r.phase())))
                            .toList(),
                        toleranceStops.orElse(criteria(run, runs).stops().toleranceStops()))
                    .ifPresent(scales::add));
    return scales;
  }

  /** The least trustworthy source among firings and readings; RIG where there are none. */
  public static Source source(List<FiringResult> firings, List<LightReading> readings) {
    List<Source> sources =
        Stream.concat(
                firings.stream().map(firing -> firing.key().rigSerial()),
                readings.stream().map(LightReading::rigSerial))
            .map(Source::of)
            .toList();
    return sources.contains(Source.PRACTICE)
        ? Source.PRACTICE
        : sources.contains(Source.SIMULATOR) ? Source.SIMULATOR : Source.RIG;
  }
}
