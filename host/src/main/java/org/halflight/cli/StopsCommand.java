package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.halflight.bench.LightPlan;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.Picture;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.FNumber;
import org.halflight.extratest.StopScale;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.session.RunOption;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Words;
import org.halflight.workflow.RunForm;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Holds the stops of a lens against their markings. */
@Command(
    name = "stops",
    description =
        "Stop check: reads the light at each marked stop with the shutter held open, stopping down"
            + " and opening up again. Kept in the session file.")
final class StopsCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(paramLabel = "SESSION", description = "The session file; made if it is not there.")
  private Path session;

  @Option(
      names = "--stops",
      paramLabel = "LIST",
      split = ",",
      defaultValue = "2.8,4,5.6,8,11,16",
      description = "The marked stops of the lens. Default: 2.8,4,5.6,8,11,16.")
  private List<String> stops;

  @Option(
      names = "--tolerance",
      paramLabel = "STOPS",
      description =
          "How far a stop may be off its marking, such as 1/2 or 0.25. Default: as the run has it,"
              + " else a third of a stop (trade custom).")
  private String tolerance;

  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "Draw the stops against their markings (PNG).")
  private Path picture;

  @Option(
      names = "--practice",
      description = "On the practice rig, with invented stops, instead of a rig.")
  private boolean practice;

  @Mixin private RigOptions rig = new RigOptions();
  @Mixin private OutputOptions output = new OutputOptions();

  StopsCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    List<FNumber> numbers = LightPlan.numbers(stops);
    OptionalDouble within =
        tolerance == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(RunForm.value(RunOption.STOP_TOLERANCE, tolerance));
    Optional<OutFile> pictureFile =
        OutputOptions.asked(output.files(List.of(session)), picture, FileKind.PICTURE);
    int done = new LightTests(surroundings, session, rig, practice).run(LightPlan.stops(numbers));
    List<StopScale> scales =
        ExtraTests.stops(
            Sessions.readings(List.of(session)), Sessions.runs(List.of(session)), within);
    Terminal terminal = surroundings.terminal();
    terminal.say("");
    if (scales.isEmpty()) {
      terminal.say(Words.say("stops.none"));
      return 1;
    }
    StopScale last = scales.get(scales.size() - 1);
    String source = ExtraTestWords.source(List.of(), Sessions.readings(List.of(session)));
    terminal.say(ExtraTestWords.lines(last));
    terminal.say(source);
    Optional<Picture> drawn = ExtraTestPictures.of(last, source);
    if (drawn.isPresent() && pictureFile.isPresent()) {
      Pictures.write(drawn.get(), pictureFile.get());
      terminal.say(Words.say("export.written", picture));
    }
    return done;
  }
}
