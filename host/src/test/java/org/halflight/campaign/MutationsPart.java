package org.halflight.campaign;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.halflight.trouble.Trouble;

/**
 * Damaged files through the commands: sentences only, and no other results without a word.
 *
 * <p>Plain tables carry no check of their own: a changed digit makes another table, and nobody can
 * tell. A session file that ends between two lines looks like one whose program was killed.
 */
final class MutationsPart implements Part {
  static final String INNARDS = "commands that ended in anything but a sentence";
  static final String SILENT_SESSION = "session files that gave other results without a word";
  static final String SILENT_RECORD = "records that gave other results without a word";
  static final String SILENT_EDGES = "records that gave other raw edges without a word";
  static final String SILENT_PROFILE = "profiles that said something else without a word";
  static final String CHANGED = "files that a command had only to read and changed";

  @Override
  public String name() {
    return "files";
  }

  @Override
  public String unit() {
    return "damaged files";
  }

  @Override
  public long shortSize() {
    return 20;
  }

  @Override
  public long longSize() {
    return 10_000;
  }

  @Override
  public Tally run(long seed, long size) throws IOException {
    Tally tally = tally();
    try (Work work = new Work(tally)) {
      for (long i = 0; i < size; i++) {
        work.one(Seeds.of(seed, i), Seeds.replay(name(), Seeds.of(seed, i)));
      }
    }
    return tally;
  }

  @Override
  public Tally again(long caseSeed) throws IOException {
    Tally tally = tally();
    try (Work work = new Work(tally)) {
      work.one(caseSeed, Seeds.replay(name(), caseSeed));
    }
    return tally;
  }

  private Tally tally() {
    Tally tally = new Tally(name());
    for (String law :
        List.of(INNARDS, SILENT_SESSION, SILENT_RECORD, SILENT_EDGES, SILENT_PROFILE, CHANGED)) {
      tally.law(law);
    }
    return tally;
  }

  /** Whether a command says something else than of the whole file, and nothing of the damage. */
  static boolean isSilent(Command.Came came, String whole, Path file) {
    return came.code() == 0
        && !came.text().equals(whole)
        && came.text().lines().noneMatch(line -> line.startsWith(file + ":"));
  }

  /** A folder with the files and what whole ones say. */
  private static final class Work implements AutoCloseable {
    private final Tally tally;
    private final Path folder = Files.createTempDirectory("campaign-files");
    private final Path session = folder.resolve("of.session");
    private final Path profile = folder.resolve("of.profile");
    private final Path gauge = folder.resolve("gauge.csv");
    private final Path disc = folder.resolve("disc.csv");
    private final Path record = folder.resolve("of.sqlite");
    private final Path own = folder.resolve("own.sqlite");
    private final byte[] sessionBytes = bytes(Originals.session());
    private final byte[] profileBytes = bytes(Originals.profile());
    private final byte[] gaugeBytes = bytes(Originals.gauge());
    private final byte[] discBytes;
    private final byte[] recordBytes;
    private final String sessionSays;
    private final String profileSays;
    private final RecordDump recordTells;
    private String replay = "";

    Work(Tally tally) throws IOException {
      this.tally = tally;
      Files.write(session, sessionBytes);
      Files.write(profile, profileBytes);
      String replayed = whole("replay", session, "--each", "--details");
      sessionSays = replayed + exported();
      profileSays = whole("profile", "show", profile);
      whole("disc", "read", "--practice", "--seconds", "2", "--edges", disc);
      discBytes = Files.readAllBytes(disc);
      whole("record", "take-in", "--new-record", "--record", record, session);
      recordBytes = Files.readAllBytes(record);
      recordTells = RecordDump.of(record);
      whole("record", "take-in", "--new-record", "--record", own, session);
    }

    void one(long caseSeed, String how) throws IOException {
      Random random = new Random(caseSeed);
      replay = how;
      tally.add("damaged files", 1);
      int kind = random.nextInt(20);
      if (kind < 10) {
        session(random);
      } else if (kind < 15) {
        record(random);
      } else if (kind < 17) {
        profile(random);
      } else {
        table(random, kind == 19 ? disc : gauge, kind == 19 ? discBytes : gaugeBytes);
      }
    }

