package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.chart.DataTable;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.Picture;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.job.CheckItem;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/**
 * What was tried beside the marked speeds, as the window lists it. Takes a while to make: not for
 * the window's own thread.
 *
 * @param entries the newest run first
 */
public record ExtraTestsText(List<Entry> entries) {
  /**
   * One thing in one run.
   *
   * @param key tells it from the others of the session
   * @param headline what it is and how it was found
   * @param run in which it was tried, in words
   * @param sentences what it came to, a sentence a line
   * @param picture of it; empty where there is nothing to draw
   * @param twin the table of that picture
   */
  public record Entry(
      String key,
      String headline,
      String run,
      List<String> sentences,
      Optional<Picture> picture,
      Optional<DataTable> twin) {
    public Entry {
      sentences = List.copyOf(sentences);
    }
  }

  public ExtraTestsText {
    entries = List.copyOf(entries);
  }

  /** What a view shows. */
  public static ExtraTestsText of(BenchView view) {
    List<ExtraTest> tried = ExtraTests.of(view.evidence(), view.runs());
    String note = ExtraTestWords.source(view.results(), view.readings());
    List<Integer> runs =
        tried.stream()
            .map(ExtraTest::run)
            .distinct()
            .sorted((a, b) -> Integer.compare(b, a))
            .toList();
    List<Entry> entries = new ArrayList<>();
    for (int run : runs) {
      tried.stream()
          .filter(its -> its.run() == run)
          .map(its -> entry(its, note))
          .forEach(entries::add);
    }
    return new ExtraTestsText(entries);
  }

  private static Entry entry(ExtraTest tried, String note) {
    Optional<Picture> picture = ExtraTestPictures.of(tried, note);
    return new Entry(
        tried.run() + " " + tried.what(),
        Words.say("desk.tried.headline", ExtraTestWords.name(tried), ExtraTestWords.state(tried)),
        tried
            .phase()
            .map(phase -> Words.say("desk.tried.run", tried.run(), Sentences.phaseWithin(phase)))
            .orElseGet(() -> Words.say("desk.tried.noRun")),
        ExtraTestWords.lines(tried),
        picture,
        picture.map(Picture::table));
  }

  /**
   * What the firings of a check come to with the newest one; empty where that is no firing of a
   * check, where it went wrong, or where they say nothing yet.
   *
   * @param all firings of the session
   * @param runs what its runs were set up for
   */
  static Optional<String> ofCheck(
      List<FiringResult> all, List<RunSetup> runs, FiringResult newest) {
    Optional<UntimedTest> check = check(newest);
    boolean worked =
        newest.outcome() == Outcome.TIMED || newest.outcome() == Outcome.OPENS_HOLDS_CLOSES;
    if (check.isEmpty() || check.get().isOfTheLight() || !worked) {
      return Optional.empty();
    }
    Set<UntimedTest> asked = together(check.get());
    List<FiringResult> those =
        all.stream()
            .filter(firing -> firing.run() == newest.run())
            .filter(firing -> check(firing).filter(asked::contains).isPresent())
            .toList();
    return ExtraTests.of(those, List.of(), runs).stream()
        .filter(tried -> tried.item() == item(check.get()))
        .reduce((first, second) -> second)
        .map(tried -> ExtraTestWords.lines(tried).get(0));
  }

  private static Optional<UntimedTest> check(FiringResult firing) {
    return firing.setting().flatMap(DialSetting::untimedTest);
  }

  /** The sound of the shutter alone tells the clicks of a release apart. */
  private static Set<UntimedTest> together(UntimedTest check) {
    return check.isReadOnly()
        ? EnumSet.of(UntimedTest.WIND_AND_RELEASE, UntimedTest.RELEASE_ALONE)
        : EnumSet.of(check);
  }

  private static CheckItem item(UntimedTest check) {
    return switch (check) {
      case B, T -> CheckItem.B_AND_T;
      case SELF_TIMER -> CheckItem.SELF_TIMER;
      case LINKAGE, WIND_AND_RELEASE, RELEASE_ALONE -> CheckItem.WIND;
      case LEAK -> CheckItem.BLADES;
      case STOPS -> CheckItem.STOP_BLADES;
    };
  }
}
