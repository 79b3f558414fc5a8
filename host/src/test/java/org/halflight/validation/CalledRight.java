package org.halflight.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.halflight.extratest.GapVerdict;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.LinkageJudgement.Verdict;
import org.halflight.extratest.PressOutcome;
import org.halflight.extratest.SqueezeOrder;
import org.halflight.session.GapLimits;
import org.halflight.session.LinkageStep;
import org.halflight.session.PlungerReading;
import org.halflight.validation.PressedCamera.Led;
import org.halflight.validation.PressedCamera.Sensor;
import org.halflight.validation.invented.Button;
import org.halflight.validation.invented.Draws;
import org.halflight.validation.invented.Pace;

/**
 * How often the linkage is called right, against the true gap between the two places in the stroke
 * of the button.
 */
final class CalledRight {
  /** As the program tells a person to press who is to stop. */
  static final Pace TOLD = Pace.over(5).withHandOnWind().rolledOn();

  static final Led BY_LIGHT = new Led(TOLD, Sensor.LIGHT_AND_KEY, 0);
  static final Led BY_CLICK = new Led(TOLD, Sensor.CLICK, 0);
  static final Led BY_CLICK_AND_BUTTON = new Led(TOLD, Sensor.CLICK_AND_BUTTON, 0);
  static final Led BY_KNOB = new Led(Pace.over(5).withBandOnWind().rolledOn(), Sensor.KNOB, 0);

  private static final Led OVER_A_SECOND = new Led(Pace.over(1), Sensor.LIGHT_AND_KEY, 0);
  private static final List<Button.Kind> KINDS = List.of(Button.Kind.values());
  private static final int CAMERAS = 200;

  /** Of each gap of a plot. */
  private static final int PLOTTED = 60;

  private static final double[] GAPS =
      IntStream.rangeClosed(-12, 24).mapToDouble(i -> i / 20.0).toArray();

  /** Where the targets lie. */
  private static final double[] MARKS = {-0.6, -0.4, -0.3, -0.2, 0, 0.1, 0.2, 0.3, 0.4, 0.6};

  /** Between what has to be called right and what has to be called wrong. */
  private static final GapLimits LIMITS = new GapLimits(-0.15, 0.25);

  private CalledRight() {}

  /** What was made before, since several tables ask for the same. */
  private record Made(double gapMm, Led led, int cameras) {}

  private static final Map<Made, List<PressedCamera>> MADE = new ConcurrentHashMap<>();

  /** Invented cameras of all kinds in turn, each with a person of its own. */
  static List<PressedCamera> cameras(double gapMm, Led led, int cameras) {
    return MADE.computeIfAbsent(
        new Made(gapMm, led, cameras),
        made ->
            IntStream.range(0, cameras)
                .parallel()
                .mapToObj(i -> camera(gapMm, KINDS.get(i % KINDS.size()), led, i))
                .toList());
  }

  private static PressedCamera camera(double gapMm, Button.Kind kind, Led led, int number) {
    return PressedCamera.of(gapMm, kind, led, draws(gapMm, number));
  }

  /** The same people and cameras however they are asked, another set at each gap. */
  private static Draws draws(double gapMm, int number) {
    long seed = Validation.SEED + 1_000_003L * number + 7919L * Math.round(1000 * gapMm);
    return new Draws(seed * 0x9E3779B97F4A7C15L);
  }

  /** The part of cameras of which something holds. */
  static double part(List<PressedCamera> cameras, Predicate<PressedCamera> holds) {
    return cameras.stream().filter(holds).count() / (double) cameras.size();
  }

  static boolean isRight(PressedCamera camera) {
    return camera.judged().verdict() == Verdict.RIGHT;
  }

  /** The same by a rule of so many. */
  private static Predicate<PressedCamera> fewerAdvanceOnly(int than) {
    return camera ->
        count(camera, PressOutcome.SHUTTER_ONLY) == 0
            && count(camera, PressOutcome.ADVANCE_ONLY) < than;
  }

  private static long count(PressedCamera camera, PressOutcome outcome) {
    return camera.presses().stream().filter(press -> press.outcome() == outcome).count();
  }

