package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigWork;
import org.halflight.calibration.HostClock;
import org.halflight.chart.PulseFitChart;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.record.ProfileStore;
import org.halflight.trouble.Trouble;
import org.halflight.words.ClockWords;
import org.halflight.words.ProfileWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.CalibrationSentences;
import org.halflight.workflow.RigUpkeep;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Calibrates a rig by its reference LED and the clock of this computer. */
@Command(name = "calibrate")
final class CalibrateCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Option(names = "--clock-seconds", paramLabel = "S", defaultValue = "120")
  private double clockSeconds;

  @Option(names = "--host-clock-ppm", paramLabel = "PPM")
  private @Nullable Double hostClockPpm;

  @Option(names = "--out", paramLabel = "FILE")
  private @Nullable Path out;

  @Option(names = "--fit", paramLabel = "FILE")
  private @Nullable Path fit;

  @Option(names = "--residuals", paramLabel = "FILE")
  private @Nullable Path residuals;

  @Mixin private RigOptions rig = new RigOptions();
  @Mixin private OutputOptions output = new OutputOptions();

  private Optional<OutFile> fitFile = Optional.empty();
  private Optional<OutFile> residualFile = Optional.empty();
  private Optional<OutFile> profileFile = Optional.empty();

  CalibrateCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Terminal terminal = surroundings.terminal();
    if (clockSeconds < 0) {
      throw new Trouble(Words.say("calibration.badSeconds", clockSeconds));
    }
    OutFiles files = output.files(List.of());
    fitFile = OutputOptions.asked(files, fit, FileKind.PICTURE);
    residualFile = OutputOptions.asked(files, residuals, FileKind.PICTURE);
    profileFile = OutputOptions.asked(files, out, FileKind.PROFILE);
    HostClock atFirst = surroundings.hostClock().get();
    terminal.say(Words.say("calibration.begin", Math.round(1.5 + clockSeconds / 60)));
    try (RigWork work = rig.work(surroundings)) {
      if (!RigWait.forGreeting(work, terminal)) {
        return 1;
      }
      // The system is asked in the background, and the rig took its time to greet.
      HostClock host =
          atFirst.equals(HostClock.NOT_KNOWN) ? surroundings.hostClock().get() : atFirst;
      report(
          RigUpkeep.calibrate(
              work,
              clockSeconds,
              hostClockPpm == null ? host.standardUncertaintyPpm() : hostClockPpm,
              surroundings.today(),
              stage -> terminal.say(CalibrationSentences.stage(stage)),
              new Quarters(terminal)));
      if (clockSeconds > 0 && hostClockPpm == null) {
        terminal.say(ClockWords.host(host));
      }
      return 0;
    }
  }

  private void report(RigCalibration.Calibrated done) {
    Terminal terminal = surroundings.terminal();
    String source = Sentences.source(done.profile().rig().serial());
    terminal.say(source);
    terminal.say(ProfileWords.lines(done.profile()));
    terminal.say(CalibrationSentences.lines(done, clockSeconds));
    // First what took minutes; then what may be drawn again from it.
    Path kept = new RigUpkeep(surroundings.folder()).keep(done.profile());
    terminal.say(Words.say("calibration.kept", kept));
    fitFile.ifPresent(to -> draw(done, false, to, source));
    residualFile.ifPresent(to -> draw(done, true, to, source));
    profileFile.ifPresent(to -> ProfileStore.write(done.profile(), to));
  }

  private void draw(RigCalibration.Calibrated done, boolean left, OutFile to, String source) {
    Pictures.write(
        new PulseFitChart(done.pulses(), done.fit(), left, source), to, surroundings.terminal());
  }
}
