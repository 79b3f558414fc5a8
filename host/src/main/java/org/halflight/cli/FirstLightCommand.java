package org.halflight.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LiveFeed;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigWork;
import org.halflight.bench.Workbench;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.files.Reasons;
import org.halflight.firstlight.Fault;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstLightWords;
import org.halflight.firstlight.FirstStep;
import org.halflight.report.HandOverPage;
import org.halflight.report.PageAbout;
import org.halflight.report.RigReport;
import org.halflight.rig.RigSelector;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.signal.BoardTraits;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.halflight.words.Numbers;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.CalibrationSentences;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.FirstLightInSession;
import org.halflight.workflow.FirstLightWork;
import org.halflight.workflow.PracticeOperator;
import org.halflight.workflow.Prompt;
import org.halflight.workflow.RigUpkeep;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Leads through the first light of a rig, from its supply to its calibration. */
@Command(name = "first-light")
final class FirstLightCommand implements Callable<Integer> {
  private static final long SEED = 20;

  private final Surroundings surroundings;

  @Parameters(arity = "0..1", paramLabel = "FOLDER", defaultValue = "first-light")
  private Path folder;

  @Option(names = "--speed", paramLabel = "SPEED", defaultValue = "1/60")
  private String speed;

  @Option(names = "--practice", paramLabel = "KIND")
  private @Nullable String practice;

  @Option(names = "--clock-seconds", paramLabel = "S", defaultValue = "0")
  private double clockSeconds;

  @Mixin private RigOptions rig = new RigOptions();
  @Mixin private ProfileOptions profiles = new ProfileOptions();
  @Mixin private DecisionOptions decision = new DecisionOptions();
  @Mixin private OutputOptions output = new OutputOptions();

  private boolean stopped;

  FirstLightCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Dial dial =
        Dial.custom(speed).orElseThrow(() -> new Trouble(Words.say("firstlight.badSpeed", speed)));
    Path session = folder.resolve("first-light.session");
    makeFolder();
    OutFiles files = output.files(profiles.with(List.of(session)));
    OutFile page = files.file(folder.resolve("first-page.pdf"), FileKind.PAGE);
    OutFile report = files.file(folder.resolve("rig-report.pdf"), FileKind.PAGE);
    Optional<PracticeOperator> invented = invented();
    CameraOperator operator = invented.isPresent() ? invented.get() : CameraOperator.PERSON;
    Workbench workbench = Sessions.open(session, surroundings);
    try (BenchDriver driver =
        new BenchDriver(
            workbench,
            invented.isPresent()
                ? new LiveFeed(invented.get().ports(), RigSelector.any(), workbench::now)
                : rig.feed(surroundings, workbench::now),
            profiles.live(surroundings),
            surroundings.today())) {
      if (!new BenchTerminal(driver, terminal(), operator).waitForRig()) {
        return 1;
      }
      int before = workbench.fold().session().results().size();
      FirstLight state = inputs(driver, operator);
      if (!stopped) {
        session(driver, operator, dial);
        state = FirstLightInSession.of(state, workbench.fold().session(), before);
      }
      if (state.of(FirstStep.FIRING).isPassed()) {
        writePage(session, page);
        state = FirstLightInSession.paged(state, page.path());
      }
      if (!stopped && state.steps().contains(FirstStep.CALIBRATION)) {
        state = calibrate(driver, state);
      }
      terminal().say("");
      terminal().say(FirstLightWords.report(state));
      RigReport.write(
          state,
          Numbers.date(surroundings.today()),
          surroundings.version(),
          surroundings.pageStyle(false).paper(),
          report);
      terminal().written(report.path());
      return state.passed() == state.steps().size() ? 0 : 1;
    }
  }

  private Terminal terminal() {
    return surroundings.terminal();
  }

  private void makeFolder() {
    try {
      Files.createDirectories(folder);
    } catch (IOException noFolder) {
      throw new Trouble(Words.say("firstlight.noFolder", folder, Reasons.of(noFolder)), noFolder);
    }
  }

  private Optional<PracticeOperator> invented() {
    if (practice == null) {
      return Optional.empty();
    }
    BoardTraits.Kind kind = CliWords.constant(BoardTraits.Kind.WORDS, practice, "--practice");
    return Optional.of(
        PracticeOperator.paced(kind, SEED, surroundings.nanos(), surroundings.date().get()));
  }

  /** The inputs, on a rig that is lent: a hand before a sensor is no firing. */
  private FirstLight inputs(BenchDriver driver, CameraOperator operator) {
    GuidedTerminal guide = new GuidedTerminal(terminal());
    FirstLightWork[] begun = new FirstLightWork[1];
    try (RigWork work = driver.lend(() -> lead(begun[0], guide), happened -> {})) {
      FirstLightWork first = new FirstLightWork(work, operator);
      begun[0] = first;
      terminal()
          .say(
              Words.say(
                  "firstlight.begins", first.state().rig().serial(), first.state().steps().size()));
      terminal().say(Words.say("firstlight.caution"));
      if (operator.works()) {
        terminal().say(Words.say("firstlight.practice"));
      }
      while (first.prompt().state() != Prompt.State.OVER) {
        first.advance();
        work.changes().forEach(change -> terminal().say(change.sentence()));
      }
      guide.show(first.prompt());
      stopped = first.isStopped();
      return first.state();
    }
  }

  /** Shows what is asked for, and takes what is typed. */
  private void lead(@Nullable FirstLightWork first, GuidedTerminal guide) {
    if (first == null || first.prompt().state() == Prompt.State.OVER) {
      return;
    }
    guide.show(first.prompt());
    String seen = first.live();
    if (!seen.isEmpty()) {
      terminal().live(seen);
    }
    Optional<String> typed = terminal().typed();
    if (terminal().isOver()) {
      first.answer(Answer.STOP);
    } else if (typed.isPresent()) {
      String line = typed.get();
      if (first.asksForVolts() && GuidedTerminal.answer(line).isEmpty()) {
        first.volts(line);
      } else {
        guide.typed(line, first.prompt()).ifPresent(first::answer);
      }
    }
  }

  /** The light is set and the first firing taken. */
  private void session(BenchDriver driver, CameraOperator operator, Dial dial) {
    BenchTerminal bench = new BenchTerminal(driver, terminal(), operator);
    terminal().say(Words.say("firstlight.do.light"));
    if (bench.setLight()) {
      terminal().say(Words.say("firstlight.do.firing"));
      if (operator.works()) {
        terminal().say(Words.say("firstlight.fire", speed));
      }
      bench.run(
          new RunSetup(
              Words.say("firstlight.camera"),
              Phase.AS_FOUND,
              dial.name(),
              dial.speeds(),
              dial.reference(),
              1));
    }
    stopped = bench.isStopped();
  }

  private void writePage(Path session, OutFile to) {
    Optional<RunChoice> found =
        RunChoice.of(
            List.of(session),
            Phase.AS_FOUND,
            new RunChoice.Reading(decision, profiles, surroundings));
    PageAbout about = PageAbout.of("", ShutterKind.UNKNOWN, List.of());
    terminal()
        .say(
            HandOverPage.write(
                surroundings.page(RunChoice.page(about, found, Optional.empty())),
                surroundings.pageStyle(false),
                to));
    terminal().written(to.path());
  }

  private FirstLight calibrate(BenchDriver driver, FirstLight state) {
    terminal().say(Words.say("firstlight.do.calibration"));
    terminal().say(Words.say("firstlight.mayCalibrate"));
    Optional<String> typed = Optional.empty();
    while (typed.isEmpty() && !terminal().isOver()) {
      driver.step();
      typed = terminal().typed();
    }
    if (!typed.equals(Optional.of(""))) {
      return state;
    }
    try (RigWork work = driver.lend(() -> {}, told -> {})) {
      work.meanwhile(
          () -> {
            if (terminal().typed().filter("q"::equals).isPresent()) {
              work.stop();
            }
          });
      RigCalibration.Calibrated done =
          RigUpkeep.calibrate(
              work,
              clockSeconds,
              surroundings.hostClock().get().standardUncertaintyPpm(),
              surroundings.today(),
              stage -> terminal().say(CalibrationSentences.stage(stage)),
              new Quarters(terminal()));
      new RigUpkeep(surroundings.folder()).keep(done.profile());
      driver.handle(
          new SessionInput.ProfileInUse(done.profile(), surroundings.today(), OptionalInt.empty()));
      return FirstLightInSession.calibrated(state, done.profile());
    } catch (RigUpkeep.Refused refused) {
      terminal().say(refused.getMessage());
      return state.with(FirstStep.CALIBRATION, Finding.failed(Fault.NOT_CALIBRATED));
    }
  }
}
