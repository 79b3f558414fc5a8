package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.extratest.Evidence;
import org.halflight.session.AdjustedAt;
import org.halflight.session.AdjusterTurn;
import org.halflight.session.CurtainStep;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.LinkagePress;
import org.halflight.session.PlungerAt;
import org.halflight.session.Question;
import org.halflight.session.QuickRepeat;
import org.halflight.session.RunSetup;
import org.halflight.speeds.Dial;
import org.halflight.verdict.TwoAtOnce;

/**
 * Everything that the window shows of the bench, at one moment.
 *
 * @param link how things stand with the rig
 * @param light the light and its setting
 * @param setup the run under way or done; empty before one was begun
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param camera the owner's label of the camera on the bench; empty before it was named
 * @param dial the marked speeds of that camera
 * @param shown what the dial is to stand at
 * @param good firings of it that have what was asked for
 * @param wanted firings asked for; 0 where none are
 * @param repeat the speed that a quick look asks for again; empty in other runs
 * @param runDone whether every speed of the run has its firings
 * @param justDone the speed that has just got its last firing, until the next firing begins
 * @param last the firing whose numerals are shown
 * @param openSeconds how long the shutter has been open, where that is longer than expected
 * @param results all firings of the session
 * @param question that waits for an answer
 * @param marks adjustments
 * @param turns how adjusters were found and what was turned since, in order
 * @param step of adjusting curtains that is open; empty before one was opened
 * @param two how the two speeds that are adjusted at once stand; empty while it is one at a time
 * @param runs what each run of this session was set up for, in order
 * @param cocking what is known of light while cocking
 * @param capOn whether the lens cap is said to be on
 * @param conditions special ones of the next firing
 * @param said the last sentence
 * @param rig the rig, and the work on it that goes on
 * @param readings all readings of the light of the session
 * @param presses all presses of the linkage test
 * @param plungers all readings of a screw plunger
 * @param lightTest the leak test or stop check that goes on
 * @param linkage the linkage test that goes on or has just ended
 * @param undo what was done in the session and can be undone, or done again
 */
public record BenchView(
    LinkView link,
    LightView light,
    Optional<RunSetup> setup,
    int run,
    String camera,
    Optional<Dial> dial,
    Optional<DialSetting> shown,
    int good,
    int wanted,
    Optional<QuickRepeat> repeat,
    boolean runDone,
    Optional<DialSetting> justDone,
    Optional<LastFiring> last,
    OptionalDouble openSeconds,
    List<FiringResult> results,
    Optional<Question> question,
    List<AdjustedAt> marks,
    List<AdjusterTurn> turns,
    Optional<CurtainStep> step,
    Optional<TwoAtOnce> two,
    List<RunSetup> runs,
    Cocking cocking,
    boolean capOn,
    FiringConditions conditions,
    Optional<Message> said,
    RigView rig,
    List<LightReading> readings,
    List<LinkagePress> presses,
    List<PlungerAt> plungers,
    LightTestView lightTest,
    LinkageView linkage,
    SessionUndo undo) {
  /** What is known of light while cocking. */
  public enum Cocking {
    /** Nothing. */
    UNKNOWN,
    /** Strokes are being learnt. */
    LEARNING,
    /** It is known again. */
    LEARNT
  }

  public BenchView {
    readings = List.copyOf(readings);
    presses = List.copyOf(presses);
    plungers = List.copyOf(plungers);
    results = List.copyOf(results);
    marks = List.copyOf(marks);
    turns = List.copyOf(turns);
    runs = List.copyOf(runs);
  }

  /** All that there is to find out from. */
  public Evidence evidence() {
    return new Evidence(results, readings, presses, plungers);
  }
}
