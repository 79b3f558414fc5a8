package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.halflight.files.FaultLog;
import org.halflight.fixtures.Seed;
import org.halflight.link.Link;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.profile.InventedProfiles;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.record.WorkshopRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * Every command and every word of it with values that nobody meant: each comes to an end with one
 * sentence, no fault of the program, and nothing that was there changed. The commands are found by
 * their own model, so that a new one is tried by itself.
 */
@Tag("long")
class EveryCommandTest extends CommandTests {
  /** Words that are enough to get past what is not tried; in every other place stands a value. */
  private static final Map<String, List<String>> USUAL = new LinkedHashMap<>();

  static {
    USUAL.put("rigs", List.of());
    USUAL.put("firmware", List.of());
    USUAL.put("firmware list", List.of());
    USUAL.put("firmware upload", List.of());
    USUAL.put("first-light", List.of("FOLDER"));
    USUAL.put("aim", List.of());
    USUAL.put("light", List.of("FOLDER"));
    USUAL.put("run", List.of("FOLDER"));
    USUAL.put("leak", List.of("FOLDER"));
    USUAL.put("panel", List.of("FOLDER"));
    USUAL.put("stops", List.of("FOLDER"));
    USUAL.put("replay", List.of("SESSION"));
    USUAL.put("export", List.of("SESSION", "--firings", "NEW.csv"));
    USUAL.put("picture", List.of("SESSION", "--row", "NEW.png", "--speed", "1/60"));
    USUAL.put("compare", List.of("SESSION", "--before", "as-found", "--after", "as-found"));
    USUAL.put("page", List.of("NORUN", "--out", "NEW.pdf"));
    USUAL.put("workshop", List.of());
    USUAL.put("record", List.of());
    USUAL.put("record backup", List.of("NEW.sqlite"));
    USUAL.put("record restore", List.of("NONE"));
    USUAL.put("record recompute", List.of());
    USUAL.put("record import", List.of("SESSION"));
    USUAL.put("record take-in", List.of("SESSION"));
    USUAL.put("record verify", List.of("--sessions", "FOLDER"));
    USUAL.put("record due", List.of());
    USUAL.put("record moved", List.of("NONE"));
    USUAL.put("record sheet", List.of("NONE"));
    USUAL.put("record visit", List.of("NONE"));
    USUAL.put("record visits", List.of("NONE/x.csv"));
    USUAL.put("record log", List.of("NONE"));
    USUAL.put("record photos", List.of("NONE"));
    USUAL.put("calibrate", List.of("--out", "NONE/x.profile"));
    USUAL.put("check", List.of("--chart", "NONE/x.png"));
    USUAL.put("clock", List.of());
    USUAL.put("profile", List.of());
    USUAL.put("profile show", List.of("R-0001"));
    USUAL.put("profile export", List.of("R-0001", "NEW.profile"));
    USUAL.put("profile import", List.of("PROFILE"));
    USUAL.put("gauge", List.of("GAUGE"));
    USUAL.put("disc", List.of("--out", "NONE/disc.pdf"));
    USUAL.put("holder", List.of("--out", "NONE/holder.pdf"));
    USUAL.put("disc read", List.of("--from", "EDGES"));
    // A folder that cannot be: a practice run takes seconds, and its values are those of others.
    USUAL.put("practice", List.of("--out", "NOTES"));
  }

  private static final int ROUNDS = Integer.getInteger("halflight.rounds", 1);

  private static final List<String> NOTHING = List.of("", "odd\u0000name");

  private static final List<String> NUMBERS =
      List.of(
          "0",
          "-1",
          "1e999",
          "NaN",
          "99999999999999999999",
          "0.0000001",
          "1/0",
          "2147483647",
          "1.5");

  private static final List<String> TEXTS =
      List.of(
          "-",
          "\u00fc\u2603 =1+1",
          "y".repeat(5000),
          "0/0",
          "-1/60",
          ",",
          ",,,",
          "..",
          "1..",
          "=",
          "a=b",
          "1/60=",
          "%",
          "@notes",
          "[",
          "B,B,T",
          "B",
          "1/3",
          "1/60",
          "custom",
          "as-left",
          "adjusting",
          "1,1,1,1,1",
          "3,2,1,9,8",
          "5,4,NaN,2,1");

  /** Without a name these write into the folder in which they are started. */
  private static final List<String> WRITES_WHERE_IT_IS =
      List.of("first-light", "practice", "disc", "holder", "page");

