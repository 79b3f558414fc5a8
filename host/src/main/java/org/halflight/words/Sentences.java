package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.Exposure;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringResult;
import org.halflight.session.Measurand;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.Reference;
import org.halflight.verdict.BeyondLimits;
import org.halflight.verdict.Decision;
import org.halflight.verdict.OddOnes;
import org.halflight.verdict.ReboundAtSpeed;
import org.halflight.verdict.RejectedFiring;
import org.halflight.verdict.SpeedStatistics;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;

/** Results in sentences. */
public final class Sentences {
  /** With fewer releases, none of them odd, the share says nothing. Our choice. */
  private static final int ODD_SAID_FROM = 5;

  /** Errors are shown in hundredths of a stop. */
  private static final double LEAST_SHOWN_STOPS = 0.005;

  /** A sound or contact that goes on longer is no clumsy hand, and no self-timer that whirrs. */
  private static final double WITHOUT_END_SECONDS = 20;

  private Sentences() {}

  /** Where figures come from. */
  public static String source(String rigSerial) {
    return Words.of("source", Source.of(rigSerial), rigSerial);
  }

  /** Where the least trustworthy of some figures come from. */
  public static String source(List<FiringResult> firings) {
    Source worst = Source.of(firings);
    return firings.stream()
        .map(firing -> firing.key().rigSerial())
        .filter(serial -> Source.of(serial) == worst)
        .findFirst()
        .map(Sentences::source)
        .orElse("");
  }

  /** What a verdict is about, as it stands in the names of sentences. */
  public static String measurand(Measurand measurand) {
    return Words.key(measurand);
  }

  /** A phase of the work. */
  public static String phase(Phase phase) {
    return Words.of("phase", phase);
  }

  /** The part of a sentence's name that stands for a check. */
  public static String check(UntimedTest check) {
    return Words.key(check);
  }

  /** An outcome in a word or two. */
  public static String outcome(Outcome outcome) {
    return Words.of("outcome", outcome);
  }

  /** The same within a sentence. */
  public static String phaseWithin(Phase phase) {
    return Words.of("phase.within", phase);
  }

  /** How markings are read. */
  public static String reference(Reference reference) {
    return Words.of("reference", reference);
  }

  /** One firing, in one line. */
  public static String firing(FiringResult firing) {
    String line = outcome(firing);
    if (firing.isBySelfTimer()) {
      line +=
          " "
              + Words.say(
                  "firing.note.selfTimer",
                  Numbers.time(firing.releaseDelaySeconds().getAsDouble()));
    }
    if (firing.notes().lightDoubtful()) {
      line += " " + Words.say("firing.note.lightDoubtful");
    }
    if (firing.notes().movedFrom().isPresent()) {
      line += " " + Words.say("firing.note.moved", firing.notes().movedFrom().get());
    }
    return line;
  }

  /** A firing that does not count, in a few words, and why. */
  public static String rejected(RejectedFiring firing) {
    return Words.say(
        "firing.rejected",
        firing.errorStops().isPresent()
            ? Numbers.stopsInWords(firing.errorStops().getAsDouble())
            : outcome(firing.outcome()),
        firing.reason());
  }

  private static String setting(DialSetting setting) {
    return setting.speed().map(Numbers::speed).orElseGet(() -> dial(setting));
  }

  /** What the dial is set to: a speed as it is engraved, or a check by its name. */
  public static String dial(DialSetting setting) {
    return setting.untimedTest().map(Sentences::untimedTest).orElseGet(setting::label);
  }

  /** A check without a marked time, by its name. */
  public static String untimedTest(UntimedTest test) {
    return Words.of("untimed", test);
  }

