package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.halflight.exposure.CurtainCurve;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * The time that each place was open: when the second curtain covered it, less when the first
 * uncovered it. An even height is good, a wedge is the springs, a kink in the last third brake or
 * drag. The scale goes by what differs, so that 0.2 ms are seen; where the band is much higher, it
 * is cut off below.
 *
 * @param speed that was set
 * @param tracks of the runs, the earliest first
 * @param note where the numbers come from; may be empty
 */
public record WedgePicture(
    CurtainFrame frame, MarkedSpeed speed, List<CurtainTrack> tracks, String note)
    implements Picture {
  /** A wedge that must be seen takes so much of the height at the least. */
  private static final double SEEN_MILLIS = 0.2;

  private static final double SEEN_SHARE = 0.08;

  /** Of what is shown, below and above. */
  private static final double AIR = 0.3;

  public WedgePicture {
    tracks = List.copyOf(tracks);
  }

  private record Line(CurtainTrack track, DoubleUnaryOperator millis) {}

  private static OptionalDouble openMillis(CurtainTrack.At at) {
    return at.opensSeconds().isPresent() && at.coversSeconds().isPresent()
        ? OptionalDouble.of(
            1e3 * (at.coversSeconds().getAsDouble() - at.opensSeconds().getAsDouble()))
        : OptionalDouble.empty();
  }

  private static Optional<Line> line(CurtainTrack track) {
    Optional<CurtainCurve> first = track.first();
    return track
        .second()
        .filter(its -> first.isPresent())
        .map(
            second ->
                new Line(
                    track, at -> 1e3 * (second.secondsAt(at) - first.orElseThrow().secondsAt(at))));
  }

  /** Whether any run has both curtains at all places. */
  public boolean isThere() {
    return tracks.stream().anyMatch(track -> line(track).isPresent());
  }

  @Override
  public JFreeChart chart(Theme theme) {
    List<Line> lines = tracks.stream().flatMap(track -> line(track).stream()).toList();
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (CurtainTrack track : tracks) {
      for (CurtainTrack.At at : track.places()) {
        if (openMillis(at).isPresent()) {
          low = Math.min(low, openMillis(at).getAsDouble());
          high = Math.max(high, openMillis(at).getAsDouble());
        }
      }
    }
    boolean isCut = high > SEEN_MILLIS / SEEN_SHARE;
    double room = AIR * Math.max(high - low, SEEN_MILLIS);
    double bottom = isCut ? low - 3 * room : -0.06 * high;
    double ground = isCut ? bottom + 0.5 * room : 0;
    NumberAxis range = new NumberAxis(Words.say("chart.curtain.openMillis"));
    XYPlot plot = Frame.bare(frame.axis(tracks), range, theme);
    range.setRange(bottom, isCut ? high + 2 * room : 1.25 * high);
    plot.setDataset(new DefaultXYDataset());
    plot.setRenderer(new XYLineAndShapeRenderer());
    frame.places(plot, tracks, theme);
    Labels labels = new Labels(theme);
    for (Line line : lines) {
      CurtainTrack track = line.track();
      CurtainLines drawn = new CurtainLines(plot, frame.half(), track.outerMillimetres());
      if (!track.isOutlined()) {
        drawn.band(at -> ground, line.millis(), Theme.pale(theme.of(track.phase())));
      }
      drawn.line(line.millis(), theme.of(track.phase()));
      for (CurtainTrack.At at : track.places()) {
        double millis = openMillis(at).orElseThrow();
        labels.keepOff(at.millimetres(), millis);
        labels.above(
            Words.say("chart.curtain.millis", two(millis)), at.millimetres(), millis, theme.ink());
      }
      drawn.line(at -> ground, theme.quietInk());
    }
    labels.atLevel(
        Words.say(isCut ? "chart.curtain.opensCut" : "chart.curtain.opens"),
        ground,
        theme.quietInk(),
        0.5);
    plot.addAnnotation(labels.annotation());
    return Frame.chart(title(), plot, legend(theme), note, theme);
  }

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection items = new LegendItemCollection();
    tracks.forEach(
        track ->
            items.add(
                Keys.line(
                    Words.say("chart.curtain.covers", Sentences.phaseWithin(track.phase())),
                    CurtainBand.KEY,
                    theme.of(track.phase()))));
    items.add(Keys.band(frame.notSeen(tracks), theme.grid(), theme));
    return items;
  }

  private static String two(double millis) {
    return String.format(Locale.ROOT, "%.2f", millis);
  }

  private String title() {
    return Words.say("chart.curtain.wedge", Words.say("chart.seconds", speed.label()));
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (CurtainTrack track : tracks) {
      for (CurtainTrack.At at : track.places()) {
        rows.add(
            List.of(
                Sentences.phaseWithin(track.phase()),
                Words.of("chart.curtain.place", at.place()),
                openMillis(at).isPresent()
                    ? Words.say("chart.curtain.millis", two(openMillis(at).getAsDouble()))
                    : Words.say(at.isCapped() ? "chart.curtain.capped" : "chart.notKnown")));
      }
    }
    return new DataTable(
        title(),
        List.of(
            Words.say("chart.run"),
            Words.say("chart.curtain.placeHeading"),
            Words.say("chart.curtain.openMillis")),
        rows,
        note);
  }
}
