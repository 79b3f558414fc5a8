package org.halflight.chart;

import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;

/**
 * The edges of one firing over time: a lane for each input that changed, with a bar from each rise
 * to the fall after it. Time is in milliseconds after the first edge of the light.
 *
 * @param title which firing
 * @param why it is drawn in place of a light curve; empty where it is drawn for itself
 * @param edges at least one, in order
 * @param rate ticks a second of the board
 * @param note where they come from; may be empty
 */
public record EdgesPicture(String title, String why, List<Edge> edges, TickRate rate, String note)
    implements Picture {
  private static final double HALF_BAR = 0.28;
  private static final double AIR = 0.3;
  private static final double LEAST_MILLIS = 0.5;

  public EdgesPicture {
    edges = List.copyOf(edges);
  }

  @Override
  public JFreeChart chart(Theme theme) {
    List<Channel> lanes = lanes();
    NumberAxis time = new NumberAxis(Words.say("chart.millis"));
    Range shown = shown();
    time.setRange(shown);
    time.setNumberFormatOverride(Frame.plain());
    XYPlot plot =
        Frame.bare(time, Frame.names(null, lanes.stream().map(EdgesPicture::name).toList()), theme);
    plot.setRangeGridlinesVisible(false);
    for (int lane = 0; lane < lanes.size(); lane++) {
      double from = shown.getLowerBound();
      boolean high = false;
      List<Edge> its = of(lanes.get(lane));
      for (Edge edge : its) {
        if (!edge.high() && (high || edge.equals(its.get(0)))) {
          bar(plot, from, millis(edge), lane, theme);
        }
        from = millis(edge);
        high = edge.high();
      }
      if (high) {
        bar(plot, from, shown.getUpperBound(), lane, theme);
      }
    }
    return Frame.chart(title, plot, plot.getLegendItems(), foot(), theme);
  }

  private static void bar(XYPlot plot, double from, double to, int lane, Theme theme) {
    plot.addAnnotation(
        new XYBoxAnnotation(
            from,
            lane - HALF_BAR,
            to,
            lane + HALF_BAR,
            new BasicStroke(1),
            theme.asLeft(),
            theme.asLeft()));
  }

  @Override
  public DataTable table() {
    return new DataTable(
        why.isEmpty() ? title : title + ". " + why,
        List.of(
            Words.say("chart.edges.millis"),
            Words.say("chart.edges.input"),
            Words.say("chart.edges.change")),
        edges.stream()
            .map(
                edge ->
                    List.of(
                        String.format(Locale.ROOT, "%.3f", millis(edge)),
                        name(edge.channel()),
                        Words.say(edge.high() ? "chart.edges.on" : "chart.edges.off")))
            .toList(),
        note);
  }

  private String foot() {
    return why.isEmpty() ? note : note.isEmpty() ? why : why + " " + note;
  }

  /** The first input on top. */
  private List<Channel> lanes() {
    List<Channel> lanes = new ArrayList<>(edges.stream().map(Edge::channel).distinct().toList());
    Collections.sort(lanes);
    Collections.reverse(lanes);
    return lanes;
  }

  private List<Edge> of(Channel channel) {
    return edges.stream().filter(edge -> edge.channel() == channel).toList();
  }

  private double millis(Edge edge) {
    long zero =
        edges.stream()
            .filter(each -> each.channel().isLight())
            .findFirst()
            .orElse(edges.get(0))
            .ticks();
    return rate.millis(edge.ticks() - zero);
  }

  /** The light with some dark on both sides; a finger that rests on the release lies beyond. */
  private Range shown() {
    List<Edge> light = edges.stream().filter(edge -> edge.channel().isLight()).toList();
    List<Edge> its = light.isEmpty() ? edges : light;
    double first = millis(its.get(0));
    double span = Math.max(LEAST_MILLIS, millis(its.get(its.size() - 1)) - first);
    return new Range(first - AIR * span, first + (1 + AIR) * span);
  }

  private static String name(Channel channel) {
    return Words.say("chart.edges." + channel.label());
  }
}