  private static String outcome(FiringResult firing) {
    String speed = firing.setting().map(Sentences::setting).orElseGet(() -> Words.say("noSpeed"));
    return switch (firing.outcome()) {
      case TIMED -> timed(firing, speed);
      case NEVER_FULLY_OPEN -> neverFullyOpen(firing, speed);
      case STUCK_OPEN ->
          Words.say(
              "firing.stuck",
              speed,
              Numbers.time(((Exposure.StuckOpen) firing.exposure()).lowestSeconds()));
      case DID_NOT_OPEN ->
          Words.say(
              firing
                      .setting()
                      .flatMap(DialSetting::untimedTest)
                      .equals(Optional.of(UntimedTest.LINKAGE))
                  ? "firing.pressWithoutLight"
                  : "firing.didNotOpen",
              speed);
      case DOUBLE -> Words.say("firing.double", speed);
      case OPENS_HOLDS_CLOSES -> Words.say("firing.holds", speed, held(firing));
      case DID_NOT_HOLD -> Words.say("firing.didNotHold", speed, held(firing));
      case LIGHT_WHILE_COCKING ->
          Words.say(firing.notes().leak() ? "firing.cocking.leak" : "firing.cocking");
      case HELD_FOR_LIGHT -> Words.say("firing.heldForLight");
      case NOT_A_SHUTTER_EVENT ->
          Words.say(
              firing.notes().capOn() && !firing.firing().of(Channel.RELEASE).isEmpty()
                  ? "firing.noEvent.cap"
                  : isWithoutEnd(firing, Channel.CONTACT)
                      ? "firing.noEvent.chatter"
                      : isWithoutEnd(firing, Channel.CLICK)
                          ? "firing.noEvent.noise"
                          : "firing.noEvent");
      case UNUSABLE -> Words.say("firing.unusable", speed, why(firing));
    };
  }

  /** Whether a channel went on for so long that the firing had to be cut off. */
  private static boolean isWithoutEnd(FiringResult firing, Channel channel) {
    List<Edge> edges = firing.firing().of(channel);
    return !edges.isEmpty()
        && firing.rate().seconds(edges.get(edges.size() - 1).ticks() - edges.get(0).ticks())
            > WITHOUT_END_SECONDS;
  }

  /**
   * The verdict on one speed: the first sentence says how it is, the others what else there is to
   * know.
   */
  public static List<String> speed(SpeedSummary speed) {
    List<String> sentences = new ArrayList<>();
    for (Outcome outcome :
        List.of(
            Outcome.STUCK_OPEN, Outcome.DID_NOT_OPEN, Outcome.DOUBLE, Outcome.NEVER_FULLY_OPEN)) {
      if (speed.count(outcome) > 0) {
        sentences.add(
            Words.of("speed.outcome", outcome, speed.speed(), speed.count(outcome), speed.tries()));
      }
    }
    if (speed.timingBasis().instead().isPresent()) {
      sentences.add(noVerdict(speed));
    }
    String placed = placed(speed);
    sentences.add(
        speed.isUneven()
            ? Words.say(
                "speed.uneven", placed, Numbers.plainStops(speed.scatterStops().orElseThrow()))
            : placed);
    sentences.addAll(rebound(speed));
    if (speed.timingBasis().count(DecidedBy.CURVE) > 0) {
      sentences.add(
          Words.count(
              "speed.byCurve",
              speed.errors().n(),
              speed.timingBasis().count(DecidedBy.CURVE),
              speed.errors().n()));
    }
    if (speed.verdict() == Verdict.TOO_CLOSE_TO_CALL) {
      sentences.add(further(speed.decision().orElseThrow()));
    }
    speed
        .oddOnes()
        .filter(odd -> odd.odd() > 0 || odd.releases() >= ODD_SAID_FROM)
        .ifPresent(odd -> sentences.add(Words.say("speed.odd", oddOnes(odd))));
    speed
        .afterRestStops()
        .ifPresent(
            stops -> sentences.add(Words.say("speed.afterRest", Numbers.stopsInWords(stops))));
    sentences.addAll(ConditionWords.ofSpeed(speed.conditions()));
    PanelWords.untested(speed).ifPresent(sentences::add);
    if (speed.unusable() > 0) {
      sentences.add(Words.say("speed.unusable", speed.unusable()));
    }
    if (speed.rejected() > 0) {
      sentences.add(
          Words.say(
              "speed.rejected",
              speed.rejected(),
              speed.releases().rejected().stream()
                  .map(RejectedFiring::reason)
                  .distinct()
                  .collect(Collectors.joining(", "))));
    }
    return sentences;
  }

