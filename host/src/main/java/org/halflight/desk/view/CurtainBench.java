package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Exposure;
import org.halflight.session.AdjustedAt;
import org.halflight.session.Adjuster;
import org.halflight.session.AdjusterTurn;
import org.halflight.session.CurtainStep;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.SpringSettling;
import org.halflight.session.TurnCount;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainAdvice;
import org.halflight.verdict.CurtainTrials;
import org.halflight.words.CurtainWords;
import org.halflight.words.Words;

/** A curtain shutter on the bench: the step of adjusting that is open, and what was turned. */
public final class CurtainBench {
  /** One key turns so much, in turns. Our own choice: half of what the stop rule allows. */
  public static final double KEY_TURNS = 0.125;

  private static final int EIGHTHS = 8;

  private CurtainBench() {}

  /** Whether the run is of a shutter whose curtains run from edge to edge. */
  public static boolean isCurtain(BenchView view) {
    return view.setup().filter(its -> its.shutter().kind().hasTwoCurtains()).isPresent();
  }

  /** Whether the person is led through the adjusting: the outer sensors must see the curtains. */
  public static boolean isLed(BenchView view) {
    return view.setup().filter(CurtainBench::isLed).isPresent()
        && view.two().isEmpty()
        && !isCentreOnly(view);
  }

  /** Whether a run is one in which curtains are adjusted step by step. */
  static boolean isLed(RunSetup setup) {
    return setup.shutter().kind().hasTwoCurtains()
        && setup.phase() == Phase.ADJUSTING
        && !setup.isStage();
  }

  /** Whether the last time was taken at the centre alone, as on a small rig. */
  static boolean isCentreOnly(BenchView view) {
    for (int i = view.results().size() - 1; i >= 0; i--) {
      if (view.results().get(i).exposure() instanceof Exposure.Timed timed) {
        return timed.curtains().isEmpty();
      }
    }
    return false;
  }

  /** The step that is open; the first before one was chosen. */
  public static CurtainStep step(BenchView view) {
    return view.step().orElse(CurtainStep.CLEAN);
  }

  /** What the camera has to turn. */
  public static Set<Adjuster> has(BenchView view) {
    return view.setup().map(its -> its.criteria().get(RunOption.ADJUSTERS)).orElse(Adjuster.ALL);
  }

  /** The step after the one that is open. */
  public static CurtainStep next(BenchView view) {
    return view.step().map(step -> step.next(has(view))).orElseGet(() -> first(view));
  }

  /** Nothing is open yet: cleaning was shown, so the first with something to turn. */
  private static CurtainStep first(BenchView view) {
    return CurtainStep.CLEAN.next(has(view));
  }

  /** What the keys turn: what the step is about, and where it has several what is advised. */
  static Optional<Adjuster> adjuster(BenchView view, Optional<CurtainAdvice> advice) {
    Set<Adjuster> ofStep = step(view).adjusters();
    List<Adjuster> can = has(view).stream().filter(ofStep::contains).sorted().toList();
    return advice
        .flatMap(its -> adjuster(its.act()))
        .filter(can::contains)
        // The second curtain is the one that bounces at the end.
        .or(() -> can.stream().filter(Adjuster.SECOND_BRAKE::equals).findFirst())
        .or(() -> can.stream().findFirst());
  }

  private static Optional<Adjuster> adjuster(CurtainAdvice.Act act) {
    return switch (act) {
      case MORE_FIRST, LESS_FIRST -> Optional.of(Adjuster.FIRST_TENSION);
      case MORE_SECOND, LESS_SECOND -> Optional.of(Adjuster.SECOND_TENSION);
      case NARROWER_SLIT, WIDER_SLIT -> Optional.of(Adjuster.SLIT);
      case MORE_FIRST_BRAKE -> Optional.of(Adjuster.FIRST_BRAKE);
      case MORE_SECOND_BRAKE -> Optional.of(Adjuster.SECOND_BRAKE);
      case CONTACT_LATER, CONTACT_SOONER -> Optional.of(Adjuster.CONTACT);
      case ESCAPEMENT -> Optional.of(Adjuster.ESCAPEMENT);
      default -> Optional.empty();
    };
  }

  /** The next adjuster whose place as found nobody has noted. */
  static Optional<Adjuster> notFound(BenchView view) {
    return has(view).stream()
        .sorted()
        .filter(
            adjuster ->
                view.turns().stream()
                    .noneMatch(turn -> turn.isAsFound() && turn.adjuster() == adjuster))
        .findFirst();
  }

  /** What is written already where an adjustment is asked for; empty for anything. */
  public static String begun(BenchView view, Optional<CurtainAdvice> advice) {
    if (!isLed(view)) {
      return "";
    }
    return step(view) == CurtainStep.CLEAN
        ? notFound(view).map(its -> Adjuster.WORDS.word(its) + " found ").orElse("")
        : adjuster(view, advice).map(its -> Adjuster.WORDS.word(its) + " +").orElse("");
  }

  /** How many firings are still to settle a spring. */
  static int toSettle(BenchView view) {
    return SpringSettling.toCome(view.run(), view.marks(), view.results());
  }

  /** Good firings of the shown speed that count since the last adjustment. */
  static int good(BenchView view) {
    CurtainTrials.Trial last = CurtainTrials.of(view.run(), view.marks(), view.results()).last();
    return view.shown().flatMap(DialSetting::speed).map(last::good).orElse(0);
  }

