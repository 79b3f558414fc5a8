package org.halflight.chart;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.CurtainCurve;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Both curtains over the whole frame and the flash window: from where the first curtain has cleared
 * the end of the frame to where the second leaves its start. For speeds at which there may be one,
 * such as the X speed.
 *
 * @param speed that was set
 * @param track of the run
 * @param contactSeconds when the flash contact closes, from the first curtain's passing of the
 *     start; empty where it was not seen
 * @param note where the numbers come from; may be empty
 */
public record CurtainBand(
    CurtainFrame frame,
    MarkedSpeed speed,
    CurtainTrack track,
    OptionalDouble contactSeconds,
    String note)
    implements Picture {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  static final Line2D KEY = new Line2D.Double(-10, 0, 10, 0);

  /** Whether both curtains were seen at all places. */
  public boolean isThere() {
    return track.first().isPresent() && track.second().isPresent();
  }

  private OptionalDouble opensMillis() {
    return millis(track.first(), frame.half());
  }

  private OptionalDouble shutsMillis() {
    return millis(track.second(), -frame.half());
  }

  private static OptionalDouble millis(Optional<CurtainCurve> curve, double at) {
    return curve.isPresent()
        ? OptionalDouble.of(1e3 * curve.get().secondsAt(at))
        : OptionalDouble.empty();
  }

  @Override
  public JFreeChart chart(Theme theme) {
    CurtainCurve first = track.first().orElseThrow();
    CurtainCurve second = track.second().orElseThrow();
    double opens = opensMillis().orElseThrow();
    double shuts = shutsMillis().orElseThrow();
    double from = 1e3 * first.secondsAt(-frame.half());
    double to = 1e3 * second.secondsAt(frame.half());
    double contact = contactSeconds.isPresent() ? 1e3 * contactSeconds.getAsDouble() : from;
    double low = Math.min(from, contact);
    double high = Math.max(Math.max(to, opens), contact);
    double air = 0.08 * (high - low);
    NumberAxis range = new NumberAxis(Words.say("chart.curtain.millisFrom"));
    XYPlot plot = Frame.bare(frame.axis(List.of(track)), range, theme);
    range.setRange(low - air, high + air);
    plot.setDataset(new DefaultXYDataset());
    plot.setRenderer(new XYLineAndShapeRenderer());
    frame.places(plot, List.of(track), theme);
    CurtainLines lines = new CurtainLines(plot, frame.half(), track.outerMillimetres());
    Labels labels = new Labels(theme);
    lines.band(
        at -> 1e3 * first.secondsAt(at),
        at -> 1e3 * second.secondsAt(at),
        Theme.pale(theme.of(track.phase())));
    if (shuts > opens) {
      plot.addAnnotation(
          new PlotAnnotation(
              (graphics, axes) -> {
                Rectangle2D box = axes.box(-frame.half(), frame.half(), opens, shuts);
                graphics.setPaint(theme.tolerance());
                graphics.fill(box);
              }));
    }
    lines.line(at -> 1e3 * first.secondsAt(at), theme.asFound());
    lines.line(at -> 1e3 * second.secondsAt(at), theme.asLeft());
    if (shuts > opens) {
      labels.atLevel(window(), (opens + shuts) / 2, theme.ink(), 0.5);
    } else {
      labels.atLevel(window(), high, theme.ink(), frame.goesLeft() ? 0.97 : 0.03);
    }
    if (contactSeconds.isPresent()) {
      CurtainLines whole = new CurtainLines(plot, frame.half(), frame.half());
      whole.line(at -> contact, theme.ink());
      labels.atLevel(Words.say("chart.curtain.contact"), contact, theme.ink(), 0.02);
    }
    plot.addAnnotation(labels.annotation());
    LegendItemCollection items = new LegendItemCollection();
    items.add(Keys.line(Words.say("chart.curtain.first"), KEY, theme.asFound()));
    items.add(Keys.line(Words.say("chart.curtain.second"), KEY, theme.asLeft()));
    if (shuts > opens) {
      items.add(Keys.band(Words.say("chart.curtain.window.key"), theme.tolerance(), theme));
    }
    items.add(Keys.band(frame.notSeen(List.of(track)), theme.grid(), theme));
    return Frame.chart(title(), plot, items, note, theme);
  }

  private String window() {
    if (!isThere()) {
      return Words.say("chart.notKnown");
    }
    double window = shutsMillis().orElseThrow() - opensMillis().orElseThrow();
    return window > 0
        ? Words.say("chart.curtain.window", one(window))
        : Words.say("chart.curtain.window.never", one(-window));
  }

  private static String one(double millis) {
    return String.format(Locale.ROOT, "%.1f", millis);
  }

  private String title() {
    return Words.say("chart.curtain.band", Words.say("chart.seconds", speed.label()), window());
  }

  @Override
  public DataTable table() {
    List<String> headings = new ArrayList<>(List.of(Words.say("chart.curtain.curtain")));
    List<String> first = new ArrayList<>(List.of(Words.say("chart.curtain.first")));
    List<String> second = new ArrayList<>(List.of(Words.say("chart.curtain.second")));
    for (CurtainTrack.At at : track.places()) {
      headings.add(Words.of("chart.curtain.place", at.place()));
      first.add(passing(at.opensSeconds()));
      second.add(passing(at.coversSeconds()));
    }
    headings.add(Words.say("chart.curtain.edge"));
    first.add(opensMillis().isPresent() ? clears(opensMillis(), "clears") : passing(NONE));
    second.add(shutsMillis().isPresent() ? clears(shutsMillis(), "leaves") : passing(NONE));
    List<List<String>> rows = new ArrayList<>(List.of(first, second));
    if (contactSeconds.isPresent()) {
      List<String> contact = new ArrayList<>(Collections.nCopies(headings.size(), ""));
      contact.set(0, Words.say("chart.curtain.contact"));
      contact.set(headings.size() - 1, passing(contactSeconds));
      rows.add(contact);
    }
    return new DataTable(title(), headings, rows, note);
  }

  private static String clears(OptionalDouble millis, String which) {
    return Words.say("chart.curtain." + which, one(millis.orElseThrow()));
  }

  private static String passing(OptionalDouble seconds) {
    return seconds.isPresent()
        ? Words.say(
            "chart.curtain.millis", String.format(Locale.ROOT, "%.2f", 1e3 * seconds.getAsDouble()))
        : Words.say("chart.notKnown");
  }
}