    private void session(Random random) throws IOException {
      Mutation mutation =
          random.nextInt(3) == 0 ? inAMark(random) : Mutation.of(random, sessionBytes);
      Files.write(session, mutation.bytes());
      tally.add("damaged session files", 1);
      Command.Came came = command("replay", session, "--each", "--details");
      Command.Came all = new Command.Came(came.code(), came.text() + exported());
      if (isSilent(all, sessionSays, session)) {
        if (isCutBetweenLines(mutation.bytes())) {
          tally.add("session files that were cut between two lines", 1);
        } else {
          tally.breaks(
              SILENT_SESSION, replay, mutation.way() + ": " + firstDifference(came.text()));
        }
      }
      for (String name : List.of("page.pdf", "map.png", "row.png", "b.png")) {
        Files.deleteIfExists(out(name));
      }
      switch (random.nextInt(20)) {
        case 0 -> command("page", session, "--out", "page.pdf");
        case 1 -> command("picture", session, "--map", "map.png");
        case 2 -> command("picture", session, "--row", "row.png", "--speed", "1/60");
        case 3 -> command("picture", session, "--budget", "b.png", "--speed", "1/125");
        case 4 -> command("picture", session, "--everyday", "tried");
        case 5, 6 -> command("compare", session);
        case 7, 8, 9, 10, 11 -> command("record", "take-in", "--record", own, session);
        default ->
            command(
                "export",
                session,
                "--firings",
                "f.csv",
                "--speeds",
                "s.csv",
                "--everyday",
                "e.csv");
      }
      unchanged(session, mutation.bytes());
    }

    /** The tables, which have more digits than a screen; empty where none could be written. */
    private String exported() throws IOException {
      List<Path> tables = List.of(out("f.csv"), out("s.csv"), out("e.csv"));
      for (Path table : tables) {
        Files.deleteIfExists(table);
      }
      command("export", session, "--firings", "f.csv", "--speeds", "s.csv", "--everyday", "e.csv");
      StringBuilder text = new StringBuilder();
      for (Path table : tables) {
        text.append(Files.exists(table) ? Files.readString(table) : "");
      }
      return text.toString();
    }

    private Path out(String name) {
      return folder.resolve("out-" + name);
    }

    private Mutation inAMark(Random random) {
      tally.add("session files with one byte of a mark changed", 1);
      List<String> lines = new String(sessionBytes, StandardCharsets.ISO_8859_1).lines().toList();
      int place = random.nextInt(lines.size());
      while (lines.get(place).charAt(0) != 'M') {
        place = (place + 1) % lines.size();
      }
      int from = lines.subList(0, place).stream().mapToInt(line -> line.length() + 1).sum();
      return Mutation.ofOneByte(random, sessionBytes, from, from + lines.get(place).length());
    }

    private boolean isCutBetweenLines(byte[] bytes) {
      int n = bytes.length;
      return n < sessionBytes.length
          && Arrays.equals(bytes, Arrays.copyOf(sessionBytes, n))
          && ((n > 0 && bytes[n - 1] == '\n') || sessionBytes[n] == '\n');
    }

    private String firstDifference(String text) {
      List<String> now = text.lines().toList();
      List<String> before = sessionSays.lines().toList();
      for (int i = 0; i < Math.min(now.size(), before.size()); i++) {
        if (!now.get(i).equals(before.get(i))) {
          return now.get(i) + " | " + before.get(i);
        }
      }
      return now.size() + " lines for " + before.size();
    }

