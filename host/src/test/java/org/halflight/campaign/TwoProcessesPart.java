package org.halflight.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.bench.SessionFile;
import org.halflight.record.WorkshopRecord;
import org.halflight.trouble.Trouble;

/**
 * Three processes want one session file and one record: two that start at the same moment, and this
 * one, which asks whenever the one that has them has read the file or taken it in.
 */
final class TwoProcessesPart implements Part {
  static final String BOTH = "session files that two processes could write at once";
  static final String BOTH_RECORD = "records that two processes could open at once";
  static final String NEITHER = "session files that nobody could open";
  static final String LOST = "events of either process that the file does not hold";

  private static final Pattern WRITTEN = Pattern.compile("because=([ab])-(\\d+)");
  private static final List<String> DOINGS = List.of("write", "write", "read", "take-in");

  @Override
  public String name() {
    return "two";
  }

  @Override
  public String unit() {
    return "meetings of processes";
  }

  @Override
  public long shortSize() {
    return 3;
  }

  @Override
  public long longSize() {
    return 200;
  }

  @Override
  public Tally run(long seed, long size) throws Exception {
    Tally tally = tally();
    for (long i = 0; i < size; i++) {
      one(Seeds.of(seed, i), tally);
    }
    return tally;
  }

  @Override
  public Tally again(long caseSeed) throws Exception {
    Tally tally = tally();
    one(caseSeed, tally);
    return tally;
  }

  private Tally tally() {
    Tally tally = new Tally(name());
    for (String law : List.of(BOTH, BOTH_RECORD, NEITHER, LOST)) {
      tally.law(law);
    }
    return tally;
  }

  private void one(long caseSeed, Tally tally) throws Exception {
    Random random = new Random(caseSeed);
    Path folder = Files.createTempDirectory("campaign-two");
    Path file = folder.resolve("two.session");
    Path record = folder.resolve("record.sqlite");
    String replay = Seeds.replay(name(), caseSeed);
    tally.add(unit(), 1);
    try {
      if (random.nextBoolean()) {
        SessionLines lines = new SessionLines();
        new BenchDay(random, lines::add).begins(true);
        Files.writeString(file, lines.text());
      }
      int[] written = new int[2];
      try (Child a = child(folder, file, record, "a");
          Child b = child(folder, file, record, "b")) {
        List<Child> holders = new ArrayList<>();
        for (Child each : List.of(a, b)) {
          each.line();
        }
        a.say("go");
        b.say("go");
        for (Child each : List.of(a, b)) {
          if (each.line().orElse("").startsWith("HOLDS")) {
            holders.add(each);
          }
        }
        if (holders.size() > 1) {
          tally.breaks(BOTH, replay, "at the start");
        }
        if (holders.isEmpty()) {
          tally.breaks(NEITHER, replay, "at the start");
        }
        for (int i = 0; i < 8; i++) {
          for (Child each : holders) {
            String doing = DOINGS.get(random.nextInt(DOINGS.size()));
            written[each == a ? 0 : 1] += doing.equals("write") ? 1 : 0;
            ask(each, doing);
          }
          if (!holders.isEmpty()) {
            third(file, record, replay, tally);
          }
        }
        for (Child each : holders) {
          each.kill();
        }
      }
      check(file, written, replay, tally);
    } finally {
      Folders.delete(folder);
    }
  }

  private static Child child(Path folder, Path file, Path record, String name) throws IOException {
    return new Child(folder, HoldingBench.class, file.toString(), record.toString(), name);
  }

  private static void ask(Child child, String doing) throws IOException {
    child.say(doing);
    Optional<String> answer = child.line();
    if (!answer.equals(Optional.of("DONE"))) {
      throw new IllegalStateException("a process did not " + doing + ": " + answer);
    }
  }

  static void third(Path file, Path record, String replay, Tally tally) {
    tally.add("asked by a third process", 1);
    try (SessionFile mine = SessionFile.resume(file)) {
      tally.breaks(BOTH, replay, "behind the start: " + mine.path().getFileName());
    } catch (Trouble refused) {
      tally.add("refused to a third process", 1);
    }
    try (WorkshopRecord mine = WorkshopRecord.open(record, RecordDump.CLOCK)) {
      tally.breaks(BOTH_RECORD, replay, mine.file().getFileName().toString());
    } catch (Trouble refused) {
      tally.add("records refused to a third process", 1);
    }
  }

  static void check(Path file, int[] written, String replay, Tally tally) throws IOException {
    int[] found = new int[2];
    for (String line : Files.readAllLines(file)) {
      Matcher mark = WRITTEN.matcher(line);
      if (mark.find() && line.startsWith("M ")) {
        found[mark.group(1).charAt(0) - 'a']++;
      }
    }
    for (int i = 0; i < 2; i++) {
      if (found[i] != written[i]) {
        tally.breaks(LOST, replay, found[i] + " of " + written[i]);
      }
    }
  }
}
