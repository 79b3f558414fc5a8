package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.LinkageJudgement;
import org.halflight.extratest.PressOutcome;
import org.halflight.session.LinkageStep;
import org.halflight.words.LinkageWords;
import org.halflight.words.PressWords;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** The linkage test: a row for each step, a mark for each press with the state that it left. */
public final class LinkagePicture implements Picture {
  private static final double SIZE = 16;

  /** The first step on top. */
  private static final List<LinkageStep> ROWS = rows();

  private final LinkageJudgement judged;
  private final String note;

  /**
   * The presses of a round.
   *
   * @param note where they come from; may be empty
   */
  public LinkagePicture(LinkageJudgement judged, String note) {
    this.judged = judged;
    this.note = note;
  }

  private static List<LinkageStep> rows() {
    List<LinkageStep> rows = new ArrayList<>(Arrays.asList(LinkageStep.values()));
    Collections.reverse(rows);
    return List.copyOf(rows);
  }

  @Override
  public JFreeChart chart(Theme theme) {
    XYSeriesCollection marks = new XYSeriesCollection();
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
    renderer.setUseFillPaint(true);
    for (PressOutcome outcome : PressOutcome.values()) {
      int index = marks.getSeriesCount();
      marks.addSeries(new XYSeries(PressWords.outcome(outcome)));
      Color colour = colour(outcome, theme);
      renderer.setSeriesShape(index, Marks.sized(shape(outcome), SIZE));
      renderer.setSeriesPaint(index, colour);
      renderer.setSeriesFillPaint(
          index, outcome == PressOutcome.NEITHER ? theme.background() : colour);
      renderer.setDrawOutlines(true);
      renderer.setSeriesOutlinePaint(index, colour);
      renderer.setSeriesOutlineStroke(index, new BasicStroke(2));
    }
    renderer.setUseOutlinePaint(true);
    XYPlot plot = Frame.bare(axis(), steps(), theme);
    plot.setDataset(marks);
    plot.setRenderer(renderer);
    Labels labels = new Labels(theme, SIZE);
    for (LinkageStep step : LinkageStep.values()) {
      List<JudgedPress> presses = judged.of(step);
      for (int i = 0; i < presses.size(); i++) {
        JudgedPress press = presses.get(i);
        int row = ROWS.indexOf(step);
        marks.getSeries(PressWords.outcome(press.outcome())).add(i + 1, row);
        labels.keepOff(i + 1, row);
        labels.below(below(press), i + 1, row);
      }
    }
    plot.addAnnotation(labels.annotation());
    return Frame.chart(title(), plot, plot.getLegendItems(), note, theme);
  }

  private NumberAxis axis() {
    int most =
        Arrays.stream(LinkageStep.values())
            .mapToInt(step -> Math.max(step.presses(), judged.of(step).size()))
            .max()
            .orElseThrow();
    return Frame.counted(Words.say("linkage.picture.press"), most);
  }

  private static SymbolAxis steps() {
    return Frame.names(null, ROWS.stream().map(PressWords::step).toList());
  }

  private static String below(JudgedPress press) {
    if (press.again()) {
      return Words.say("linkage.picture.again");
    }
    return press.aheadSeconds().isPresent()
        ? LinkageWords.apart(press)
        : PressWords.outcome(press.outcome());
  }

  private static Shape shape(PressOutcome outcome) {
    return switch (outcome) {
      case NEITHER, BOTH -> Marks.CIRCLE;
      case ADVANCE_ONLY -> Marks.UP;
      case SHUTTER_ONLY -> Marks.DOWN;
    };
  }

  private static Color colour(PressOutcome outcome, Theme theme) {
    return switch (outcome) {
      case NEITHER -> theme.quietInk();
      case BOTH -> theme.asLeft();
      case ADVANCE_ONLY, SHUTTER_ONLY -> theme.asFound();
    };
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (JudgedPress press : judged.presses()) {
      rows.add(
          List.of(
              String.valueOf(rows.size() + 1),
              PressWords.step(press.step()),
              PressWords.outcome(press.outcome()),
              LinkageWords.order(press.order()),
              press.aheadSeconds().isPresent()
                  ? LinkageWords.apart(press)
                  : Words.say("table.nothing")));
    }
    return new DataTable(
        title(),
        List.of(
            Words.say("linkage.picture.press"),
            Words.say("linkage.table.step"),
            Words.say("linkage.table.left"),
            Words.say("linkage.table.order"),
            Words.say("linkage.table.ahead")),
        rows,
        note);
  }

  private String title() {
    return Words.say("linkage.picture.title", LinkageWords.large(judged));
  }
}