    private void record(Random random) throws IOException {
      boolean one = random.nextBoolean();
      Mutation mutation =
          one ? Mutation.ofOneByte(random, recordBytes) : Mutation.of(random, recordBytes);
      tally.add("damaged records", 1);
      tally.add("records with one byte changed", one ? 1 : 0);
      put(mutation);
      try {
        RecordDump tells = RecordDump.of(record);
        boolean silent = !tells.equals(recordTells) && tells.said().isEmpty();
        tally.add("records that told of damage", tells.said().isEmpty() ? 0 : 1);
        tally.add("records that opened", 1);
        if (silent) {
          tally.breaks(SILENT_RECORD, replay, mutation.way());
        }
        if (silent && !tells.edges().equals(recordTells.edges())) {
          tally.breaks(SILENT_EDGES, replay, mutation.way());
        }
      } catch (Trouble refused) {
        tally.add("records that were refused", 1);
        unchanged(record, mutation.bytes());
      } catch (RuntimeException | StackOverflowError e) {
        tally.breaks(INNARDS, replay, "record opened: " + Thrown.said(e));
      }
      put(mutation);
      Path backup = folder.resolve("backup.sqlite");
      Files.deleteIfExists(backup);
      switch (random.nextInt(5)) {
        case 0 -> command("record", "recompute", "--record", record);
        case 1 -> {
          command("record", "backup", "--record", record, backup);
          unchanged(record, mutation.bytes());
        }
        case 2 -> {
          command("record", "restore", "--record", own, record);
          unchanged(record, mutation.bytes());
        }
        default -> {
          Files.write(session, sessionBytes);
          command("record", "take-in", "--record", record, session);
        }
      }
    }

    private void put(Mutation mutation) throws IOException {
      for (String beside : List.of("-wal", "-shm")) {
        Files.deleteIfExists(record.resolveSibling("of.sqlite" + beside));
      }
      Files.write(record, mutation.bytes());
    }

    private void profile(Random random) throws IOException {
      Mutation mutation = Mutation.of(random, profileBytes);
      Files.write(profile, mutation.bytes());
      tally.add("damaged profiles", 1);
      Command.Came came = command("profile", "show", profile);
      if (came.code() == 0 && !came.text().equals(profileSays)) {
        tally.breaks(SILENT_PROFILE, replay, mutation.way());
      }
      if (random.nextBoolean()) {
        command("profile", "import", profile);
      } else {
        Files.write(session, sessionBytes);
        command("replay", session, "--profile", profile);
      }
      unchanged(profile, mutation.bytes());
    }

    private void table(Random random, Path table, byte[] whole) throws IOException {
      Mutation mutation = Mutation.of(random, whole);
      Files.write(table, mutation.bytes());
      tally.add("damaged tables", 1);
      if (table.equals(disc)) {
        command("disc", "read", "--from", table);
      } else {
        command("gauge", table);
      }
      unchanged(table, mutation.bytes());
    }

    private Command.Came command(Object... words) {
      long from = System.nanoTime();
      Command.Came came = Command.of(folder, typed(words));
      tally.took("command", from);
      tally.add("commands", 1);
      if (!came.wrong().isEmpty()) {
        tally.breaks(INNARDS, replay, String.join(" ", typed(words)) + ": " + came.wrong());
      }
      return came;
    }

    private String whole(Object... words) {
      Command.Came came = Command.of(folder, typed(words));
      if (came.code() != 0 || !came.wrong().isEmpty()) {
        throw new IllegalStateException("a whole file is not read: " + came);
      }
      return came.text();
    }

    /** Names of files that are written lie in the folder of this campaign. */
    private String[] typed(Object... words) {
      return Arrays.stream(words)
          .map(
              word ->
                  word.toString().matches("[a-z]+\\.(png|csv|pdf)|tried")
                      ? out(word.toString()).toString()
                      : word.toString())
          .toArray(String[]::new);
    }

    private void unchanged(Path file, byte[] bytes) throws IOException {
      if (!Arrays.equals(Files.readAllBytes(file), bytes)) {
        tally.breaks(CHANGED, replay, String.valueOf(file.getFileName()));
      }
    }

    private static byte[] bytes(String text) {
      return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    @Override
    public void close() throws IOException {
      Folders.delete(folder);
    }
  }
}
