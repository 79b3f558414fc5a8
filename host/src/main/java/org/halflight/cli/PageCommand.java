package org.halflight.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Id;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.StripSheet;
import org.halflight.report.CheckLine;
import org.halflight.report.HandOverPage;
import org.halflight.report.PageAbout;
import org.halflight.report.PageStyle;
import org.halflight.report.Paper;
import org.halflight.session.Phase;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.SheetWords;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the page that goes with the camera. */
@Command(name = "page")
final class PageCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(arity = "1..*", paramLabel = "SESSION")
  private List<Path> sessions;

  @Option(names = "--out", paramLabel = "FILE", defaultValue = "hand-over.pdf")
  private Path out;

  @Option(names = "--paper", paramLabel = "SIZE")
  private @Nullable String paper;

  @Option(names = "--bench")
  private boolean bench;

  @Option(names = "--sale")
  private boolean sale;

  @Option(names = "--camera", paramLabel = "LABEL", defaultValue = "")
  private String camera;

  @Option(names = "--serial", paramLabel = "NUMBER", defaultValue = "")
  private String serial;

  @Option(names = "--job", paramLabel = "NUMBER", defaultValue = "")
  private String job;

  @Option(names = "--shutter", paramLabel = "WORDS", defaultValue = "")
  private String shutter;

  @Option(names = "--shutter-kind", paramLabel = "KIND", defaultValue = "unknown")
  private String kind;

  @Option(names = "--done", paramLabel = "WORDS")
  private List<String> done = List.of();

  @Option(names = "--by-hand", paramLabel = "ITEM=WORDS[,HOW]")
  private List<String> hand = List.of();

  @Option(names = "--intake", paramLabel = "ITEM=STATE[,REMARK]")
  private List<String> intake = List.of();

  @Option(names = "--hand-back", paramLabel = "ITEM=STATE[,REMARK]")
  private List<String> handBack = List.of();

  @Option(names = "--not-tested", paramLabel = "WORDS")
  private List<String> notTested = List.of();

  @Option(names = "--wet")
  private boolean wet;

  @Option(names = "--f-number", paramLabel = "N")
  private @Nullable Double fNumber;

  @Mixin private DetailOptions details = new DetailOptions();
  @Mixin private DecisionOptions decision = new DecisionOptions();
  @Mixin private ProfileOptions profiles = new ProfileOptions();

  @Mixin private OutputOptions output = new OutputOptions();

  PageCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    PageStyle usual = surroundings.pageStyle(bench);
    Paper size = paper == null ? usual.paper() : CliWords.constant(Paper.WORDS, paper, "--paper");
    if (fNumber != null && !(fNumber > 0 && fNumber < 1000)) {
      throw new Trouble(Words.say("page.badFNumber", fNumber));
    }
    ShutterKind built = CliWords.constant(ShutterKind.WORDS, kind, "--shutter-kind");
    OutFile page = output.files(profiles.with(sessions)).file(out, FileKind.PAGE);
    List<CheckLine> lists = lists();
    RunChoice.Reading reading = new RunChoice.Reading(decision, profiles, surroundings);
    Optional<RunChoice> found = RunChoice.of(sessions, Phase.AS_FOUND, reading);
    Optional<RunChoice> left = RunChoice.of(sessions, Phase.AS_LEFT, reading);
    if (found.isEmpty() && left.isEmpty()) {
      throw new Trouble(Words.say("page.noRun"));
    }
    PageAbout about =
        new PageAbout(
            camera,
            serial,
            job,
            details.details(),
            shutter,
            built,
            Optional.empty(),
            lists,
            Stream.concat(done.stream(), SheetWords.byHand(byHand()).stream()).toList(),
            "",
            notTested,
            wet,
            fNumber == null ? OptionalDouble.empty() : OptionalDouble.of(fNumber));
    List<String> said =
        HandOverPage.write(
            surroundings.page(RunChoice.page(about, found, left)),
            new PageStyle(size, bench, sale, usual.from()),
            page);
    surroundings.terminal().written(out);
    surroundings.terminal().say(said);
    return 0;
  }

  /** As a strip sheet has it: {@code infinity-focus=OK, collimator}. */
  private StripSheet byHand() {
    List<SheetEntry> entries = new ArrayList<>();
    for (String typed : hand) {
      String[] parts = typed.split("=", 2);
      SheetItem item = CliWords.constant(SheetItem.WORDS, parts[0].strip(), "--by-hand");
      String[] words = (parts.length < 2 ? "" : parts[1]).split(",\\s+", 2);
      Optional<String> read = item.read(words[0]);
      if (item.isAskedBack() || read.isEmpty()) {
        throw new Trouble(
            item.isAskedBack()
                ? Words.say(
                    "page.badHand",
                    parts[0],
                    SheetItem.byHand().stream()
                        .map(SheetItem.WORDS::word)
                        .collect(Collectors.joining(", ")))
                : SheetWords.bad(item, words[0]));
      }
      entries.add(
          StripSheet.of(entries)
              .noted(
                  Id.ofNew(),
                  item,
                  words.length < 2 ? "" : words[1].strip(),
                  read.get(),
                  surroundings.date().get()));
    }
    return StripSheet.of(entries);
  }

  private record Noted(CheckState state, String remark) {}

  private List<CheckLine> lists() {
    Map<String, Noted> first = noted(intake, "--intake");
    Map<String, Noted> second = noted(handBack, "--hand-back");
    List<String> items = new ArrayList<>(first.keySet());
    second.keySet().stream().filter(item -> !first.containsKey(item)).forEach(items::add);
    return items.stream()
        .map(
            item -> {
              Optional<Noted> before = Optional.ofNullable(first.get(item));
              Optional<Noted> after = Optional.ofNullable(second.get(item));
              List<String> remarks = new ArrayList<>();
              before.map(Noted::remark).filter(r -> !r.isBlank()).ifPresent(remarks::add);
              after.map(Noted::remark).filter(r -> !r.isBlank()).ifPresent(remarks::add);
              return new CheckLine(
                  item(item),
                  item,
                  before.map(Noted::state),
                  after.map(Noted::state),
                  String.join("; ", remarks));
            })
        .toList();
  }

  /** The item that a person means; one of their own has no word here. */
  private static Optional<CheckItem> item(String typed) {
    return CheckItem.WORDS
        .find(typed)
        .or(
            () ->
                Arrays.stream(CheckItem.values())
                    .filter(item -> ExtraTestWords.item(item).equalsIgnoreCase(typed))
                    .findFirst());
  }

  private static Map<String, Noted> noted(List<String> typed, String option) {
    Map<String, Noted> noted = new LinkedHashMap<>();
    for (String text : typed) {
      String[] parts = text.split("=", 2);
      if (parts.length < 2 || parts[0].isBlank()) {
        throw new Trouble(Words.say("page.badItem", option, text));
      }
      String[] state = parts[1].split(",", 2);
      noted.put(
          parts[0].strip(),
          new Noted(
              CliWords.constant(CheckState.WORDS, state[0].strip(), option),
              state.length > 1 ? state[1].strip() : ""));
    }
    return noted;
  }
}
