package org.halflight.workflow;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.halflight.bench.CalibrationPlan;
import org.halflight.bench.CalibrationRefusal;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigCheckRun;
import org.halflight.bench.RigWork;
import org.halflight.calibration.RigCheck;
import org.halflight.files.OutFile;
import org.halflight.profile.ClockRate;
import org.halflight.profile.RigProfile;
import org.halflight.record.ProfileStore;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** What is done to a rig itself and kept with it: calibration, rig check, its profiles. */
public final class RigUpkeep {
  private final ProfileStore shelf;

  /** A calibration or a rig check that cannot be made as the rig stands. */
  public static final class Refused extends Trouble {
    private static final long serialVersionUID = 1L;

    private Refused(String why) {
      super(why);
    }

    Refused(CalibrationRefusal refusal) {
      super(CalibrationSentences.refused(refusal));
    }
  }

  /**
   * @param dataFolder where the record is
   */
  public RigUpkeep(Path dataFolder) {
    shelf = new ProfileStore(dataFolder);
  }

  /**
   * Calibrates a rig by its reference LED. What comes of it is not kept yet.
   *
   * @param clockSeconds how long the clocks are held against each other; 0 leaves it out
   * @param hostClockPpm standard uncertainty of the host's own clock
   * @param today date of the profile
   * @param tell hears each stage as it begins
   * @param share hears what part of a long stage is done, 0 to 1
   * @throws Refused when it cannot be made
   */
  public static RigCalibration.Calibrated calibrate(
      RigWork work,
      double clockSeconds,
      double hostClockPpm,
      LocalDate today,
      Consumer<RigCalibration.Stage> tell,
      DoubleConsumer share) {
    requireLed(work);
    RigCalibration.Outcome outcome =
        new RigCalibration(
                work,
                CalibrationPlan.USUAL.withPingSeconds(clockSeconds),
                hostClockPpm,
                tell,
                share)
            .run(today);
    if (outcome instanceof RigCalibration.Refused refused) {
      throw new Refused(refused.refusal());
    }
    return (RigCalibration.Calibrated) outcome;
  }

  /**
   * Ten reference pulses against a profile of the rig.
   *
   * @throws Refused when they cannot be made
   */
  public static RigCheck check(RigWork work, RigProfile profile) {
    requireLed(work);
    RigCheckRun.Outcome outcome = new RigCheckRun(work).run(profile);
    if (outcome instanceof RigCheckRun.Refused refused) {
      throw new Refused(refused.refusal());
    }
    return ((RigCheckRun.Checked) outcome).check();
  }

  private static void requireLed(RigWork work) {
    if (work.greeting().filter(its -> !its.board().referenceLed()).isPresent()) {
      throw new Refused(Words.say("calibration.noLed"));
    }
  }

  /**
   * Keeps a profile for its rig.
   *
   * @return where it is
   * @throws Trouble when it cannot be written
   */
  public Path keep(RigProfile profile) {
    return shelf.keep(profile);
  }

  /**
   * Undoes that a profile was kept: it is set aside, and the one before it is kept again.
   *
   * @throws Trouble when it cannot be moved or written
   */
  public void undoKeep(RigProfile profile, Optional<RigProfile> before) {
    shelf.setAside(profile);
    before.ifPresent(shelf::keep);
  }

  /**
   * The newest profile of a rig.
   *
   * @throws Trouble when there is none, or it was edited or cut
   */
  public RigProfile newest(String serial) {
    return shelf
        .newest(serial)
        .orElseThrow(() -> new Trouble(Words.say("check.noProfile", serial)));
  }

  /**
   * Puts a rate of its clock into the newest profile of a rig.
   *
   * @return what is to be said of it
   * @throws Trouble when there is no profile, or it cannot be read or written
   */
  public String keepClock(String serial, ClockRate rate) {
    return Words.say("clock.kept", serial, shelf.keep(newest(serial).withClock(rate)));
  }

  /**
   * Takes a profile in from a file.
   *
   * @param use takes the profile once it is kept
   * @return what is to be said of it
   * @throws Trouble when the file was edited or cut, or cannot be read or kept
   */
  public String importProfile(Path file, Consumer<RigProfile> use) {
    RigProfile profile = ProfileStore.read(file);
    Path kept = shelf.keep(profile);
    use.accept(profile);
    return Words.say("profile.taken", profile.rig().serial(), profile.date(), kept);
  }

  /**
   * Writes a profile into a file.
   *
   * @return what is to be said of it
   */
  public static String write(RigProfile profile, OutFile to) {
    ProfileStore.write(profile, to);
    return Words.say("profile.written", profile.rig().serial(), profile.date(), to.path());
  }
}
