package org.halflight.bench;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.stream.Stream;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.DiscTrouble;
import org.halflight.calibration.PrintedDisc;
import org.halflight.profile.ProfiledRig;
import org.halflight.rig.RigMessage;
import org.halflight.words.DiscWords;
import org.halflight.words.Words;

/**
 * Leads to a reading of a slotted disc: the steps before it, and readings until it turns evenly.
 */
public final class DiscGuide {
  /** A motor that still runs up gets so many readings. */
  private static final int TRIES = 3;

  /** What came of it. */
  public sealed interface Outcome {}

  /**
   * Edges were taken.
   *
   * @param edges raw
   * @param reading what they come to
   */
  public record Read(DiscEdges edges, DiscReading.Outcome reading) implements Outcome {}

  /** None were. */
  public record NotTaken(DiscRun.Outcome why) implements Outcome {}

  private final RigWork work;
  private final Consumer<DiscRun.Stage> tell;
  private final Consumer<String> said;
  private final DoubleConsumer share;

  /**
   * @param work a rig that has greeted
   * @param tell hears how it goes on
   * @param said hears why a reading is made once more
   * @param share hears what part of the edges is in, 0 to 1
   */
  public DiscGuide(
      RigWork work, Consumer<DiscRun.Stage> tell, Consumer<String> said, DoubleConsumer share) {
    this.work = work;
    this.tell = tell;
    this.said = said;
    this.share = share;
  }

  /** What the person is asked to do, one after the other; with the last the disc turns. */
  public static List<String> steps() {
    return Stream.of("mount", "fill", "dark", "glasses", "start")
        .map(step -> Words.say("disc.step." + step))
        .toList();
  }

  /** Reads the disc that turns; once more where its speed is not even yet. */
  public Outcome read(double seconds, PrintedDisc disc, DiscProfile standing) {
    RigMessage.Greeting greeting = work.greeting().orElseThrow();
    ProfiledRig rig = new ProfiledRig(greeting.serial(), greeting.kind(), greeting.firmware());
    for (int tries = 1; ; tries++) {
      DiscRun.Outcome outcome = new DiscRun(work, tell, share).run(seconds, standing.used(rig));
      if (!(outcome instanceof DiscRun.Taken taken)) {
        return new NotTaken(outcome);
      }
      DiscReading.Outcome read = taken.edges().read(disc, standing.used(rig));
      if (tries < TRIES
          && read instanceof DiscReading.Failed failed
          && failed.trouble() instanceof DiscTrouble.Wanders) {
        said.accept(DiscWords.trouble(failed.trouble()) + " " + Words.say("disc.again"));
      } else {
        return new Read(taken.edges(), read);
      }
    }
  }
}
