package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.chart.Picture;
import org.halflight.chart.RunPictures;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.words.Words;

/** The light curve of the last firing; where it has none, why, and its edges instead. */
final class LastCurve {
  private LastCurve() {}

  static ShownPicture of(BenchView view) {
    return last(view)
        .map(firing -> ShownPicture.of(picture(view, firing)))
        .orElseGet(() -> ShownPicture.nothing(Words.say("desk.curve.empty")));
  }

  /** The same where the edges are drawn beside it: without a curve there are words alone. */
  static ShownPicture besideEdges(BenchView view) {
    return last(view)
        .map(
            firing ->
                RunPictures.curveOf(firing, BenchPictures.note(view))
                    .map(ShownPicture::of)
                    .orElseGet(() -> ShownPicture.nothing(why(view, firing))))
        .orElseGet(() -> ShownPicture.nothing(Words.say("desk.curve.empty")));
  }

  /** The edges of the last firing. */
  static ShownPicture edges(BenchView view) {
    return last(view)
        .map(firing -> ShownPicture.of(RunPictures.edges(firing, "", BenchPictures.note(view))))
        .orElseGet(() -> ShownPicture.nothing(Words.say("desk.edges.empty")));
  }

  private static Optional<FiringResult> last(BenchView view) {
    return view.results().stream()
        .filter(firing -> firing.outcome() != Outcome.HELD_FOR_LIGHT)
        .reduce((earlier, later) -> later);
  }

  private static Picture picture(BenchView view, FiringResult firing) {
    String note = BenchPictures.note(view);
    return RunPictures.curveOf(firing, note)
        .map(its -> (Picture) its)
        .orElseGet(() -> RunPictures.edges(firing, why(view, firing), note));
  }

  /** Why there is no light curve to draw. */
  private static String why(BenchView view, FiringResult firing) {
    return Words.say(
        firing.sampledLight().isPresent()
            ? "desk.curve.noLight"
            : view.results().stream().anyMatch(other -> other.sampledLight().isPresent())
                ? "desk.curve.notSent"
                : "desk.curve.never");
  }
}