  static List<String> page() {
    List<String> page = new ArrayList<>();
    page.add("## Is a linkage called right that is right?");
    page.add("");
    page.add(
        "**Simulated.** The truth is in millimetres of the stroke of a button: one place where the"
            + " advance unlocks, one where the shutter trips. Cameras and fingers are"
            + " invented (`validation.invented`), and share no class with the program or the practice rig. Every figure of them is our own; none was measured on a camera or a hand.");
    page.add("");
    page.add(
        "* The first place is 1.2 to 2.8 mm down. Both places scatter by 0.01 to 0.05 mm from press to press.");
    page.add(
        "* The load rises before each place and drops behind it, by up to 0.45 N at the advance and 0.1 to 0.8 N at the shutter.");
    page.add(
        "* A quarter of the cameras each is plain, has a silent pawl, locks again when the button returns, or does both of these.");
    page.add("* First light comes 2 to 10 ms after the trip. The shutter is at 1/8.");
    page.add(
        "* The finger has a mass, a spring of 0.3 to 0.9 N/mm and a damper. A drop of the load makes it jump. It trembles by 0.01 to 0.05 mm.");
    page.add(
        "* People press evenly, ever faster, ever slower, with a rest or unevenly. Their pace differs by a third from what they were asked.");
    page.add(
        "* They react after 0.2 s (median, lognormal), counted from the first thing they notice: a sound, a jump of the button, light. Then the finger stops and returns.");
    page.add("");
    page.add(
        "'As asked' means: over five seconds, the fingertip rolled on from the body, the other hand turning the wind lightly. The targets are green.");
    page.add("");
    page.add("![How often the linkage is called right, against the gap](images/linkage-gap.svg)");
    page.add("");
    double[] told = percent(BY_LIGHT);
    double[] knob = percent(BY_KNOB);
    targets("How often the linkage is called right (simulated)")
        .line("light and key, as asked (the same with a click sensor)", GAPS, told)
        .line(
            "the same, wrong from two of five paused presses on",
            GAPS,
            percent(BY_LIGHT, fewerAdvanceOnly(2)))
        .line("knob contact: its rubber band turns the wind", GAPS, knob)
        .line("light and key, pressed over a second as usual", GAPS, percent(OVER_A_SECOND))
        .write("linkage-gap.svg");
    page.add(
        String.format(
            Locale.ROOT,
            "With a click sensor the share called right is the same at %d of the %d gaps below: the order in a squeeze is shown, and never judged.",
            Arrays.stream(MARKS).filter(CalledRight::clickChangesNothing).count(),
            MARKS.length));
    page.add("");
    page.add("| called right, by | 0 | advance 0.1 mm | advance 0.4 mm | shutter 0.3 mm |");
    page.add("|---|---|---|---|---|");
    page.add("| target | at least 95 % | at least 95 % | at most 5 % | at most 5 % |");
    page.add(reached("the program's rule", CalledRight::isRight));
    page.add(
        reached(
            "wrong if two of five paused presses unlock the advance alone", fewerAdvanceOnly(2)));
    page.add("");
    page.add(
        "One target is missed: with the shutter first by 0.3 mm, the program's rule calls one linkage in twelve right. The gap stays hidden where the load drops most at the trip: the finger is thrown through both places and cannot stop between them. The same happens to the owner's finger. The plunger below finds it.");
    page.add("");
    page.add("Shares of " + CAMERAS + " cameras, light and key, as asked:");
    page.add("");
    page.addAll(verdicts());
    page.add("");
    page.add("### How the person is asked to press");
    page.add("");
    page.add(
        "The first row of each pair has the program's rule. In the second a linkage is wrong if two of five paused presses unlock the advance alone.");
    page.add("");
    page.addAll(instructions());
    page.add("");
    page.add("### Which cameras are missed");
    page.add("");
    page.addAll(kinds());
    page.add("");
    page.add("### What this depends on");
    page.add("");
    page.add(
        "Nobody has measured these figures. Here each is changed by itself, light and key, as asked.");
    page.add("");
    page.addAll(natures());
    page.add("");
    page.add("### Wrong keys");
    page.add("");
    page.add(
        "Some people press the wrong one of the two wind keys. After a full press that says 'shutter only', which is wrong at once.");
    page.add("");
    page.add("![The same with wrong keys](images/linkage-wrong-keys.svg)");
    page.add("");
    targets("Light and key, as asked, with wrong keys (simulated)")
        .line("none", GAPS, told)
        .line("1 in 200", GAPS, percent(new Led(TOLD, Sensor.LIGHT_AND_KEY, 0.005)))
        .line("1 in 50", GAPS, percent(new Led(TOLD, Sensor.LIGHT_AND_KEY, 0.02)))
        .write("linkage-wrong-keys.svg");
    page.add("### Order in a slow squeeze");
    page.add("");
    page.add(
        "What is shown of slow squeezes over 1.5 s, without a verdict: advance first, one click, shutter first, not known.");
    page.add("");
    page.addAll(orders());
    page.add("");
    page.add("### By a screw plunger");
    page.add("");
    page.add(
        "Nothing jumps and nobody has to react when a screw presses. Two readings of whole divisions, one in three of them a division late, limits of "
            + LIMITS.leastMm()
            + " to "
            + LIMITS.mostMm()
            + " mm:");
    page.add("");
    page.addAll(plunger());
    return page;
  }

