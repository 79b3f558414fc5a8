package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import org.halflight.session.FiringResult;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Says for a second after each firing that counts how many there are now, in place of the speed to
 * set. By then it may be another speed.
 */
public final class CountedFirings {
  /** So long it is shown. */
  public static final long NANOS = 1_000_000_000;

  private @Nullable BenchView before;
  private Optional<NextText> counted = Optional.empty();
  private long since;

  /**
   * What to show of a view.
   *
   * @param nanos the clock of the moment, in nanoseconds
   */
  public NextText of(BenchView view, long nanos) {
    if (before != null) {
      Optional<NextText> more = oneMore(before, view);
      if (more.isPresent()) {
        counted = more;
        since = nanos;
      }
    }
    before = view;
    if (!isShown(nanos)) {
      counted = Optional.empty();
    }
    return counted.orElseGet(() -> NextText.of(view));
  }

  /** Whether a count is shown at a moment. */
  public boolean isShown(long nanos) {
    return counted.isPresent() && nanos - since < NANOS;
  }

  private static Optional<NextText> oneMore(BenchView before, BenchView view) {
    boolean fired =
        view.run() == before.run()
            && view.run() > 0
            && before.shown().isPresent()
            && view.results().size() > before.results().size()
            && last(view.results()).setting().equals(before.shown());
    if (!fired) {
      return Optional.empty();
    }
    boolean stays = view.shown().equals(before.shown());
    boolean counts =
        stays ? view.good() > before.good() : last(view.results()).answersTheQuestion();
    int good = stays ? view.good() : before.good() + 1;
    int wanted = before.wanted();
    return counts
        ? Optional.of(
            new NextText(
                Words.say("desk.next.label.counted"),
                "",
                NextText.of(before).wanted() > 0
                    ? Words.say("desk.next.counted", good, wanted)
                    : String.valueOf(good),
                "",
                good,
                wanted,
                "",
                true))
        : Optional.empty();
  }

  private static FiringResult last(List<FiringResult> results) {
    return results.get(results.size() - 1);
  }
}
