package org.halflight.desk;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.CalibrationPlan;
import org.halflight.bench.DiscProfile;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigCheckRun;
import org.halflight.bench.RigWork;
import org.halflight.desk.view.RigModel;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.profile.RigProfile;
import org.halflight.record.ProfileStore;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * Rig check, calibration and profile, done to the rig of the session. What takes minutes goes on
 * within the bench thread's own steps: it takes lines and wishes meanwhile. For the bench thread
 * only.
 */
final class RigActions {
  private static final double NANOS = 1e9;

  private final BenchDriver driver;
  private final RigModel model;
  private final ProfileStore shelf;
  private final OptionalInt profileDays;
  private final Supplier<LocalDate> today;
  private Runnable meanwhile = () -> {};
  private Consumer<BenchDriver.Happening> tell = happening -> {};
  private Optional<RigWork> work = Optional.empty();
  private final DiscHands disc;

  /**
   * @param profileDays how old a profile may be to count as calibrated
   * @param camera the model camera, where there is one
   */
  RigActions(
      BenchDriver driver,
      RigModel model,
      ProfileStore shelf,
      OptionalInt profileDays,
      Supplier<LocalDate> today,
      Optional<ModelCamera> camera) {
    disc = new DiscHands(this, model, camera);
    this.driver = driver;
    this.model = model;
    this.shelf = shelf;
    this.profileDays = profileDays;
    this.today = today;
  }

  /**
   * Who goes on with everything else while the rig works for itself.
   *
   * @param each is done at every step of the work
   * @param happened takes what happens to the link
   */
  void joins(Runnable each, Consumer<BenchDriver.Happening> happened) {
    meanwhile = each;
    tell = happened;
  }

  /** Whether the rig works for itself now. */
  boolean isAtWork() {
    return work.isPresent();
  }

  /** Whether the window has something new to show of that work. */
  boolean moved() {
    return isAtWork() && model.now(seconds());
  }

  /** Ends the work that goes on, soon. */
  void stop() {
    disc.stopped();
    work.ifPresent(RigWork::stop);
  }

  /** The slotted disc. */
  DiscHands disc() {
    return disc;
  }

  /** Ten reference pulses against the profile. */
  void check() {
    Optional<RigProfile> profile = profile();
    if (!isReady()) {
      model.says(Words.say("desk.rig.notNow"));
    } else if (profile.isEmpty()) {
      model.says(Words.say("desk.rig.noProfile"));
    } else {
      model.checkBegins(seconds());
      lent(
          rig -> {
            RigCheckRun.Outcome outcome = new RigCheckRun(rig).run(profile.get());
            model.checked(outcome, profile.get().rig().serial());
            if (outcome instanceof RigCheckRun.Checked done) {
              handle(
                  new SessionInput.RigChecked(
                      profile.get().rig().serial(), done.check().inControl()));
            }
          });
    }
  }

  /**
   * A calibration by the reference LED.
   *
   * @param clockSeconds how long the clocks are held against each other; 0 leaves it out
   */
  void calibrate(double clockSeconds) {
    if (!isReady()) {
      model.says(Words.say("desk.rig.notNow"));
      return;
    }
    model.calibrationBegins(seconds(), clockSeconds);
    lent(
        rig -> {
          RigCalibration.Outcome outcome =
              new RigCalibration(
                      rig,
                      CalibrationPlan.USUAL.withPingSeconds(clockSeconds),
                      driver.hostClock().standardUncertaintyPpm(),
                      stage -> model.stage(stage, seconds()))
                  .run(today.get());
          model.calibrated(outcome);
          if (outcome instanceof RigCalibration.Calibrated done) {
            guarded(() -> shelf.keep(done.profile()));
            use(done.profile());
          }
        });
  }

  /** Writes the profile of this rig into a file. */
  void write(Path file) {
    guarded(
        () ->
            profile()
                .ifPresentOrElse(
                    profile -> {
                      OutFile to = OutFiles.neverReplacing().free(file, FileKind.PROFILE);
                      ProfileStore.write(profile, to);
                      model.says(
                          Words.say(
                              "profile.written",
                              profile.rig().serial(),
                              profile.date(),
                              to.path()));
                    },
                    () -> model.says(Words.say("desk.rig.noProfile"))));
  }

  /** Takes a profile in; it is used where it is this rig's. */
  void take(Path file) {
    guarded(
        () -> {
          RigProfile profile = ProfileStore.read(file);
          Path kept = shelf.keep(profile);
          use(profile);
          model.says(Words.say("profile.taken", profile.rig().serial(), profile.date(), kept));
        });
  }

  /** What goes wrong with a file is said at the rig, where it was asked for. */
  private void guarded(Runnable doing) {
    try {
      doing.run();
    } catch (Trouble trouble) {
      model.says(trouble.getMessage());
    }
  }

  private void use(RigProfile profile) {
    handle(new SessionInput.ProfileInUse(profile, today.get(), profileDays));
  }

  private void handle(SessionInput input) {
    tell.accept(new BenchDriver.Happening(Optional.empty(), driver.handle(input)));
  }

  private Optional<RigProfile> profile() {
    return session().profileUse().profile();
  }

  /** Lends the rig to some work, which takes lines and wishes meanwhile. */
  void lent(Consumer<RigWork> doing) {
    try (RigWork rig = driver.lend(meanwhile, tell)) {
      work = Optional.of(rig);
      doing.accept(rig);
    } finally {
      work = Optional.empty();
      model.idle();
    }
  }

  /** Whether it may work for itself: a firing or the light that goes on comes first. */
  boolean isReady() {
    return !isAtWork()
        && driver.workbench().fold().greeting().isPresent()
        && session().isQuiet()
        && !driver.isSettingLight();
  }

  private Session session() {
    return driver.workbench().fold().session();
  }

  /** What a disc is read with. */
  DiscProfile standing() {
    return new DiscProfile(profile(), today.get(), profileDays);
  }

  double seconds() {
    return driver.workbench().now() / NANOS;
  }
}