  /**
   * Why the mean is not that of the errors that the firings show, where their digits differ,
   * nothing else says so and the person compares both: while adjusting.
   */
  public static Optional<String> allLight(SpeedSummary speed) {
    ReboundAtSpeed rebound = speed.rebound();
    if (speed.phase() != Phase.ADJUSTING
        || speed.meanStops().isEmpty()
        || rebound.errorsByEdges().n() == 0
        || rebound.addedSeconds() > ReboundAtSpeed.SAID_SHARE * rebound.mainSeconds().orElse(0)) {
      return Optional.empty();
    }
    double more = speed.meanStops().getAsDouble() - rebound.errorsByEdges().mean().get();
    return Math.abs(more) < LEAST_SHOWN_STOPS
        ? Optional.empty()
        : Optional.of(Words.say("speed.allLight", Numbers.bareSize(more)));
  }

  /** What the light of a speed is made of, and whether nobody looked for a rebound. */
  private static List<String> rebound(SpeedSummary speed) {
    ReboundAtSpeed rebound = speed.rebound();
    List<String> sentences = new ArrayList<>();
    if (speed.isReboundOpen()) {
      sentences.add(Words.say("speed.reboundNotLookedAt"));
    }
    if (rebound.mainSeconds().isEmpty()) {
      return sentences;
    }
    double main = rebound.mainSeconds().getAsDouble();
    double least = ReboundAtSpeed.SAID_SHARE * main;
    if (rebound.reboundSeconds() > least) {
      sentences.add(
          Words.say("speed.rebound", Numbers.time(main), Numbers.time(rebound.reboundSeconds())));
    }
    if (rebound.addedSeconds() > least) {
      sentences.add(
          Words.say(
              "speed.reboundByCurve",
              Numbers.time(rebound.addedSeconds()),
              rebound.measuredAt().isEmpty()
                  ? Numbers.speed(speed.speed())
                  : rebound.measuredAt().stream()
                      .map(Numbers::speed)
                      .collect(Collectors.joining(", "))));
    }
    if (rebound.earlySeconds() > least) {
      sentences.add(Words.say("speed.early", Numbers.time(rebound.earlySeconds())));
    }
    if (speed.flapLight() > 0) {
      sentences.add(
          Words.count("speed.flap", speed.flapLight(), speed.flapLight(), speed.errors().n()));
    }
    return sentences;
  }

  private static String noVerdict(SpeedSummary speed) {
    DecidedBy why =
        speed.verdict() == Verdict.CHECK_RIG ? DecidedBy.CHECK_RIG : DecidedBy.FULL_LIGHT_AGAIN;
    return Words.of("speed.noVerdict", why, speed.speed(), speed.timingBasis().count(why));
  }

  private static String further(Decision open) {
    return open.furtherFirings().isEmpty()
        ? Words.say("speed.further.none")
        : open.furtherFirings().getAsInt() == 1
            ? Words.say("speed.further.one")
            : Words.say("speed.further", open.furtherFirings().getAsInt());
  }

  private static String placed(SpeedSummary speed) {
    if (speed.meanStops().isEmpty()) {
      if (speed.conditions().ofMean().isEmpty()) {
        return Words.say("speed.unlike", speed.speed());
      }
      return Words.say(
          speed.timingBasis().instead().isPresent() ? "speed.noVerdict.none" : "speed.tooFew.none",
          speed.speed());
    }
    double mean = speed.meanStops().getAsDouble();
    String stops = Numbers.stopsInWords(mean);
    return switch (speed.verdict()) {
      case TOO_FEW -> Words.say("speed.tooFew.one", speed.speed(), stops);
      case CHECK_RIG, FULL_LIGHT_AGAIN ->
          Words.say("speed.noVerdict.mean", speed.errors().n(), stops);
      case FEWER_THAN_PLANNED ->
          Words.say(
              "speed.fewer",
              speed.speed(),
              stops,
              speed.errors().n(),
              speed.decisionBasis().planned().orElseThrow());
      case SOME_FAILED -> Words.say("speed.someFailed", speed.speed(), stops);
      default ->
          speed.decisionBasis().measurand() == Measurand.ONE_EXPOSURE
              ? oneExposure(speed, mean)
              : usualExposure(speed, mean);
    };
  }

