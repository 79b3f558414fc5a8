package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.halflight.bench.LightPlan;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.Picture;
import org.halflight.extratest.FNumber;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.session.RunOption;
import org.halflight.workflow.LightTestWork;
import org.halflight.workflow.RunForm;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Holds the stops of a lens against their markings. */
@Command(name = "stops")
final class StopsCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Mixin private LightTestOptions test = new LightTestOptions();

  @Option(names = "--stops", paramLabel = "LIST", split = ",", defaultValue = "2.8,4,5.6,8,11,16")
  private List<String> stops;

  @Option(names = "--tolerance", paramLabel = "STOPS")
  private @Nullable String tolerance;

  @Option(names = "--picture", paramLabel = "FILE")
  private @Nullable Path picture;

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
        OutputOptions.asked(output.files(List.of(test.session())), picture, FileKind.PICTURE);
    Optional<LightTestWork> done = test.lead(LightPlan.stops(numbers, within), surroundings);
    Optional<Picture> drawn =
        done.flatMap(LightTestWork::found)
            .flatMap(scale -> ExtraTestPictures.of(scale, test.source()));
    if (drawn.isPresent() && pictureFile.isPresent()) {
      Pictures.write(drawn.get(), pictureFile.get(), surroundings.terminal());
    }
    return done.isPresent() ? 0 : 1;
  }
}