  private final Map<String, Path> files = new LinkedHashMap<>();
  private final Map<Path, byte[]> stay = new LinkedHashMap<>();
  private final Map<Path, String> looks = new LinkedHashMap<>();
  private final Set<Object> triedInFull = new HashSet<>();
  private final List<String> wrong = new ArrayList<>();
  private int tried;
  private int news;

  /** Which of the values are next; where it begins is drawn. */
  private int turn;

  @BeforeEach
  void files() throws Exception {
    keep("SESSION", TinySession.write(folder.resolve("my.session")));
    keep("NORUN", Files.writeString(folder.resolve("none.session"), "halflight-session 1\n"));
    keep("UNUSABLE", TinySession.damaged(folder.resolve("unusable.session")));
    keep("EMPTY", Files.createFile(folder.resolve("empty")));
    keep("NOTES", Files.writeString(folder.resolve("notes"), "buy oil\nand rags\n"));
    byte[] noise = new byte[5000];
    new Random(20).nextBytes(noise);
    keep("BINARY", Files.write(folder.resolve("binary"), noise));
    keep("HUGE", Files.writeString(folder.resolve("huge"), "x,".repeat(100_000)));
    keep(
        "ROWS",
        Files.writeString(folder.resolve("rows.csv"), "part,operator,value\na,b\n\"c,d,1\n"));
    keep(
        "GAUGE",
        Files.writeString(folder.resolve("gauge.csv"), "part,operator,value\na,b,1\na,b,2\n"));
    keep("EDGES", edges("edges.csv", 1, 16_000_000, "10.0", 100, 200, 300));
    keep("BACK", edges("back.csv", 1, 16_000_000, "10.0", 300, 200, 100));
    keep("ODD", edges("odd.csv", 1, 1, "NaN", 100, 100, 100, Long.MAX_VALUE));
    keep("STILL", edges("still.csv", 0, 16_000_000, "10.0", Long.MIN_VALUE, 0, Long.MAX_VALUE));
    Path secret = Files.writeString(folder.resolve("secret.session"), "halflight-session 1\n");
    keep("SECRET", secret);
    assertThat(secret.toFile().setReadable(false)).isTrue();
    RigProfile profile =
        InventedProfiles.bare(
            new ProfiledRig("R-0001", "full", "1.0.0"),
            LocalDate.EPOCH,
            new LightRange(4, 700, 800),
            OptionalDouble.of(1e-4));
    keep("PROFILE", Files.writeString(folder.resolve("r.profile"), ProfileFile.write(profile)));
    Path record = folder.resolve("other.sqlite");
    WorkshopRecord.open(record, Clock.systemUTC()).close();
    keep("RECORD", record);
    files.put("NONE", folder.resolve("none"));
    files.put("FOLDER", Files.createDirectory(folder.resolve("folder")));
    files.put("LONG", folder.resolve("n".repeat(300)));
    files.put("DEVICE", Path.of("/dev/null"));
    files.put("DASH", folder.resolve("-"));
    files.put("ODD NAME", folder.resolve("\u00fc\u2603 =1+1"));
  }

  @Test
  void nobodyIsAnsweredWithAStackTraceAndNothingIsLost(@Seed long seed) throws Exception {
    turn = new Random(seed).nextInt(10_000);
    CommandLine model = Halflight.model(surroundings());
    execute(List.of("profile", "import", files.get("PROFILE").toString()));
    // Those first that get far with the words that others share.
    List<String> names = new ArrayList<>(List.of("replay", "rigs"));
    model.getSubcommands().keySet().stream().filter(n -> !names.contains(n)).forEach(names::add);
    for (String name : names) {
      walk(model.getSubcommands().get(name), name);
    }
    if (!model.getSubcommands().keySet().stream().allMatch(USUAL::containsKey)) {
      wrong.add("a command that is not tried: " + model.getSubcommands().keySet());
    }
    System.out.println("every command: " + tried + " lines typed");
    assertThat(wrong).isEmpty();
    assertThat(tried).isGreaterThan(500);
  }