  /** The releases that are not like the others, and how many more there may be. */
  public static String oddOnes(OddOnes odd) {
    return Words.say("odd.ones", odd.odd(), odd.releases(), Numbers.percent(odd.upperShare()));
  }

  private static String usualExposure(SpeedSummary speed, double mean) {
    return switch (speed.verdict()) {
      case WITHIN -> Words.say("speed.within", speed.speed(), Numbers.stopsInWords(mean));
      case SLOW -> Words.say("speed.slow", speed.speed(), Numbers.plainStops(mean));
      case FAST -> Words.say("speed.fast", speed.speed(), Numbers.plainStops(-mean));
      default -> tooClose(speed, mean);
    };
  }

  private static String tooClose(SpeedSummary speed, double mean) {
    BeyondLimits beyond = speed.beyond();
    Verdict byMean = speed.verdictOfMean().orElseThrow();
    String stops = Numbers.stopsInWords(mean);
    return byMean == Verdict.TOO_CLOSE_TO_CALL
        ? Words.say(
            "speed.tooClose",
            speed.speed(),
            stops,
            Numbers.plainStops(speed.guardStops().orElseThrow()))
        : Words.of(
            "speed.tooClose",
            byMean,
            speed.speed(),
            stops,
            beyond.against(byMean),
            beyond.firings(),
            BeyondLimits.most(beyond.firings()));
  }

  private static String oneExposure(SpeedSummary speed, double mean) {
    String share = Numbers.percent(SpeedStatistics.CONTENT);
    String beyond = Numbers.percent(1 - SpeedStatistics.CONTENT);
    String stops = Numbers.stopsInWords(mean);
    return switch (speed.verdict()) {
      case WITHIN -> Words.say("speed.one.within", speed.speed(), share, stops);
      case SLOW -> Words.say("speed.one.slow", speed.speed(), beyond, stops);
      case FAST -> Words.say("speed.one.fast", speed.speed(), beyond, stops);
      default ->
          Words.say(
              "speed.one.tooClose",
              speed.speed(),
              share,
              stops,
              Numbers.plainStops(speed.guardStops().orElseThrow()));
    };
  }

  /** The verdict in a word or two: within, outside, too close to call; and why there is none. */
  public static String verdict(SpeedSummary speed) {
    if (speed.isReboundOpen()) {
      return Words.say("verdict.within.reboundOpen");
    }
    if (speed.verdict() != Verdict.SOME_FAILED) {
      return Words.of("verdict", speed.verdict());
    }
    List<Outcome> kinds =
        SpeedSummary.FAILURES.stream().filter(each -> speed.count(each) > 0).toList();
    return kinds.size() == 1
        ? Words.say("verdict.some-failed", speed.failed(), speed.tries(), outcome(kinds.get(0)))
        : Words.say("verdict.some-failed.several", speed.failed(), speed.tries());
  }

