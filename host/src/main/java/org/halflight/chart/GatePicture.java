package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * The gate of a curtain shutter as seen from behind, to scale along the travel: a bar at each place
 * that has a sensor, its exposure against the marked time in stops. As found is outlined, later
 * runs are filled. A place that stayed dark is hatched. An arrow shows the travel.
 *
 * @param speed that was set
 * @param tracks of the runs, the earliest first
 * @param slitMillimetres the slit at the centre of the latest run, drawn to scale; empty where the
 *     frame was wholly open, or nobody knows
 * @param note where the numbers come from; may be empty
 */
public record GatePicture(
    CurtainFrame frame,
    MarkedSpeed speed,
    Tolerance tolerance,
    List<CurtainTrack> tracks,
    OptionalDouble slitMillimetres,
    String note)
    implements Picture {
  /** Half the width of a bar, as a part of the frame; those of two runs stand side by side. */
  private static final double HALF_BAR = 0.036;

  /** Of the height, above the bars: the arrow has it. */
  private static final double ARROW_ROOM = 0.2;

  /** Of the height, for the figures beyond the longest bars. */
  private static final double LABEL_ROOM = 0.08;

  public GatePicture {
    tracks = List.copyOf(tracks);
  }

  @Override
  public JFreeChart chart(Theme theme) {
    StopsRange wanted = new StopsRange();
    Limits limits = Limits.of(tolerance);
    wanted.accept(limits);
    for (CurtainTrack track : tracks) {
      for (CurtainTrack.At at : track.places()) {
        at.meanStops().ifPresent(wanted);
        if (at.meanStops().isPresent()) {
          wanted.accept(at.lowStops());
          wanted.accept(at.highStops());
        }
      }
    }
    double room = LABEL_ROOM * wanted.range().getLength();
    double low = wanted.range().getLowerBound() - room;
    double top = wanted.range().getUpperBound() + room;
    double high = top + ARROW_ROOM * (top - low);
    XYPlot plot =
        Frame.stops(
            Words.say("chart.curtain.stops"), frame.axis(tracks), new Range(low, high), theme);
    plot.setDataset(new DefaultXYDataset());
    plot.setRenderer(new XYLineAndShapeRenderer());
    frame.turn(plot);
    frame.places(plot, tracks, theme);
    background(plot, new ToleranceBand(-frame.half(), frame.half(), limits, theme));
    Labels labels = new Labels(theme, 0);
    plot.addAnnotation(
        new PlotAnnotation(
            (graphics, axes) -> {
              graphics.setPaint(theme.quietInk());
              graphics.setStroke(new BasicStroke(1.3f));
              graphics.draw(axes.box(-frame.half(), frame.half(), low, top));
            }));
    for (int i = 0; i < tracks.size(); i++) {
      bars(plot, labels, i, low, top, theme);
    }
    plot.addAnnotation(frame.arrow((top + high) / 2, theme.ink(), theme));
    slitMillimetres.ifPresent(
        slit ->
            plot.addAnnotation(
                new PlotAnnotation(
                    (graphics, axes) -> {
                      double reach = (high - top) * 0.28;
                      Rectangle2D box =
                          axes.box(
                              -slit / 2,
                              slit / 2,
                              (top + high) / 2 - reach,
                              (top + high) / 2 + reach);
                      graphics.setPaint(theme.background());
                      graphics.fill(box);
                      graphics.setPaint(theme.ink());
                      graphics.setStroke(new BasicStroke(1.6f));
                      graphics.draw(box);
                    })));
    plot.addAnnotation(labels.annotation());
    return Frame.chart(title(), plot, legend(theme), note, theme);
  }

  private static void background(XYPlot plot, PlotAnnotation.Drawing drawing) {
    plot.getRenderer().addAnnotation(new PlotAnnotation(drawing), Layer.BACKGROUND);
  }

  /** The middle of the bar of a run at a place. */
  private double middle(int run, CurtainTrack.At at) {
    double side = run - (tracks.size() - 1) / 2.0;
    return at.millimetres() + side * 2.3 * HALF_BAR * frame.millimetres();
  }

  private void bars(XYPlot plot, Labels labels, int run, double low, double top, Theme theme) {
    CurtainTrack track = tracks.get(run);
    Color colour = theme.of(track.phase());
    double half = HALF_BAR * frame.millimetres();
    for (CurtainTrack.At at : track.places()) {
      double middle = middle(run, at);
      if (at.isCapped()) {
        plot.addAnnotation(
            new PlotAnnotation(
                (graphics, axes) -> {
                  Rectangle2D box = axes.box(middle - half, middle + half, low, top);
                  ToleranceBand.hatch(graphics, box, theme);
                  graphics.setPaint(colour);
                  graphics.setStroke(new BasicStroke(1.6f));
                  graphics.draw(box);
                }));
        labels.above(Words.say("chart.curtain.capped"), middle, (low + top) / 2, theme.ink());
      } else if (at.meanStops().isPresent()) {
        double mean = at.meanStops().getAsDouble();
        plot.addAnnotation(
            new PlotAnnotation(
                (graphics, axes) -> bar(graphics, axes, track, middle, at, colour, theme)));
        double beyond = mean < 0 ? Math.min(mean, at.lowStops()) : Math.max(mean, at.highStops());
        if (frame.isUpright()) {
          labels.onSide(signed(mean), middle, beyond, mean < 0 ? -1 : 1);
        } else if (mean < 0) {
          labels.below(signed(mean), middle, beyond);
        } else {
          labels.above(signed(mean), middle, beyond, theme.ink());
        }
      }
    }
  }

  private void bar(
      Graphics2D graphics,
      PlotAnnotation.Axes axes,
      CurtainTrack track,
      double middle,
      CurtainTrack.At at,
      Color colour,
      Theme theme) {
    double half = HALF_BAR * frame.millimetres();
    double mean = at.meanStops().orElseThrow();
    Rectangle2D box = axes.box(middle - half, middle + half, Math.min(0, mean), Math.max(0, mean));
    graphics.setPaint(track.isOutlined() ? theme.background() : colour);
    graphics.fill(box);
    graphics.setPaint(colour);
    graphics.setStroke(new BasicStroke(2));
    graphics.draw(box);
    Path2D whisker = new Path2D.Double();
    whisker.append(line(axes, middle, at.lowStops(), middle, at.highStops()), false);
    for (double end : new double[] {at.lowStops(), at.highStops()}) {
      whisker.append(line(axes, middle - half / 3, end, middle + half / 3, end), false);
    }
    // An edge in the other colour shows it on a filled bar as well.
    graphics.setPaint(theme.background());
    graphics.setStroke(new BasicStroke(3.6f));
    graphics.draw(whisker);
    graphics.setPaint(theme.ink());
    graphics.setStroke(new BasicStroke(1.4f));
    graphics.draw(whisker);
  }

  private static Line2D line(
      PlotAnnotation.Axes axes, double fromX, double fromY, double toX, double toY) {
    Point2D from = axes.at(fromX, fromY);
    return new Line2D.Double(from, axes.at(toX, toY));
  }

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection items = new LegendItemCollection();
    for (CurtainTrack track : tracks) {
      items.add(
          Keys.mark(
              Sentences.phaseWithin(track.phase()),
              Marks.SQUARE,
              track.isOutlined() ? theme.background() : theme.of(track.phase()),
              theme.of(track.phase()),
              theme));
    }
    items.add(Keys.band(Words.say("chart.tolerance"), theme.tolerance(), theme));
    items.add(Keys.bar(Words.say("chart.curtain.scatter"), theme.ink(), theme.ink(), theme));
    slitMillimetres.ifPresent(
        slit ->
            items.add(
                Keys.mark(
                    Words.say("chart.curtain.slit", millimetres(slit)),
                    Marks.SQUARE,
                    theme.background(),
                    theme.ink(),
                    theme)));
    items.add(Keys.band(frame.notSeen(tracks), theme.grid(), theme));
    return items;
  }

  private static String millimetres(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  static String signed(double stops) {
    return Frame.signed("0.00").format(stops);
  }

  private String title() {
    return Words.say(
        "chart.curtain.gate", Words.say("chart.seconds", speed.label()), frame.words());
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
                millimetres(at.millimetres() + frame.half()),
                at.isCapped()
                    ? Words.say("chart.curtain.capped")
                    : at.meanStops().isPresent()
                        ? brightness(at.meanStops().getAsDouble())
                        : Words.say("chart.notKnown"),
                at.meanStops().isPresent()
                    ? Words.say(
                        "table.fromTo", brightness(at.lowStops()), brightness(at.highStops()))
                    : Words.say("table.nothing"),
                StopsText.of(Limits.of(tolerance))));
      }
    }
    return new DataTable(
        title(),
        List.of(
            Words.say("chart.run"),
            Words.say("chart.curtain.placeHeading"),
            Words.say("chart.curtain.millimetres"),
            Words.say("chart.curtain.exposure"),
            Words.say("chart.curtain.scatter"),
            Words.say("chart.tolerance")),
        rows,
        note);
  }

  /** Such as {@code 0.21 stop darker}: how much exposure a place has had. */
  static String brightness(double stops) {
    String number = String.format(Locale.ROOT, "%.2f", Math.abs(stops));
    return number.equals("0.00")
        ? Words.say("chart.noStops")
        : Words.say(stops > 0 ? "chart.curtain.brighter" : "chart.curtain.darker", number);
  }
}