  private void walk(CommandLine command, String name) throws Exception {
    CommandSpec spec = command.getCommandSpec();
    List<String> usual = USUAL.get(name);
    if (usual == null) {
      wrong.add("a command that is not tried: " + name);
      return;
    }
    if (!WRITES_WHERE_IT_IS.contains(name)) {
      line(name, List.of());
    }
    line(name, usual);
    line(name, plus(usual, "--no-such-word"));
    line(name, plus(usual, "@notes"));
    line(name, plus(usual, "one", "two", "three"));
    boolean fileTried = false;
    for (ArgSpec arg : spec.args()) {
      if (arg instanceof OptionSpec option && (option.usageHelp() || option.versionHelp())) {
        continue;
      }
      List<String> values = values(arg, isFile(arg) && !fileTried);
      fileTried |= isFile(arg);
      for (String value : values) {
        line(name, with(usual, arg, value));
        if (isFile(arg)
            && (ROUNDS > 1 || turn++ % 2 == 0)
            && !arg.paramLabel().equals("SESSION")
            && spec.findOption("--force") != null) {
          line(name, plus(with(usual, arg, value), "--force"));
        }
      }
    }
    for (Map.Entry<String, CommandLine> each : command.getSubcommands().entrySet()) {
      walk(each.getValue(), name + " " + each.getKey());
    }
  }

  private static boolean isFile(ArgSpec arg) {
    return arg.typeInfo().getType() == Path.class
        || arg.typeInfo().getAuxiliaryTypes()[0] == Path.class
        || arg.paramLabel().contains("FILE");
  }

  /**
   * What is tried in the place of an argument: nothing, and some of the values, others in each
   * place and each time the test runs. The first argument of a command that is a file is tried with
   * a third of all files, and a word that several commands share with one value in all but one of
   * them.
   */
  private List<String> values(ArgSpec arg, boolean firstFile) {
    if (arg.arity().max() == 0) {
      return List.of("");
    }
    List<String> values = new ArrayList<>(List.of(NOTHING.get(turn++ % NOTHING.size())));
    // Whole paths only: no test may write where it happens to be started.
    List<String> paths = files.values().stream().map(Path::toString).toList();
    if (!triedInFull.add(arg.userObject())) {
      List<String> all = isFile(arg) ? paths : TEXTS;
      values.add(all.get(turn++ % all.size()));
    } else if (isFile(arg)) {
      values.addAll(some(paths, firstFile ? 3 : 8));
    } else if (isNumber(arg)) {
      // What is no number is refused by one piece of code for all of them.
      values.addAll(some(NUMBERS, 3));
    } else {
      values.addAll(some(TEXTS, 8));
      values.addAll(some(NUMBERS, 8));
    }
    return values;
  }

  /** One of so many values, beginning with another one each time; eight rounds are all of them. */
  private List<String> some(List<String> all, int ofUsually) {
    int oneOf = Math.max(1, ofUsually / ROUNDS);
    int from = turn++ % oneOf;
    return IntStream.range(0, all.size())
        .filter(i -> i % oneOf == from)
        .mapToObj(all::get)
        .toList();
  }

  private static boolean isNumber(ArgSpec arg) {
    Class<?> type = arg.typeInfo().getType();
    return type.isPrimitive() || Number.class.isAssignableFrom(type);
  }

  /** The usual words with a value in the place of an argument. */
  private static List<String> with(List<String> usual, ArgSpec arg, String value) {
    List<String> words = new ArrayList<>(usual);
    if (arg instanceof OptionSpec option) {
      int at = words.indexOf(option.longestName());
      if (at >= 0) {
        words.set(at + 1, value);
      } else {
        words.add(
            arg.arity().max() == 0 ? option.longestName() : option.longestName() + "=" + value);
      }
      return words;
    }
    int at = ((CommandLine.Model.PositionalParamSpec) arg).index().min();
    if (at < words.size()) {
      words.set(at, value);
    } else {
      words.add(value);
    }
    return words;
  }

  private static List<String> plus(List<String> words, String... more) {
    List<String> all = new ArrayList<>(words);
    all.addAll(List.of(more));
    return all;
  }

