package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import org.halflight.bench.LightPlan;
import org.halflight.extratest.ExtraTest;
import org.halflight.job.CheckState;
import org.halflight.session.LightReading;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Words;

/**
 * Where a test of the light stands: which reading is asked for, what came of the one before, and
 * what came of it all. For the bench thread only.
 */
public final class LightTestModel {
  private Optional<LightPlan> plan = Optional.empty();
  private int at;
  private boolean reads;
  private double ofReading;
  private int readSoFar;
  private String sentence = Words.say("desk.tried.ready");
  private String remark = "";

  /** A test begins with its first reading. */
  public void begins(LightPlan another) {
    plan = Optional.of(another);
    at = 0;
    readSoFar = 0;
    asks("");
  }

  /** The reading that is asked for or taken; empty while no test goes on. */
  public Optional<LightPlan.Step> step() {
    return plan.map(its -> its.steps().get(at));
  }

  /** Which test goes on; empty while none does. */
  public Optional<UntimedTest> check() {
    return plan.flatMap(LightPlan::check);
  }

  /** Whether the light is read now. */
  public boolean isReading() {
    return reads;
  }

  /** The person did what was asked; the light is read. */
  public void reads() {
    reads = true;
    ofReading = 0;
    sentence = Words.say("reading.wait");
    remark = "";
  }

  /** Part of the second that is read, 0 to 1; it may begin anew while the light comes to rest. */
  public void progress(double part) {
    ofReading = part;
  }

  /** The same is asked again, and why. */
  public void again(String why) {
    asks(why);
  }

  /**
   * A reading was taken.
   *
   * @param words what was read
   * @return whether another one is asked for
   */
  public boolean wasRead(String words) {
    readSoFar++;
    return next(words);
  }

  /**
   * The person skips a reading.
   *
   * @return whether another one is asked for
   */
  public boolean skipped() {
    boolean needed = step().filter(LightPlan.Step::needed).isPresent();
    return !needed && next(Words.say("desk.tried.skipped"));
  }

  private boolean next(String words) {
    if (at + 1 >= plan.orElseThrow().steps().size()) {
      return false;
    }
    at++;
    asks(words);
    return true;
  }

  private void asks(String why) {
    reads = false;
    ofReading = 0;
    sentence = step().orElseThrow().asked();
    remark = why;
  }

  /**
   * The test is over, at its end or because the person stopped it.
   *
   * @param readings of the session
   * @param runs what its runs were set up for
   * @param run in which it was made
   * @return what it came to; empty where too little was read
   */
  public Optional<ExtraTest> ends(List<LightReading> readings, List<RunSetup> runs, int run) {
    Optional<ExtraTest> found =
        readSoFar == 0 ? Optional.empty() : plan.flatMap(its -> its.found(readings, runs, run));
    plan = Optional.empty();
    reads = false;
    remark = "";
    sentence =
        found.map(LightTestModel::ended).orElseGet(() -> Words.say("desk.tried.nothingRead"));
    return found;
  }

  /** Where nothing could be judged, why and what to do; else the word, as the list has the rest. */
  private static String ended(ExtraTest tried) {
    return tried.state() == CheckState.NOT_TESTED
        ? ExtraTestWords.lines(tried).get(0)
        : Words.say("desk.tried.ended", ExtraTestWords.name(tried), ExtraTestWords.state(tried));
  }

  private static String brief(LightPlan.Step step) {
    return Words.of("desk.test", step.what(), step.at());
  }

  /** This is to be said while no test goes on. */
  public void says(String words) {
    sentence = words;
    remark = "";
  }

  /** What the window shows. */
  public LightTestView view() {
    int steps = plan.map(its -> its.steps().size()).orElse(0);
    return new LightTestView(
        plan.isEmpty()
            ? LightTestView.Doing.NOTHING
            : reads ? LightTestView.Doing.READING : LightTestView.Doing.ASKING,
        sentence,
        remark,
        steps == 0 ? 0 : at + 1,
        steps,
        steps == 0 ? 0 : (at + ofReading) / steps,
        check(),
        step().map(LightTestModel::brief).orElse(""));
  }
}