  private static String reached(String rule, Predicate<PressedCamera> holds) {
    return String.format(
        Locale.ROOT,
        "| %s | %.1f %% | %.1f %% | %.1f %% | %.1f %% |",
        rule,
        100 * part(cameras(0, BY_LIGHT, CAMERAS), holds),
        100 * part(cameras(0.1, BY_LIGHT, CAMERAS), holds),
        100 * part(cameras(0.4, BY_LIGHT, CAMERAS), holds),
        100 * part(cameras(-0.3, BY_LIGHT, CAMERAS), holds));
  }

  private static boolean clickChangesNothing(double gapMm) {
    return part(cameras(gapMm, BY_CLICK, CAMERAS), CalledRight::isRight)
        == part(cameras(gapMm, BY_LIGHT, CAMERAS), CalledRight::isRight);
  }

  private static PlotSvg targets(String title) {
    return new PlotSvg(title, "advance ahead of the shutter, mm", "called right", -0.6, 1.2, 0.2)
        .zone(0, 0.1, 95, 100)
        .zone(0.4, 1.2, 0, 5)
        .zone(-0.6, -0.3, 0, 5);
  }

  private static double[] percent(Led led) {
    return percent(led, CalledRight::isRight);
  }

  private static double[] percent(Led led, Predicate<PressedCamera> holds) {
    return Arrays.stream(GAPS).map(gap -> 100 * part(cameras(gap, led, PLOTTED), holds)).toArray();
  }

  private static List<String> verdicts() {
    List<String> rows = head("verdict");
    for (Verdict verdict : Verdict.values()) {
      rows.add(
          row(
              Verdict.WORDS.word(verdict),
              gap -> part(cameras(gap, BY_LIGHT, CAMERAS), c -> c.judged().verdict() == verdict)));
    }
    for (Verdict verdict : List.of(Verdict.WRONG, Verdict.UNDECIDED)) {
      rows.add(
          row(
              Verdict.WORDS.word(verdict) + ", ended after the five pauses",
              gap ->
                  part(
                      cameras(gap, BY_LIGHT, CAMERAS),
                      c -> c.judgedAfter(LinkageStep.STOP).verdict() == verdict)));
    }
    return rows;
  }

  /** One way of telling. */
  private record Way(String words, Pace pace) {}

  private static List<String> instructions() {
    List<Way> ways =
        List.of(
            new Way("over one second", Pace.over(1)),
            new Way("over three seconds", Pace.over(3)),
            new Way("over five seconds", Pace.over(5)),
            new Way("over one second, hand on the wind", Pace.over(1).withHandOnWind()),
            new Way("over three seconds, hand on the wind", Pace.over(3).withHandOnWind()),
            new Way("over five seconds, hand on the wind", Pace.over(5).withHandOnWind()),
            new Way("as asked: over five, rolled, hand on the wind", TOLD),
            new Way(
                "over seven seconds, rolled, hand on the wind",
                Pace.over(7).withHandOnWind().rolledOn()),
            new Way(
                "quickly as far as it usually goes, then creeping, rolled, hand on the wind",
                Pace.creeping(1).withHandOnWind().rolledOn()),
            new Way(
                "in small steps, rolled, hand on the wind",
                Pace.inSteps(2).withHandOnWind().rolledOn()));
    List<String> rows = head("asked, and rule");
    for (Way way : ways) {
      rows.addAll(rows(way.words(), new Led(way.pace(), Sensor.LIGHT_AND_KEY, 0)));
    }
    return rows;
  }

  private static List<String> kinds() {
    List<String> rows = head("cameras");
    List<List<PressedCamera>> told =
        Arrays.stream(MARKS).mapToObj(gap -> cameras(gap, BY_LIGHT, CAMERAS)).toList();
    for (Button.Kind kind : Button.Kind.values()) {
      List<List<PressedCamera>> its =
          told.stream()
              .map(all -> all.stream().filter(camera -> camera.kind() == kind).toList())
              .toList();
      rows.add(row(kind.words(), its, CalledRight::isRight));
    }
    double[] bounds = {0.1, 0.3, 0.5, 0.8};
    for (int i = 0; i + 1 < bounds.length; i++) {
      double least = bounds[i];
      double most = bounds[i + 1];
      List<List<PressedCamera>> its =
          told.stream()
              .map(
                  all ->
                      all.stream()
                          .filter(c -> c.tripDrop() >= least && c.tripDrop() < most)
                          .toList())
              .toList();
      rows.add(
          row(
              String.format(Locale.ROOT, "load drops by %.1f to %.1f N at the trip", least, most),
              its,
              CalledRight::isRight));
    }
    return rows;
  }

