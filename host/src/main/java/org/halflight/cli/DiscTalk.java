package org.halflight.cli;

import java.util.List;
import java.util.Optional;
import org.halflight.bench.DiscEdges;
import org.halflight.bench.DiscRun;
import org.halflight.bench.DiscText;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.RigWork;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.DiscTrouble;
import org.halflight.calibration.PrintedDisc;
import org.halflight.profile.ProfiledRig;
import org.halflight.rig.RigMessage;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.speeds.Dial;
import org.halflight.trouble.Trouble;
import org.halflight.words.DiscWords;
import org.halflight.words.Words;

/** Leads the person to a disc that turns evenly, and takes its edges. */
final class DiscTalk {
  private static final long SEED = 20;

  /** A motor that still runs up gets so many readings. */
  private static final int TRIES = 3;

  /** Light and levels take this beside the edges, in seconds. */
  private static final int LIGHT_SECONDS = 3;

  private static final List<String> STEPS = List.of("mount", "fill", "dark", "glasses", "start");

  /** What was taken, and what it came to. */
  record Read(DiscEdges edges, DiscReading.Outcome outcome) {}

  private final Surroundings surroundings;
  private final RigOptions rig;
  private final boolean practice;
  private final double seconds;

  DiscTalk(Surroundings surroundings, RigOptions rig, boolean practice, double seconds) {
    this.surroundings = surroundings;
    this.rig = rig;
    this.practice = practice;
    this.seconds = seconds;
  }

  /**
   * Reads a disc.
   *
   * @return empty when the person gave up
   * @throws Trouble when nothing could be taken
   */
  Optional<Read> read(PrintedDisc disc, DiscProfile profile) {
    Terminal terminal = surroundings.terminal();
    terminal.say(Words.say("disc.caution"));
    if (practice) {
      terminal.say(Words.say("disc.practice"));
    } else if (!stepsAreDone()) {
      terminal.say(Words.say("disc.off"));
      return Optional.empty();
    }
    terminal.say(Words.say("disc.begin", Math.round(seconds) + LIGHT_SECONDS));
    try (RigWork work = practice ? practiceWork() : rig.work(surroundings)) {
      if (!RigWait.forGreeting(work, terminal)) {
        return Optional.empty();
      }
      RigMessage.Greeting greeting = work.greeting().orElseThrow();
      profile.look(new ProfiledRig(greeting.serial(), greeting.kind(), greeting.firmware()));
      return Optional.of(read(work, disc, profile));
    } finally {
      if (!practice) {
        terminal.say(Words.say("disc.off"));
      }
    }
  }

  private boolean stepsAreDone() {
    Terminal terminal = surroundings.terminal();
    terminal.say(Words.say("disc.steps"));
    for (String step : STEPS) {
      terminal.say(Words.say("disc.step." + step));
      if (terminal.waitForTyped().filter("q"::equals).isPresent()) {
        return false;
      }
    }
    return true;
  }

  private Read read(RigWork work, PrintedDisc disc, DiscProfile profile) {
    Terminal terminal = surroundings.terminal();
    for (int tries = 1; ; tries++) {
      DiscRun.Outcome outcome =
          new DiscRun(work, stage -> terminal.say(DiscText.stage(stage)), new Quarters(terminal))
              .run(seconds, profile.used());
      if (!(outcome instanceof DiscRun.Taken taken)) {
        throw new Trouble(DiscText.notTaken(outcome));
      }
      DiscReading.Outcome read = taken.edges().read(disc, profile.used());
      if (tries < TRIES
          && read instanceof DiscReading.Failed failed
          && failed.trouble() instanceof DiscTrouble.Wanders) {
        terminal.say(DiscWords.trouble(failed.trouble()));
        terminal.say(Words.say("disc.again"));
      } else {
        return new Read(taken.edges(), read);
      }
    }
  }

  private RigWork practiceWork() {
    PracticeRig model =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(Dial.find("leaf").orElseThrow().speeds(), SEED),
            SensorSet.INVENTED,
            SEED);
    model.turnDisc(TurningDisc.invented(SEED));
    StoppableFeed feed =
        new StoppableFeed(new PumpFeed(model, surroundings.nanos()), surroundings.terminal());
    RigWork work = new RigWork(feed);
    feed.stops(work::stop);
    return work;
  }
}
