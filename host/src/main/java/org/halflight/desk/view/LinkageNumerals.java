package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.Picture;
import org.halflight.desk.view.NumeralsText.Tone;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.words.AdvanceTimingWords;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Words;

/**
 * The linkage while it is set: the interval of the newest trial to be read at arm's length with
 * both hands on the camera, which way to turn, and the picture of the trials.
 */
final class LinkageNumerals {
  private LinkageNumerals() {}

  /** The numerals of the newest trial. */
  static NumeralsText of(AdvanceTiming linkage) {
    AdvanceTrial trial = linkage.newest();
    String note = Words.say("desk.linkage.note", linkage.trials().size());
    String way = AdvanceTimingWords.way(linkage, trial);
    if (trial.interval().isEmpty()) {
      return new NumeralsText(
          AdvanceTimingWords.inShort(linkage, trial), "", false, way, "", note, Tone.OUTCOME);
    }
    AdvanceTrial.Interval told = trial.interval().get();
    boolean good = linkage.verdict(trial) == AdvanceTiming.Verdict.GOOD;
    return new NumeralsText(
        AdvanceTimingWords.large(told.seconds()),
        "ms",
        true,
        way.isEmpty() ? AdvanceTimingWords.plusMinus(told) : way,
        AdvanceTimingWords.inShort(linkage, trial),
        note,
        good ? Tone.SETTLED : Tone.OUTCOME);
  }

  /** The linkage that is being set, where the newest firing of a view was a trial of it. */
  static Optional<AdvanceTiming> underWay(BenchView view) {
    return view.last()
        .flatMap(LastFiring::tried)
        .filter(linkage -> linkage.run() == view.run())
        .filter(linkage -> view.shown().flatMap(its -> its.untimedTest()).isPresent());
  }

  /** The picture of the trials. */
  static Optional<Picture> picture(BenchView view, AdvanceTiming linkage) {
    return ExtraTestPictures.of(linkage, BenchPictures.note(view));
  }

  /** How it stands, in a word or two. */
  static String word(AdvanceTiming linkage) {
    return Words.say(
        "desk.linkage.word",
        ExtraTestWords.name(linkage),
        AdvanceTimingWords.inShort(linkage, linkage.newest()));
  }
}