  private static String timed(FiringResult firing, String speed) {
    Exposure.Timed timed = (Exposure.Timed) firing.exposure();
    String line =
        firing.effectiveSeconds().isPresent()
            ? timed(firing, speed, firing.effectiveSeconds().getAsDouble())
            : Words.say("firing.openFor", speed, Numbers.time(timed.widthLowSeconds()));
    Optional<String> by = decided(firing);
    line = by.isPresent() ? line + " " + by.get() : line;
    String flags =
        timed.flags().stream()
            .sorted()
            .map(
                flag ->
                    Words.of(
                        "firing.flag",
                        flag,
                        Numbers.percent(Exposure.LOW_LEVEL_ONLY_BOUND),
                        Numbers.time(timed.mainSeconds()),
                        Numbers.time(timed.reboundSeconds()),
                        Numbers.time(timed.earlySeconds()),
                        Numbers.percent(timed.earlyLightShare())))
            .collect(Collectors.joining(" "));
    return flags.isEmpty() ? line : line + " " + flags;
  }

  private static String timed(FiringResult firing, String speed, double seconds) {
    String time = timeAndTarget(firing, seconds);
    return firing.errorStops().isPresent()
        ? Words.say(
            "firing.timed", speed, Numbers.stopsInWords(firing.errorStops().getAsDouble()), time)
        : firing.untimedTest().isPresent()
            ? Words.say("firing.timed.check", speed, time)
            : Words.say("firing.timed.noSpeed", time);
  }

  private static String timeAndTarget(FiringResult firing, double seconds) {
    return firing.referenceSeconds().isPresent()
        ? Numbers.timeAndTarget(seconds, firing.referenceSeconds().getAsDouble())
        : Numbers.timeInUnit(seconds).text();
  }

  private static String neverFullyOpen(FiringResult firing, String speed) {
    String line =
        firing.errorStops().isPresent()
            ? Words.say(
                "firing.never.timed",
                speed,
                Numbers.stopsInWords(firing.errorStops().getAsDouble()),
                timeAndTarget(firing, firing.effectiveSeconds().orElseThrow()))
            : never(speed, (Exposure.NeverFullyOpen) firing.exposure());
    return decided(firing).map(by -> line + " " + by).orElse(line);
  }

  /**
   * What decides the time of a firing, or what to do so that something does; empty where edges
   * alone decide, which is the usual case.
   */
  static Optional<String> decided(FiringResult firing) {
    return firing
        .decidedBy()
        .filter(by -> by != DecidedBy.EDGES && by != DecidedBy.EDGES_CORRECTED)
        .map(
            by -> {
              OptionalDouble after =
                  firing.curve().map(FiringCurve::fullLightAfter).orElse(OptionalDouble.empty());
              return by == DecidedBy.FULL_LIGHT_AGAIN && after.isPresent()
                  ? Words.say("firing.decided.light-changed", Numbers.percent(after.getAsDouble()))
                  : Words.of("firing.decided", by);
            });
  }

  /** What decides, in a word or two. */
  public static String decidedBy(DecidedBy by) {
    return Words.of("decidedBy", by);
  }

  /** What the times of a speed are by, in a few words; empty without a firing. */
  public static String decidedBy(SpeedSummary speed) {
    return speed.timingBasis().kinds().stream()
        .map(Sentences::decidedBy)
        .collect(Collectors.joining(", "));
  }

  private static String held(FiringResult firing) {
    return Numbers.time(((Exposure.Timed) firing.exposure()).widthLowSeconds());
  }

  private static String never(String speed, Exposure.NeverFullyOpen bounds) {
    if (bounds.effectiveSeconds().isPresent()) {
      return Words.say(
          "firing.never.curve",
          speed,
          Numbers.timeInUnit(bounds.effectiveSeconds().getAsDouble()).text());
    }
    return bounds.highestSeconds().isPresent()
        ? Words.say(
            "firing.never",
            speed,
            Numbers.time(bounds.lowestSeconds()),
            Numbers.time(bounds.highestSeconds().getAsDouble()))
        : Words.say("firing.never.open", speed, Numbers.time(bounds.lowestSeconds()));
  }

  private static String why(FiringResult firing) {
    Exposure.Unusable unusable = (Exposure.Unusable) firing.exposure();
    String damage =
        unusable.damage().stream()
            .map(each -> Words.of("damage", each))
            .collect(Collectors.joining(", "));
    return Words.of("why", unusable.reason(), damage);
  }
}