  private static List<String> natures() {
    List<String> rows = head("changed");
    rows.addAll(rows("as above", Button.Nature.USUAL));
    rows.addAll(rows("load does not drop", new Button.Nature(0, 0.2)));
    rows.addAll(rows("load drops twice as much", new Button.Nature(2, 0.2)));
    rows.addAll(rows("people react after 0.15 s", new Button.Nature(1, 0.15)));
    rows.addAll(rows("people react after 0.3 s", new Button.Nature(1, 0.3)));
    return rows;
  }

  private static List<String> rows(String words, Button.Nature nature) {
    return rows(words, new Led(TOLD, Sensor.LIGHT_AND_KEY, 0, nature));
  }

  /** By the program's rule, and by one of two. */
  private static List<String> rows(String words, Led led) {
    List<List<PressedCamera>> at =
        Arrays.stream(MARKS).mapToObj(gap -> cameras(gap, led, CAMERAS)).toList();
    return List.of(
        row(words, at, CalledRight::isRight), row("the same, twice", at, fewerAdvanceOnly(2)));
  }

  private static List<String> orders() {
    List<String> rows = head("sensor, order");
    for (Led led : List.of(BY_CLICK, BY_CLICK_AND_BUTTON, BY_KNOB)) {
      List<List<PressedCamera>> at =
          Arrays.stream(MARKS).mapToObj(gap -> cameras(gap, led, CAMERAS)).toList();
      for (SqueezeOrder order : SqueezeOrder.values()) {
        StringBuilder row = new StringBuilder("| " + led.sensor().words() + ", ");
        row.append(SqueezeOrder.WORDS.word(order));
        for (List<PressedCamera> cameras : at) {
          List<JudgedPress> squeezes =
              cameras.stream()
                  .flatMap(camera -> camera.presses().stream())
                  .filter(press -> press.step() == LinkageStep.SQUEEZE)
                  .toList();
          long its = squeezes.stream().filter(press -> press.order() == order).count();
          row.append(String.format(Locale.ROOT, " | %.0f %%", 100.0 * its / squeezes.size()));
        }
        rows.add(row + " |");
      }
    }
    return rows;
  }

  private static List<String> plunger() {
    List<String> rows = head("by the plunger");
    for (GapVerdict verdict : GapVerdict.values()) {
      rows.add(
          row(
              verdict.name().toLowerCase(Locale.ROOT).replace("_", " "),
              gap -> plunger(gap, verdict)));
    }
    return rows;
  }

  static double plunger(double gapMm, GapVerdict verdict) {
    return IntStream.range(0, CAMERAS).filter(i -> byPlunger(gapMm, i) == verdict).count()
        / (double) CAMERAS;
  }

  private static GapVerdict byPlunger(double gapMm, int number) {
    Draws draws = draws(gapMm, number);
    double[] read =
        Button.drawn(gapMm, Button.Kind.PLAIN, Button.Nature.USUAL, draws)
            .readByPlunger(PlungerReading.PITCH_MM / PlungerReading.DIVISIONS, draws);
    return GapVerdict.of(new PlungerReading(read[0], read[1]).gapMm(), LIMITS);
  }

  private static List<String> head(String first) {
    StringBuilder head = new StringBuilder("| " + first);
    StringBuilder rule = new StringBuilder("|---");
    for (double gap : MARKS) {
      head.append(
          gap == 0
              ? " | 0"
              : String.format(
                  Locale.ROOT, " | %s %.1f mm", gap < 0 ? "shutter" : "advance", Math.abs(gap)));
      rule.append("|---");
    }
    List<String> rows = new ArrayList<>();
    rows.add(head + " |");
    rows.add(rule + "|");
    return rows;
  }

  private static String row(
      String first, List<List<PressedCamera>> at, Predicate<PressedCamera> holds) {
    StringBuilder row = new StringBuilder("| " + first);
    at.forEach(
        cameras ->
            row.append(String.format(Locale.ROOT, " | %.1f %%", 100 * part(cameras, holds))));
    return row + " |";
  }

  private static String row(String first, ToDoubleFunction<Double> part) {
    StringBuilder row = new StringBuilder("| " + first);
    Arrays.stream(MARKS)
        .forEach(
            gap ->
                row.append(
                    String.format(Locale.ROOT, " | %.1f %%", 100 * part.applyAsDouble(gap))));
    return row + " |";
  }

  /** Prints the section alone, and writes its pictures. */
  public static void main(String[] args) {
    page().forEach(System.out::println);
  }
}
