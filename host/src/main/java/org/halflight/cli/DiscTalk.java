package org.halflight.cli;

import java.util.Optional;
import java.util.function.Function;
import org.halflight.bench.DiscGuide;
import org.halflight.bench.DiscProfile;
import org.halflight.bench.DiscSentences;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.RigWork;
import org.halflight.calibration.PrintedDisc;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.speeds.Dial;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Leads the person to a disc that turns evenly, and takes its edges. */
final class DiscTalk {
  private static final long SEED = 20;

  /** Light and levels take this beside the edges, in seconds. */
  private static final int LIGHT_SECONDS = 3;

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
   * @param standing what profile there is for the serial number of a rig
   * @return empty when the person gave up
   * @throws Trouble when nothing could be taken
   */
  Optional<DiscGuide.Read> read(PrintedDisc disc, Function<String, DiscProfile> standing) {
    Terminal terminal = surroundings.terminal();
    terminal.say(Words.say("disc.caution"));
    if (practice) {
      terminal.say(Words.say("disc.practice"));
      return taken(disc, standing);
    }
    try {
      return stepsAreDone() ? taken(disc, standing) : Optional.empty();
    } finally {
      terminal.say(Words.say("disc.off"));
    }
  }

  private boolean stepsAreDone() {
    Terminal terminal = surroundings.terminal();
    terminal.say(Words.say("disc.steps"));
    int number = 1;
    for (String step : DiscGuide.steps()) {
      terminal.say(Words.say("disc.step", number++, step));
      if (terminal.waitForTyped().filter("q"::equals).isPresent()) {
        return false;
      }
    }
    return true;
  }

  private Optional<DiscGuide.Read> taken(PrintedDisc disc, Function<String, DiscProfile> standing) {
    Terminal terminal = surroundings.terminal();
    terminal.say(Words.say("disc.begin", Math.round(seconds) + LIGHT_SECONDS));
    try (RigWork work = practice ? practiceWork() : rig.work(surroundings)) {
      if (!RigWait.forGreeting(work, terminal)) {
        return Optional.empty();
      }
      DiscGuide.Outcome outcome =
          new DiscGuide(
                  work,
                  stage -> terminal.say(DiscSentences.stage(stage)),
                  terminal::say,
                  new Quarters(terminal))
              .read(seconds, disc, standing.apply(work.greeting().orElseThrow().serial()));
      if (outcome instanceof DiscGuide.NotTaken none) {
        throw new Trouble(DiscSentences.notTaken(none.why()));
      }
      return Optional.of((DiscGuide.Read) outcome);
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
