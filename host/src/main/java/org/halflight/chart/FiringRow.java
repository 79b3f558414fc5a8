package org.halflight.chart;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.session.FiringCondition;
import org.halflight.session.FiringConditions;
import org.halflight.session.Outcome;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.ConditionWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * The releases of one marked speed one after the other: error in stops upwards, the mean as a line
 * with its interval. The first firing after rest has its own mark, releases without a time are
 * marked at the upper edge. Rejected releases are crossed out.
 *
 * @param speed what the firings that count come to
 * @param runName such as {@code as found}
 * @param releases in their order, at least one
 * @param adjustments work between the releases
 * @param note where the numbers come from, printed at the foot; empty for none
 */
public record FiringRow(
    SpeedSummary speed,
    String runName,
    List<Release> releases,
    List<Adjustment> adjustments,
    String note)
    implements Picture {
  /** Key of the data of firings that may count. */
  public static final String FIRINGS = "firing";

  /**
   * Key of the data of the first firing after rest, and of others that are kept out of the mean.
   */
  public static final String FIRST_AFTER_REST = "first firing after rest";

  /** Key of the data of rejected firings. */
  public static final String REJECTED = "rejected";

  /** What can come of a release that the row shows; the others say nothing of the speed. */
  static final Set<Outcome> OUTCOMES =
      EnumSet.of(
          Outcome.TIMED,
          Outcome.NEVER_FULLY_OPEN,
          Outcome.STUCK_OPEN,
          Outcome.DID_NOT_OPEN,
          Outcome.DOUBLE,
          Outcome.LIGHT_WHILE_COCKING);

  /** Up to this many releases each has its number on the axis. */
  private static final int NUMBERED_UP_TO = 30;

  /**
   * One release in the row.
   *
   * @param outcome what came of it
   * @param stops its error, where it is timed
   * @param afterRest whether the camera had rested before; such a firing is never in the mean
   * @param rejection why the person does not count it; empty where it counts
   * @param conditions other special ones that it was made under
   * @param apart whether these keep it out of the mean
   */
  public record Release(
      Outcome outcome,
      OptionalDouble stops,
      boolean afterRest,
      Optional<String> rejection,
      FiringConditions conditions,
      boolean apart) {
    /** One that was not rejected. */
    public Release(Outcome outcome, OptionalDouble stops, boolean afterRest) {
      this(outcome, stops, afterRest, Optional.empty());
    }

    /** With nothing special. */
    public Release(
        Outcome outcome, OptionalDouble stops, boolean afterRest, Optional<String> rejection) {
      this(outcome, stops, afterRest, rejection, FiringConditions.NONE, false);
    }

    /** With rest among them, so that squares can be told apart. */
    FiringConditions letters() {
      return afterRest ? conditions.with(FiringCondition.FIRST_AFTER_REST) : conditions;
    }

    String conditionsInWords() {
      List<String> all = new ArrayList<>();
      if (afterRest) {
        all.add(Words.say("chart.first"));
      }
      if (!conditions.isEmpty()) {
        all.add(ConditionWords.list(conditions));
      }
      return String.join(", ", all);
    }

    /** The outcome in words. */
    String words() {
      return outcome == Outcome.TIMED && stops.isEmpty()
          ? Words.say("outcome.no-time-yet")
          : Sentences.outcome(outcome);
    }
  }

  public FiringRow {
    releases = List.copyOf(releases);
    adjustments = List.copyOf(adjustments);
    if (releases.isEmpty()) {
      throw new IllegalArgumentException("a firing row has at least one release");
    }
    for (Adjustment adjustment : adjustments) {
      if (adjustment.beforeRelease() > releases.size() + 1) {
        throw new IllegalArgumentException(
            "no release " + adjustment.beforeRelease() + " in a row of " + releases.size());
      }
    }
  }

  /**
   * The chart. Its data set holds the timed firings, one row for {@link #FIRINGS}, one for {@link
   * #FIRST_AFTER_REST} and one for {@link #REJECTED}; x is the number of the release, from 1.
   */
  @Override
  public JFreeChart chart(Theme theme) {
    NumberAxis domain = Frame.counted(Words.say("chart.releases"), releases.size());
    Range places = domain.getRange();
    XYPlot plot = Frame.plot(domain, range(), strip(places, theme), theme);
    if (releases.size() <= NUMBERED_UP_TO) {
      domain.setTickUnit(new NumberTickUnit(1));
    }
    plot.setDataset(0, firings());
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
    Keys.dress(renderer, 0, mark(), filling(theme), colour(theme), theme);
    Keys.dress(renderer, 1, Marks.SQUARE, theme.background(), theme.rest(), theme);
    Keys.dress(renderer, 2, Marks.CROSSED_OUT, theme.background(), theme.quietInk(), theme);
    plot.setRenderer(0, renderer);
    renderer.addAnnotation(
        new PlotAnnotation(
            new ToleranceBand(
                places.getLowerBound(), places.getUpperBound(), Limits.of(speed), theme)),
        Layer.BACKGROUND);
    speed
        .meanStops()
        .ifPresent(
            mean ->
                renderer.addAnnotation(
                    new PlotAnnotation(
                        new MeanLine(mean, speed.expandedIntervalStops(), colour(theme))),
                    Layer.BACKGROUND));
    for (Adjustment adjustment : adjustments) {
      plot.addDomainMarker(
          new ValueMarker(
              adjustment.beforeRelease() - 0.5, theme.quietInk(), Frame.dashed(1.2f, 2, 3)),
          Layer.BACKGROUND);
    }
    plot.addAnnotation(labels(theme).annotation());
    return Frame.chart(title(), plot, legend(theme), note, theme);
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < releases.size(); i++) {
      Release release = releases.get(i);
      int number = i + 1;
      String work =
          String.join(
              ", ",
              adjustments.stream()
                  .filter(adjustment -> adjustment.beforeRelease() == number)
                  .map(Adjustment::words)
                  .toList());
      rows.add(
          List.of(
              Integer.toString(number),
              release.words(),
              release.stops().isPresent()
                  ? StopsText.of(release.stops().getAsDouble())
                  : Words.say("chart.noTime"),
              release.conditionsInWords(),
              release.rejection().orElse(""),
              work));
    }
    return new DataTable(
        summary(),
        List.of(
            Words.say("chart.release"),
            Words.say("chart.outcome"),
            Words.say("chart.error"),
            Words.say("chart.rest"),
            Words.say("chart.rejection"),
            Words.say("chart.adjustment")),
        rows,
        note);
  }

  private String title() {
    String title = Words.say("chart.rowTitle", speed.speed().label(), runName);
    return speed.meanStops().isPresent()
        ? Words.say("chart.rowMean", title, StopsText.of(speed.meanStops().getAsDouble()))
        : title;
  }

  private String summary() {
    String interval =
        speed
            .expandedIntervalStops()
            .map(
                its ->
                    Words.say(
                        "chart.rowInterval",
                        StopsText.percent(SpeedSummary.LEVEL),
                        StopsText.of(its)))
            .orElse("");
    Limits limits = Limits.of(speed);
    String unsure = limits.isUnsure() ? Words.say("chart.rowGrey", StopsText.unsure(limits)) : "";
    return Words.say("chart.row", title(), interval, StopsText.of(limits), unsure);
  }

  private StopsRange range() {
    StopsRange range = new StopsRange();
    range.accept(Limits.of(speed));
    range.acceptMean(speed);
    releases.forEach(release -> release.stops().ifPresent(range));
    return range;
  }

  private DefaultXYDataset firings() {
    DefaultXYDataset firings = new DefaultXYDataset();
    for (String series : List.of(FIRINGS, FIRST_AFTER_REST, REJECTED)) {
      List<double[]> points = new ArrayList<>();
      for (int i = 0; i < releases.size(); i++) {
        Release release = releases.get(i);
        if (release.stops().isPresent() && series(release).equals(series)) {
          points.add(new double[] {i + 1, release.stops().getAsDouble()});
        }
      }
      firings.addSeries(series, Frame.columns(points));
    }
    return firings;
  }

  private static String series(Release release) {
    return release.rejection().isPresent()
        ? REJECTED
        : release.afterRest() || release.apart() ? FIRST_AFTER_REST : FIRINGS;
  }

  private EdgeStrip strip(Range places, Theme theme) {
    EdgeStrip strip = new EdgeStrip(places, theme);
    for (int i = 0; i < releases.size(); i++) {
      Release release = releases.get(i);
      if (release.stops().isEmpty()) {
        strip.add(i + 1, EdgeStrip.Line.of(release.rejection().orElseGet(() -> release.words())));
        strip.add(
            i + 1,
            release.rejection().isPresent()
                ? EdgeStrip.Line.of(Marks.CROSSED_OUT, false, theme.quietInk())
                : EdgeStrip.Line.of(Marks.of(release.outcome()), false, colour(theme)));
      }
    }
    return strip;
  }

  /** Letters for what a firing was made under, reasons for not counting it, and adjustments. */
  private Labels labels(Theme theme) {
    Labels labels = new Labels(theme);
    boolean special = releases.stream().anyMatch(other -> !other.conditions().isEmpty());
    for (int i = 0; i < releases.size(); i++) {
      Release release = releases.get(i);
      if (release.stops().isPresent()) {
        double x = i + 1.0;
        double y = release.stops().getAsDouble();
        labels.keepOff(x, y);
        if (special && !release.letters().isEmpty()) {
          labels.right(ConditionWords.letters(release.letters()), x, y);
        }
        release.rejection().ifPresent(reason -> labels.beside(reason, x, y));
      }
    }
    adjustments.forEach(each -> labels.atLine(each.words(), each.beforeRelease() - 0.5));
    return labels;
  }

  /** What the letters in the picture mean, each once; apart, so that they wrap. */
  private List<String> letterKeys() {
    boolean special = releases.stream().anyMatch(release -> !release.conditions().isEmpty());
    return releases.stream()
        .filter(release -> release.stops().isPresent() && special)
        .flatMap(release -> release.letters().said().stream())
        .distinct()
        .sorted()
        .map(
            each ->
                Words.say(
                    "chart.letter",
                    ConditionWords.letters(FiringConditions.NONE.with(each)),
                    ConditionWords.of(each)))
        .toList();
  }

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection legend = new LegendItemCollection();
    legend.add(Keys.mark(Words.say("chart.firing"), mark(), filling(theme), colour(theme), theme));
    List<Release> leftOut =
        releases.stream()
            .filter(r -> series(r).equals(FIRST_AFTER_REST) && r.stops().isPresent())
            .toList();
    if (!leftOut.isEmpty()) {
      String which =
          leftOut.stream().allMatch(Release::afterRest)
              ? Words.say("chart.notInMean")
              : Words.say("chart.apart");
      legend.add(Keys.mark(which, Marks.SQUARE, theme.background(), theme.rest(), theme));
    }
    letterKeys().forEach(words -> legend.add(Keys.words(words, theme)));
    if (releases.stream().anyMatch(release -> release.rejection().isPresent())) {
      legend.add(Keys.rejected(theme));
    }
    Map<Outcome, String> untimed = new EnumMap<>(Outcome.class);
    releases.stream()
        .filter(release -> release.stops().isEmpty() && release.rejection().isEmpty())
        .forEach(release -> untimed.put(release.outcome(), release.words()));
    untimed.forEach(
        (outcome, words) ->
            legend.add(
                Keys.mark(words, Marks.of(outcome), theme.background(), colour(theme), theme)));
    if (speed.meanStops().isPresent()) {
      legend.add(
          Keys.line(
              speed.expandedIntervalStops().isPresent()
                  ? Words.say("chart.meanInterval", StopsText.percent(SpeedSummary.LEVEL))
                  : Words.say("chart.mean"),
              new Line2D.Double(-9, 0, 9, 0),
              colour(theme)));
    }
    legend.add(Keys.band(Words.say("chart.tolerance"), theme.tolerance(), theme));
    if (Limits.of(speed).isUnsure()) {
      legend.add(Keys.hatching(Words.say("chart.grey"), theme));
    }
    return legend;
  }

  private Shape mark() {
    return Marks.of(speed.phase());
  }

  private Color colour(Theme theme) {
    return theme.of(speed.phase());
  }

  private Color filling(Theme theme) {
    return theme.filling(speed.phase());
  }
}