  private void line(String name, List<String> words) throws Exception {
    List<String> typed = new ArrayList<>(List.of(name.split(" ")));
    for (String word : words) {
      typed.add(filled(word));
    }
    tried++;
    String said;
    int code;
    try {
      code = execute(typed);
      said = out.toString(StandardCharsets.UTF_8);
    } catch (Throwable fault) {
      wrong.add(brief(typed) + " threw " + fault);
      return;
    }
    List<String> lines = said.strip().lines().toList();
    if (said.matches("(?s).*(Exception|Error:|\tat |\\b(java|org|picocli|sun)\\.[a-z]+\\.).*")) {
      wrong.add(brief(typed) + " names a class: " + said);
    }
    if (Files.exists(folder.resolve(FaultLog.NAME))) {
      wrong.add(brief(typed) + " is a fault: " + Files.readString(folder.resolve(FaultLog.NAME)));
      Files.delete(folder.resolve(FaultLog.NAME));
    }
    if (code != 0
        && (said.isBlank()
            || lines.isEmpty()
            || !lines.get(lines.size() - 1).matches(".*([.?]|--help)"))) {
      wrong.add(brief(typed) + " ended with " + code + " and no sentence: " + said);
    }
    if (code == 2 && lines.size() != 1) {
      wrong.add(brief(typed) + " says more than a sentence: " + said);
    }
    for (Map.Entry<Path, byte[]> kept : stay.entrySet()) {
      if (looksTheSame(kept.getKey())) {
        continue;
      }
      byte[] now = Files.exists(kept.getKey()) ? Files.readAllBytes(kept.getKey()) : new byte[0];
      boolean session = kept.getKey().toString().endsWith(".session");
      boolean same =
          session
              ? now.length >= kept.getValue().length
                  && Arrays.equals(
                      now, 0, kept.getValue().length, kept.getValue(), 0, kept.getValue().length)
              : Arrays.equals(now, kept.getValue())
                  || (kept.getKey().toString().endsWith(".sqlite")
                      && name.startsWith("record")
                      && new String(now, 0, Math.min(6, now.length), StandardCharsets.ISO_8859_1)
                          .equals("SQLite"));
      if (session || (name.startsWith("record") && same)) {
        kept.setValue(now);
      }
      if (!same && kept.getValue().length > 0) {
        wrong.add(brief(typed) + " changed " + kept.getKey() + ": " + said);
        Files.write(kept.getKey(), kept.getValue());
      }
      looks.put(kept.getKey(), look(kept.getKey()));
    }
  }

  /** Whether a file was not written since it was last looked at; some are large. */
  private boolean looksTheSame(Path file) throws Exception {
    return Files.exists(file) && look(file).equals(looks.get(file));
  }

  private static String look(Path file) throws Exception {
    return Files.exists(file)
        ? Files.readAttributes(file, "size,lastModifiedTime,fileKey").toString()
        : "gone";
  }

  private static String brief(List<String> typed) {
    return typed.stream()
        .map(w -> w.length() > 60 ? w.substring(0, 60) + "..." : w)
        .toList()
        .toString();
  }

  private String filled(String word) throws Exception {
    if (word.equals("GROWS")) {
      return TinySession.write(folder.resolve("grows" + news++ + ".session")).toString();
    }
    if (word.startsWith("NEW")) {
      return folder.resolve("new" + news++ + word.substring(3)).toString();
    }
    if (word.startsWith("NONE/")) {
      return folder.resolve("none").resolve(word.substring(5)).toString();
    }
    return files.containsKey(word) ? files.get(word).toString() : word;
  }

  private void keep(String name, Path file) throws Exception {
    files.put(name, file);
    stay.put(file, Files.readAllBytes(file));
    looks.put(file, look(file));
  }

  private Path edges(String name, int first, long rate, String dark, long... ticks)
      throws Exception {
    StringBuilder text =
        new StringBuilder(
            "rig,kind,firmware,ticks_per_second,dark_counts,full_counts,low_counts,high_counts,"
                + "channel,light,ticks\r\n");
    int light = first;
    for (long each : ticks) {
      text.append("R-0001,full,1.0.0,").append(rate).append(',').append(dark);
      text.append(",700.0,150.0,600.0,low,").append(light).append(',').append(each).append("\r\n");
      light = 1 - light;
    }
    return Files.writeString(folder.resolve(name), text);
  }

  private int execute(List<String> words) {
    return execute(words.toArray(String[]::new));
  }

  @Override
  Surroundings surroundings() {
    return new Surroundings(
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new ByteArrayInputStream("q\nq\nq\n".getBytes(StandardCharsets.UTF_8))),
        given -> new NothingPluggedIn(),
        System::nanoTime,
        () -> Instant.EPOCH,
        folder,
        "test");
  }

  /** A computer without a port, and nobody waits for one. */
  private static final class NothingPluggedIn implements Ports {
    @Override
    public List<PortCandidate> candidates() {
      return List.of();
    }

    @Override
    public Link open(PortCandidate candidate, int baudRate) {
      throw new LinkRefusedException(LinkRefusedException.Reason.ABSENT, "There is no port.");
    }
  }
}
