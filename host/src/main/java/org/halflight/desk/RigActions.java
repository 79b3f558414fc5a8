package org.halflight.desk;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigWork;
import org.halflight.calibration.RigCheck;
import org.halflight.desk.view.DiscForm;
import org.halflight.desk.view.RigModel;
import org.halflight.files.FileKind;
import org.halflight.files.OutFiles;
import org.halflight.profile.RigProfile;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.DiscProfile;
import org.halflight.workflow.DiscReadingWork;
import org.halflight.workflow.DiscSetup;
import org.halflight.workflow.FirstLightWork;
import org.halflight.workflow.Prompt;
import org.halflight.workflow.RigUpkeep;

/**
 * Rig check, calibration and profile, done to the rig of the session. What takes minutes goes on
 * within the bench thread's own steps: it takes lines and wishes meanwhile. For the bench thread
 * only.
 */
final class RigActions {
  private static final double NANOS = 1e9;

  private final BenchDriver driver;
  private final RigModel model;
  private final RigUpkeep upkeep;
  private final CameraOperator operator;
  private final OptionalInt profileDays;
  private final Supplier<LocalDate> today;
  private Runnable meanwhile = () -> {};
  private Consumer<BenchDriver.Happening> tell = happening -> {};
  private final Optional<BoardUpload> upload;
  private Done done = (words, whyNot, undo, redo) -> {};
  private Optional<RigWork> work = Optional.empty();
  private Optional<DiscReadingWork> disc = Optional.empty();
  private Optional<FirstLightWork> first = Optional.empty();

  /** Hears what was done to the rig. */
  interface Done {
    /**
     * Something was done.
     *
     * @param words what, in a few words
     * @param whyNot why it cannot be undone; empty where it can
     * @param undo undoes it, on the bench thread
     * @param redo does it again, on the bench thread
     */
    void done(
        String words,
        Optional<String> whyNot,
        Consumer<RigActions> undo,
        Consumer<RigActions> redo);
  }

  /**
   * @param profileDays how old a profile may be to count as calibrated
   * @param operator who works the camera, and a disc
   * @param upload puts firmware on the board; empty on the practice rig, which has none
   */
  RigActions(
      BenchDriver driver,
      RigModel model,
      RigUpkeep upkeep,
      OptionalInt profileDays,
      Supplier<LocalDate> today,
      CameraOperator operator,
      Optional<BoardUpload> upload) {
    this.driver = driver;
    this.model = model;
    this.upkeep = upkeep;
    this.operator = operator;
    this.upload = upload;
    this.profileDays = profileDays;
    this.today = today;
  }

  /**
   * Who goes on with everything else while the rig works for itself.
   *
   * @param each is done at every step of the work
   * @param happened takes what happens to the link
   * @param onBench does something on the bench thread, soon; from any thread
   */
  void joins(Runnable each, Consumer<BenchDriver.Happening> happened, Consumer<Runnable> onBench) {
    upload.ifPresent(board -> board.joins(onBench));
    meanwhile = each;
    tell = happened;
  }

  /** Who hears what was done to the rig. */
  void onDone(Done hearer) {
    done = hearer;
  }

  private void lasts(String key) {
    done.done(
        Words.say("act." + key), Optional.of(Words.say("desk.undo." + key)), r -> {}, r -> {});
  }

  /** Whether the rig works for itself now. */
  boolean isAtWork() {
    return work.isPresent() || upload.filter(BoardUpload::isUnderWay).isPresent();
  }

  /** Whether the window has something new to show of that work. */
  boolean moved() {
    if (first.isPresent()) {
      return model.shows(first.get());
    }
    return disc.isPresent()
        ? model.shows(disc.get().prompt())
        : work.isPresent() && model.now(seconds());
  }

  /** Ends the work that goes on, soon. */
  void stop() {
    upload.ifPresent(BoardUpload::stop);
    disc.ifPresent(reading -> reading.answer(Answer.STOP));
    firstAnswer(Answer.STOP);
    work.ifPresent(RigWork::stop);
  }

  /**
   * Puts firmware on the board.
   *
   * @param rig which rig the board is wired as; empty for what its firmware says
   */
  void upload(Optional<String> rig) {
    if (upload.isEmpty()) {
      model.says(Words.say("desk.rig.upload.practice"));
    } else if (isAtWork() || !(driver.isFree() || !hasRig())) {
      model.says(Words.say("desk.rig.notNow"));
    } else {
      upload.get().begin(rig, () -> lasts("firmware"));
    }
  }

  private boolean hasRig() {
    return driver.workbench().fold().greeting().isPresent();
  }

  /** Begins to read a slotted disc, or goes on where the person is asked to do something. */
  void disc(DiscForm form) {
    if (disc.isPresent()) {
      disc.get().answer(Answer.DONE);
      return;
    }
    Optional<DiscSetup> setup = form.read();
    if (!driver.isFree()) {
      model.says(Words.say("desk.rig.notNow"));
    } else if (setup.isEmpty()) {
      model.says(Words.say("desk.rig.disc.numbers"));
    } else {
      lent(rig -> read(rig, setup.get()));
    }
  }

