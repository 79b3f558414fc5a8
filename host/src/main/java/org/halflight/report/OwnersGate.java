package org.halflight.report;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.chart.CurtainPictures;
import org.halflight.chart.DataTable;
import org.halflight.chart.GatePicture;
import org.halflight.chart.Picture;
import org.halflight.chart.Theme;
import org.halflight.verdict.CurtainRunFigures;
import org.halflight.verdict.CurtainSpeed;
import org.jfree.chart.JFreeChart;

/** The frame as the owner sees it, at the top speed: without lengths. */
record OwnersGate(GatePicture gate) implements Picture {
  /**
   * Of a run that goes on the page, beside the one before it.
   *
   * @param runs the earlier first, the one that it is about last
   */
  static Optional<Picture> of(List<PageRun> runs) {
    PageRun last = runs.get(runs.size() - 1);
    List<CurtainPictures.Run> seen =
        runs.stream()
            .flatMap(
                run ->
                    CurtainRunFigures.of(run.firings()).stream()
                        .map(its -> new CurtainPictures.Run(run.setup().phase(), its)))
            .toList();
    Optional<CurtainSpeed> top =
        seen.stream().reduce((earlier, later) -> later).map(run -> run.figures().top());
    return top.flatMap(
        speed ->
            CurtainPictures.of(last.setup().shutter().kind(), seen, "")
                .flatMap(its -> its.gate(speed.speed(), last.setup().tolerance(speed.speed())))
                .filter(GatePicture.class::isInstance)
                .map(GatePicture.class::cast)
                .map(OwnersGate::withoutLengths));
  }

  private static OwnersGate withoutLengths(GatePicture gate) {
    return new OwnersGate(
        new GatePicture(
            gate.frame(),
            gate.speed(),
            gate.tolerance(),
            gate.tracks(),
            OptionalDouble.empty(),
            gate.note()));
  }

  /** The same of one or two runs. */
  static Optional<Picture> of(Optional<PageRun> before, PageRun last) {
    return of(
        Stream.concat(before.stream().filter(run -> !run.equals(last)), Stream.of(last)).toList());
  }

  @Override
  public JFreeChart chart(Theme theme) {
    JFreeChart chart = gate.chart(theme);
    chart.getXYPlot().getDomainAxis().setLabel(null);
    return chart;
  }

  @Override
  public DataTable table() {
    return gate.table();
  }
}