  /** How far an adjuster was turned since it was found. */
  static OptionalDouble change(BenchView view, Adjuster adjuster) {
    TurnCount count = TurnCount.of(view.turns()).get(adjuster);
    return count == null || view.turns().stream().allMatch(AdjusterTurn::isAsFound)
        ? OptionalDouble.empty()
        : OptionalDouble.of(count.change());
  }

  /** Whether a spring was wound further than weakness asks for. */
  static boolean isTooFar(BenchView view) {
    return TurnCount.isTooFar(view.turns());
  }

  /** What was turned so far, such as {@code first curtain +1/4}; empty where nothing was. */
  static String turned(BenchView view) {
    List<String> turned = new ArrayList<>();
    for (Map.Entry<Adjuster, TurnCount> entry : TurnCount.of(view.turns()).entrySet()) {
      double change = entry.getValue().change();
      if (change != 0 || entry.getValue().found().isPresent()) {
        turned.add(
            Words.say(
                entry.getValue().found().isPresent()
                    ? "desk.curtain.turned.of"
                    : "desk.curtain.turned.by",
                Words.of("desk.curtain.adjuster", entry.getKey()),
                turns(change),
                String.format(Locale.ROOT, "%.2f", entry.getValue().found().orElse(0))));
      }
    }
    return turned.isEmpty()
        ? ""
        : Words.say("desk.curtain.turned", turned.stream().collect(Collectors.joining("; ")));
  }

  /** Turns with their sign, in eighths where they are so many: {@code +1 3/8}. */
  static String turns(double turns) {
    long eighths = Math.round(Math.abs(turns) * EIGHTHS);
    String size;
    if (Math.abs(Math.abs(turns) * EIGHTHS - eighths) > 0.01) {
      size = String.format(Locale.ROOT, "%.2f", Math.abs(turns));
    } else {
      int common = eighths % 4 == 0 ? 4 : eighths % 2 == 0 ? 2 : 1;
      long part = eighths % EIGHTHS;
      String whole = eighths >= EIGHTHS || part == 0 ? String.valueOf(eighths / EIGHTHS) : "";
      size = (whole + (part == 0 ? "" : " " + part / common + "/" + EIGHTHS / common)).strip();
    }
    return size.equals("0") ? size : (turns < 0 ? "\u2212" : "+") + size;
  }

  /** What was done before a trial, in a few letters. */
  static String trial(AdjustedAt mark, int number) {
    return AdjusterTurn.find(mark.words())
        .filter(turn -> !turn.isAsFound())
        .map(
            turn ->
                Words.say(
                    "desk.curtain.trial",
                    Words.of("desk.curtain.adjuster", turn.adjuster()),
                    turns(turn.turns().orElseThrow())))
        .orElseGet(() -> Words.say("desk.curtain.other", number));
  }

  /** The head of the column while somebody is led: which step of how many. */
  static String heading(BenchView view, RunSetup setup) {
    CurtainStep step = step(view);
    String camera = setup.camera().isBlank() ? view.camera() : setup.camera();
    String heading =
        Words.say(
            "desk.curtain.heading",
            step.number(),
            CurtainStep.NEXT_DAY.number(),
            CurtainWords.step(step));
    return camera.isBlank() ? heading : Words.say("desk.next.heading", heading, camera);
  }

  /** How often the shown speed was fired since the last adjustment. */
  static NextText next(BenchView view, RunSetup setup, String dial) {
    int settle = toSettle(view);
    int good = good(view);
    Optional<MarkedSpeed> speed = view.shown().flatMap(DialSetting::speed);
    return new NextText(
        NextText.set(),
        heading(view, setup),
        dial,
        settle > 0
            ? Words.say("desk.curtain.settle", settle)
            : Words.say(good < CurtainTrials.FIRINGS ? "desk.curtain.fire" : "desk.curtain.turn"),
        settle > 0 ? 0 : Math.min(good, CurtainTrials.FIRINGS),
        speed.isEmpty() || settle > 0 ? 0 : CurtainTrials.FIRINGS,
        settle > 0
            ? Words.say(
                "desk.curtain.settling",
                SpringSettling.FIRINGS - settle + 1,
                SpringSettling.FIRINGS)
            : speed.isEmpty()
                ? ""
                : good > CurtainTrials.FIRINGS
                    ? Words.say("desk.next.adjustingCount", good)
                    : Words.say("desk.next.count", good, CurtainTrials.FIRINGS),
        false);
  }

  /** The curtains of a firing; empty where it has none. */
  static Optional<CurtainTravel> travel(Exposure exposure) {
    return exposure instanceof Exposure.Timed timed
            && timed.travel() instanceof CurtainTravel travel
        ? Optional.of(travel)
        : Optional.empty();
  }

  /** The same of the last one. */
  static Optional<CurtainTravel> travel(LastFiring last) {
    return last instanceof LastFiring.Settled settled
        ? travel(settled.result())
        : travel(((LastFiring.Provisional) last).exposure());
  }

  private static Optional<CurtainTravel> travel(FiringResult result) {
    return result.rejection().isEmpty() ? travel(result.exposure()) : Optional.empty();
  }
}
