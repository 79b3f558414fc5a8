package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.halflight.bench.DiscEdges;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.RigWork;
import org.halflight.calibration.PrintedDisc;
import org.halflight.chart.DiscChart;
import org.halflight.export.DiscEdgesTable;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.SessionInput;
import org.halflight.trouble.Trouble;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.words.DiscWords;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.DiscFinding;
import org.halflight.workflow.DiscProfile;
import org.halflight.workflow.DiscReadingWork;
import org.halflight.workflow.DiscSetup;
import org.halflight.workflow.PracticeOperator;
import org.halflight.workflow.Prompt;
import org.halflight.workflow.RigUpkeep;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Reads a slotted disc that turns before the sensor. */
@Command(name = "read")
final class DiscReadCommand implements Callable<Integer> {
  private static final long SEED = 20;

  private final Surroundings surroundings;

  @Option(names = "--seconds", paramLabel = "S", defaultValue = "6")
  private double seconds;

  @Option(names = "--cut", paramLabel = "MM", defaultValue = "0.1")
  private double cut;

  @Option(names = "--radius", paramLabel = "MM", defaultValue = "63")
  private double radius;

  @Option(names = "--slots", paramLabel = "DEGREES", split = ",")
  private List<Double> slots = PrintedDisc.SLOT_DEGREES;

  @Option(names = "--rpm", paramLabel = "RPM")
  private @Nullable Double turnsAMinute;

  @Option(names = "--rpm-ppm", paramLabel = "PPM", defaultValue = "577")
  private double speedPpm;

  @Option(names = "--keep")
  private boolean keep;

  @Option(names = "--edges", paramLabel = "FILE")
  private @Nullable Path edgesFile;

  @Option(names = "--from", paramLabel = "FILE")
  private @Nullable Path from;

  @Option(names = "--picture", paramLabel = "FILE")
  private @Nullable Path picture;

  @Option(names = "--practice")
  private boolean practice;

  @Mixin private RigOptions rig = new RigOptions();
  @Mixin private ProfileOptions profiles = new ProfileOptions();
  @Mixin private OutputOptions output = new OutputOptions();

  private Optional<OutFile> pictureFile = Optional.empty();

  DiscReadCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    DiscSetup setup = setup();
    if (keep && turnsAMinute == null) {
      throw new Trouble(Words.say("disc.keepNoSpeed"));
    }
    OutFiles files = output.files(profiles.with(from == null ? List.of() : List.of(from)));
    Optional<OutFile> edgesOut = OutputOptions.asked(files, edgesFile, FileKind.EDGES);
    pictureFile = OutputOptions.asked(files, picture, FileKind.PICTURE);
    if (from != null) {
      DiscEdges edges = DiscEdgesTable.read(from);
      return report(DiscFinding.of(edges, profile(edges.rig().serial()), setup));
    }
    Optional<PracticeRig> model =
        practice
            ? Optional.of(PracticeOperator.unpacedRig(SEED, surroundings.date().get()))
            : Optional.empty();
    DiscReadingWork reading;
    try (RigWork work =
        model.isPresent()
            ? RigOptions.listening(
                new PumpFeed(model.get(), surroundings.nanos()), surroundings.terminal())
            : rig.work(surroundings)) {
      if (!RigWait.forGreeting(work, surroundings.terminal())) {
        return 1;
      }
      reading =
          new DiscReadingWork(
              work,
              setup,
              profile(work.rig().serial()),
              model.isPresent() ? new PracticeOperator(model.get(), SEED) : CameraOperator.PERSON);
      lead(reading, work);
    }
    if (edgesOut.isPresent() && reading.edges().isPresent()) {
      DiscEdgesTable.write(reading.edges().get(), edgesOut.get());
      surroundings.terminal().written(edgesOut.get().path());
    }
    return report(reading.finding().orElseThrow(() -> new Trouble(reading.came())));
  }

  /** Leads through the reading on a rig that was lent to it. */
  private void lead(DiscReadingWork reading, RigWork work) {
    Terminal terminal = surroundings.terminal();
    if (practice) {
      terminal.say(Words.say("disc.practice"));
    }
    GuidedTerminal guide = new GuidedTerminal(terminal);
    Quarters quarters = new Quarters(terminal);
    work.meanwhile(
        () -> {
          Prompt now = reading.prompt();
          guide.show(now);
          if (now.state() == Prompt.State.WORKING) {
            quarters.accept(now.progress());
          }
          terminal.typed().flatMap(line -> guide.typed(line, now)).ifPresent(reading::answer);
          if (now.state() == Prompt.State.ASKING && (now.step() == 0 || terminal.isOver())) {
            // The last thing is only said: no session takes the rig back.
            reading.answer(Answer.DONE);
          }
        });
    while (reading.prompt().state() != Prompt.State.OVER) {
      reading.advance();
      work.changes().forEach(change -> terminal.say(change.sentence()));
    }
  }

  private DiscProfile profile(String serial) {
    Optional<SessionInput> input =
        profiles.live(surroundings).forRig(serial, Optional.of(surroundings.today()));
    return input.isPresent() && input.get() instanceof SessionInput.ProfileInUse found
        ? new DiscProfile(Optional.of(found.profile()), surroundings.today(), found.mostDays())
        : new DiscProfile(Optional.empty(), surroundings.today(), OptionalInt.empty());
  }

  private DiscSetup setup() {
    if (!(seconds > 0 && radius > 0 && cut >= 0 && speedPpm >= 0)
        || (turnsAMinute != null && !(turnsAMinute > 0))) {
      throw new Trouble(Words.say("disc.notPositive"));
    }
    if (!PrintedDisc.areSlots(slots)) {
      throw new Trouble(Words.say("disc.slotsWrong"));
    }
    return new DiscSetup(
        new PrintedDisc(slots, cut, radius),
        seconds,
        turnsAMinute == null ? OptionalDouble.empty() : OptionalDouble.of(turnsAMinute),
        speedPpm);
  }

  private int report(DiscFinding finding) {
    Terminal terminal = surroundings.terminal();
    DiscEdges edges = finding.edges();
    DiscComparison comparison = finding.comparison();
    String source = Sentences.source(edges.rig().serial());
    terminal.say(source);
    terminal.say(finding.profile().said(edges));
    if (edges.light().levels() instanceof LightLevels.Known known) {
      LevelPair at = known.levels();
      terminal.say(
          Words.say(
              "disc.edges",
              edges.edges().size(),
              Numbers.percent(at.low()),
              Numbers.percent(at.high())));
    }
    terminal.say("");
    TextTable table = new TextTable(DiscWords.headings().toArray(String[]::new));
    DiscWords.rows(comparison).forEach(row -> table.add(row.toArray(String[]::new)));
    terminal.say(table.lines());
    terminal.say("");
    terminal.say(DiscWords.lines(comparison));
    terminal.say(finding.clockSaid().orElseGet(() -> Words.say("disc.clock.noSpeed")));
    finding
        .clock()
        .ifPresent(
            rate ->
                terminal.say(
                    keep
                        ? new RigUpkeep(surroundings.folder()).keepClock(edges.rig().serial(), rate)
                        : Words.say("disc.clock.keepHint")));
    pictureFile.ifPresent(to -> Pictures.write(new DiscChart(comparison, source), to, terminal));
    return comparison.verdict() == DiscComparison.Verdict.DISAGREES ? 1 : 0;
  }
}
