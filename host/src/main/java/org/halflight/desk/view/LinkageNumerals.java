package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.Picture;
import org.halflight.desk.view.NumeralsText.Tone;
import org.halflight.extratest.Linkage;
import org.halflight.extratest.LinkageTrial;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.LinkageWords;
import org.halflight.words.Words;

/**
 * The linkage while it is set: the interval of the newest trial to be read at arm's length with
 * both hands on the camera, which way to turn, and the picture of the trials.
 */
final class LinkageNumerals {
  private LinkageNumerals() {}

  /** The numerals of the newest trial. */
  static NumeralsText of(Linkage linkage) {
    LinkageTrial trial = linkage.newest();
    String note = Words.say("desk.linkage.note", linkage.trials().size());
    String way = LinkageWords.way(linkage, trial);
    if (trial.interval().isEmpty()) {
      return new NumeralsText(
          LinkageWords.inShort(linkage, trial), "", false, way, "", note, Tone.OUTCOME);
    }
    LinkageTrial.Interval told = trial.interval().get();
    boolean good = linkage.verdict(trial) == Linkage.Verdict.GOOD;
    return new NumeralsText(
        LinkageWords.large(told.seconds()),
        "ms",
        true,
        way.isEmpty() ? LinkageWords.plusMinus(told) : way,
        LinkageWords.inShort(linkage, trial),
        note,
        good ? Tone.SETTLED : Tone.OUTCOME);
  }

  /** The linkage that is being set, where the newest firing of a view was a trial of it. */
  static Optional<Linkage> underWay(BenchView view) {
    return view.last()
        .flatMap(LastFiring::tried)
        .filter(linkage -> linkage.run() == view.run())
        .filter(linkage -> view.shown().flatMap(its -> its.untimedTest()).isPresent());
  }

  /** The picture of the trials. */
  static Optional<Picture> picture(BenchView view, Linkage linkage) {
    return ExtraTestPictures.of(linkage, BenchPictures.note(view));
  }

  /** How it stands, in a word or two. */
  static String word(Linkage linkage) {
    return Words.say(
        "desk.linkage.word",
        ExtraTestWords.name(linkage),
        LinkageWords.inShort(linkage, linkage.newest()));
  }
}