  private void read(RigWork rig, DiscSetup setup) {
    DiscReadingWork reading =
        new DiscReadingWork(
            rig, setup, new DiscProfile(profile(), today.get(), profileDays), operator);
    disc = Optional.of(reading);
    try {
      while (reading.prompt().state() != Prompt.State.OVER) {
        reading.advance();
      }
    } finally {
      disc = Optional.empty();
    }
    reading
        .finding()
        .ifPresent(
            found -> {
              model.discRead(found);
              lasts("disc");
            });
    model.says(reading.prompt().sentence());
  }

  /** Begins first light of the rig. */
  void firstLight() {
    if (!driver.isFree()) {
      model.says(Words.say("desk.rig.notNow"));
      return;
    }
    model.firstLightBegins(session().results().size());
    lent(
        rig -> {
          FirstLightWork leads = new FirstLightWork(rig, operator);
          first = Optional.of(leads);
          try {
            while (leads.prompt().state() != Prompt.State.OVER) {
              leads.advance();
            }
          } finally {
            model.shows(leads);
            first = Optional.empty();
          }
          model.says(leads.prompt().sentence());
        });
  }

  /** The person answers what first light asks for. */
  void firstAnswer(Answer answer) {
    first.ifPresent(leads -> leads.answer(answer));
  }

  /** The person has typed the volts of the supply. */
  void firstVolts(String typed) {
    first.filter(FirstLightWork::asksForVolts).ifPresent(leads -> leads.volts(typed));
  }

  /** A page was written. */
  void pageWritten(Path page) {
    model.paged(page);
  }

  /** Ten reference pulses against the profile. */
  void check() {
    Optional<RigProfile> profile = profile().filter(RigProfile::hasPulses);
    if (!driver.isFree()) {
      model.says(Words.say("desk.rig.notNow"));
    } else if (profile.isEmpty()) {
      model.says(Words.say("desk.rig.noProfile"));
    } else {
      model.checkBegins(seconds());
      String serial = profile.get().rig().serial();
      lent(
          rig -> {
            RigCheck check = RigUpkeep.check(rig, profile.get());
            model.checked(check, serial);
            handle(new SessionInput.RigChecked(serial, check.inControl()));
            lasts("rigCheck");
          });
    }
  }

  /**
   * A calibration by the reference LED.
   *
   * @param clockSeconds how long the clocks are held against each other; 0 leaves it out
   */
  void calibrate(double clockSeconds) {
    if (!driver.isFree()) {
      model.says(Words.say("desk.rig.notNow"));
      return;
    }
    model.calibrationBegins(seconds(), clockSeconds);
    lent(
        rig -> {
          RigCalibration.Calibrated came =
              RigUpkeep.calibrate(
                  rig,
                  clockSeconds,
                  driver.hostClock().standardUncertaintyPpm(),
                  today.get(),
                  stage -> model.stage(stage, seconds()),
                  part -> {});
          model.calibrated(came);
          Optional<RigProfile> before = profile();
          guarded(() -> upkeep.keep(came.profile()));
          use(came.profile());
          isInUse(came.profile(), before);
        });
  }

  /** Writes the profile of this rig into a file. */
  void write(Path file) {
    guarded(
        () ->
            profile()
                .ifPresentOrElse(
                    profile ->
                        model.says(
                            RigUpkeep.write(
                                profile, OutFiles.neverReplacing().free(file, FileKind.PROFILE))),
                    () -> model.says(Words.say("desk.rig.noProfile"))));
  }

  /** Takes a profile in; it is used where it is this rig's. */
  void importProfile(Path file) {
    Optional<RigProfile> before = profile();
    guarded(
        () ->
            model.says(
                upkeep.importProfile(
                    file,
                    profile -> {
                      use(profile);
                      isInUse(profile, before);
                    })));
  }

  /** What goes wrong with a file is said at the rig, where it was asked for. */
  private void guarded(Runnable doing) {
    try {
      doing.run();
    } catch (Trouble trouble) {
      model.says(trouble.getMessage());
    }
  }

  private void isInUse(RigProfile profile, Optional<RigProfile> before) {
    // The profile of another rig takes no other's place.
    Optional<RigProfile> own =
        before.filter(its -> its.rig().serial().equals(profile.rig().serial()));
    done.done(
        Words.say("act.profile", profile.rig().serial(), profile.date()),
        Optional.empty(),
        rig -> rig.leave(profile, own),
        rig -> rig.useAgain(profile));
  }

  /** A profile is in use no longer, but the one before it, where there was one. */
  private void leave(RigProfile profile, Optional<RigProfile> before) {
    guarded(() -> upkeep.undoKeep(profile, before));
    if (before.isPresent()) {
      use(before.get());
    } else if (profile().filter(profile::equals).isPresent()) {
      handle(new SessionInput.ProfileLeftOut());
    }
  }

  private void useAgain(RigProfile profile) {
    guarded(() -> upkeep.keep(profile));
    use(profile);
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
  private void lent(Consumer<RigWork> doing) {
    try (RigWork rig = driver.lend(meanwhile, tell)) {
      work = Optional.of(rig);
      doing.accept(rig);
    } catch (RigUpkeep.Refused refused) {
      model.says(refused.getMessage());
    } finally {
      work = Optional.empty();
      model.idle();
    }
  }

  private Session session() {
    return driver.workbench().fold().session();
  }

  private double seconds() {
    return driver.workbench().now() / NANOS;
  }
}
