package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.session.DialSetting;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainAdvice;

/**
 * What the firings of a view come to, in words of the bench.
 *
 * @param of what was fired last
 * @param mean verdict on the speed that was fired last; may be empty
 * @param lookAt what stands out in a run that is done, in a few words; may be empty
 * @param hints the same in sentences, or what the work has changed; may be empty
 * @param worst the speed of the latest run that is furthest outside its tolerance; empty for none
 * @param curtains what curtains come to; empty for other shutters
 * @param adjusted whether the speed that is adjusted by itself is within its tolerance
 */
public record RunWords(
    Optional<DialSetting> of,
    String mean,
    String lookAt,
    String hints,
    Optional<MarkedSpeed> worst,
    Optional<CurtainFindings> curtains,
    boolean adjusted) {
  /** Before anything was fired. */
  public static final RunWords NOTHING =
      new RunWords(Optional.empty(), "", "", "", Optional.empty(), Optional.empty(), false);

  /** The line of the mean, unless another speed was fired since. */
  public String mean(BenchView view) {
    return view.last().flatMap(LastFiring::setting).equals(of) ? mean : "";
  }

  /** What is advised about curtains. */
  public Optional<CurtainAdvice> curtainAdvice() {
    return curtains.map(CurtainFindings::advice);
  }

  /** The words of a view. Takes a while with many firings. */
  public static RunWords of(BenchView view) {
    Optional<CurtainFindings> curtains = CurtainFindings.of(view);
    return new RunWords(
        view.last().flatMap(LastFiring::setting),
        MeanText.of(view),
        RunHints.inShort(view, curtains),
        String.join(" ", RunHints.of(view, curtains)),
        RunHints.worst(view),
        curtains,
        RunHints.isAdjusted(view));
  }
}
