package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.halflight.chart.BudgetBars;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.FiringRow;
import org.halflight.chart.LightCurvePicture;
import org.halflight.chart.Picture;
import org.halflight.chart.RunPictures;
import org.halflight.chart.StagesPicture;
import org.halflight.extratest.Evidence;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.StageRuns;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Draws pictures. */
@Command(name = "picture")
final class PictureCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(arity = "1..*", paramLabel = "SESSION")
  private List<Path> sessions;

  @Option(names = "--map", paramLabel = "FILE")
  private @Nullable Path map;

  @Option(names = "--row", paramLabel = "FILE")
  private @Nullable Path row;

  @Option(names = "--curve", paramLabel = "FILE")
  private @Nullable Path curve;

  @Option(names = "--budget", paramLabel = "FILE")
  private @Nullable Path budget;

  @Option(names = "--extra-tests", paramLabel = "FOLDER")
  private @Nullable Path extraTests;

  @Option(names = "--stages", paramLabel = "FILE")
  private @Nullable Path stages;

  @Option(names = "--curtains", paramLabel = "FOLDER")
  private @Nullable Path curtains;

  @Option(names = "--times", paramLabel = "FILE")
  private @Nullable Path times;

  @Option(names = "--speed", paramLabel = "SPEED")
  private @Nullable String speed;

  @Option(names = "--phase", paramLabel = "PHASE")
  private @Nullable String phase;

  @Mixin private DecisionOptions decision = new DecisionOptions();
  @Mixin private ProfileOptions profiles = new ProfileOptions();
  @Mixin private OutputOptions output = new OutputOptions();

  PictureCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    boolean ofSpeeds = map != null || row != null || curve != null || budget != null;
    if (!ofSpeeds && extraTests == null && stages == null && times == null && curtains == null) {
      throw new Trouble(Words.say("picture.nothing"));
    }
    OutFiles files = output.files(profiles.with(sessions));
    Optional<OutFile> mapFile = OutputOptions.asked(files, map, FileKind.PICTURE);
    Optional<OutFile> rowFile = OutputOptions.asked(files, row, FileKind.PICTURE);
    Optional<OutFile> curveFile = OutputOptions.asked(files, curve, FileKind.PICTURE);
    Optional<OutFile> budgetFile = OutputOptions.asked(files, budget, FileKind.PICTURE);
    Optional<OutFile> stagesFile = OutputOptions.asked(files, stages, FileKind.PICTURE);
    Optional<OutFile> timesFile = OutputOptions.asked(files, times, FileKind.PICTURE);
    List<FiringResult> firings = Sessions.firings(sessions, profiles, surroundings);
    if (extraTests != null) {
      drawTried(extraTests, Sessions.evidence(sessions, firings), files);
    }
    if (curtains != null) {
      drawCurtains(curtains, firings, files);
    }
    stagesFile.ifPresent(to -> draw(stages(firings), to));
    timesFile.ifPresent(to -> draw(times(firings), to));
    if (!ofSpeeds) {
      return 0;
    }
    List<RunSummary> runs = decision.summaries(firings, RunNotes.setups(sessions));
    if (runs.isEmpty()) {
      throw new Trouble(Words.say("picture.noRun"));
    }
    String note = Sentences.source(firings);
    mapFile.ifPresent(to -> draw(RunPictures.speedMap(Words.say("picture.map"), runs, note), to));
    rowFile.ifPresent(to -> draw(firingRow(firings, chosen(runs), note), to));
    curveFile.ifPresent(to -> draw(lightCurve(firings, chosen(runs), note), to));
    budgetFile.ifPresent(to -> draw(budget(chosen(runs), note), to));
    return 0;
  }

  private void draw(Picture picture, OutFile to) {
    Pictures.write(picture, to, surroundings.terminal());
  }

  private StagesPicture stages(List<FiringResult> firings) {
    return StageRuns.of(firings, Sessions.runs(sessions)).stream()
        .reduce((first, second) -> second)
        .map(last -> new StagesPicture(last, Sentences.source(firings)))
        .orElseThrow(() -> new Trouble(Words.say("picture.noStages")));
  }

  private static Picture times(List<FiringResult> firings) {
    return RunPictures.times(firings, Sentences.source(firings))
        .orElseThrow(() -> new Trouble(Words.say("picture.noTimes")));
  }

  private FiringRow firingRow(List<FiringResult> firings, SpeedSummary summary, String note) {
    if (RunPictures.releases(firings, summary).isEmpty()) {
      throw new Trouble(Words.say("picture.noRow", summary.speed()));
    }
    return RunPictures.firingRow(firings, summary, note);
  }

  private void drawTried(Path folder, Evidence all, OutFiles files) {
    int drawn = 0;
    Pictures.folder(folder);
    String note = ExtraTestWords.source(all.firings(), all.readings());
    for (ExtraTest tried : ExtraTests.of(all, Sessions.runs(sessions))) {
      Optional<Picture> picture = ExtraTestPictures.of(tried, note);
      if (picture.isPresent()) {
        drawn++;
        String phase = tried.phase().map(its -> "-" + Phase.WORDS.word(its)).orElse("");
        Path file = folder.resolve(drawn + "-" + tried.what() + phase + ".png");
        draw(picture.get(), files.file(file, FileKind.PICTURE));
      }
    }
    if (drawn == 0) {
      throw new Trouble(Words.say("picture.noneTried"));
    }
  }

  private void drawCurtains(Path folder, List<FiringResult> firings, OutFiles files) {
    Map<String, Picture> pictures =
        CurtainDrawings.of(
            firings, RunNotes.setups(sessions), phase, speed, Sentences.source(firings));
    if (pictures.isEmpty()) {
      throw new Trouble(Words.say("picture.noCurtains"));
    }
    Pictures.folder(folder);
    pictures.forEach(
        (name, picture) -> draw(picture, files.file(folder.resolve(name), FileKind.PICTURE)));
  }

  private LightCurvePicture lightCurve(
      List<FiringResult> firings, SpeedSummary summary, String note) {
    return RunPictures.lightCurve(RunPictures.releases(firings, summary), note)
        .orElseThrow(() -> new Trouble(Words.say("picture.noCurve", summary.speed())));
  }

  private static BudgetBars budget(SpeedSummary summary, String note) {
    return BudgetBars.of(summary, note)
        .orElseThrow(() -> new Trouble(Words.say("picture.noBudget", summary.speed())));
  }

  private SpeedSummary chosen(List<RunSummary> runs) {
    String asked =
        Optional.ofNullable(speed).orElseThrow(() -> new Trouble(Words.say("picture.noSpeed")));
    return runs.stream()
        .filter(run -> phase == null || Phase.WORDS.word(run.phase()).equals(phase))
        .flatMap(run -> run.speeds().stream())
        .filter(summary -> summary.speed().label().equals(asked))
        .reduce((first, second) -> second)
        .orElseThrow(() -> new Trouble(Words.say("picture.speedNotFired", asked)));
  }
}
