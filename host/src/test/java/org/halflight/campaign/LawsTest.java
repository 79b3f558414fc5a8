package org.halflight.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import org.halflight.record.WorkshopRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each law of the campaign notices what breaks it: faults are put into results that are right. */
class LawsTest {
  @TempDir private Path folder;

  private final InventedSession session = InventedSession.withStarts(new Random(6), 30);

  @Test
  void aWholeSessionBreaksNoLaw() {
    assertThat(judged(seen(), 0).isGood()).isTrue();
  }

  @Test
  void aLostFiringIsNoticed() {
    List<Seen> seen = seen();
    seen.remove(7);
    assertThat(judged(seen, 1).broken(WireLaw.LOST)).isEqualTo(1);
  }

  @Test
  void aFalseTimeIsNoticed() {
    List<Seen> seen = seen();
    int timed = timed(seen);
    Seen right = seen.get(timed);
    seen.set(timed, with(right, right.edges(), right.outcome(), right.effectiveSeconds() * 1.0001));
    assertThat(judged(seen, 1).broken(WireLaw.FALSE)).isEqualTo(1);
  }

  @Test
  void anotherOutcomeAndAnEdgeThatIsMissingAreNoticed() {
    List<Seen> seen = seen();
    int timed = timed(seen);
    Seen right = seen.get(timed);
    seen.set(timed, with(right, right.edges(), "DID_NOT_OPEN", right.effectiveSeconds()));
    assertThat(judged(seen, 1).broken(WireLaw.FALSE)).isEqualTo(1);
    List<TrueEdge> fewer = right.edges().subList(0, right.edges().size() - 1);
    seen.set(timed, with(right, fewer, right.outcome(), right.effectiveSeconds()));
    Tally tally = judged(seen, 1);
    assertThat(tally.broken(WireLaw.FALSE)).isEqualTo(1);
    assertThat(tally.broken(WireLaw.LOST)).isEqualTo(1);
  }

  @Test
  void aMarkForNothingIsNoticed() {
    List<Seen> seen =
        new ArrayList<>(
            seen().stream()
                .map(s -> new Seen(s.rig(), s.bootCount(), s.edges(), true, "UNUSABLE", 0))
                .toList());
    // A press in vain may wait for light that was lost: its mark is never for nothing.
    long opened =
        session.firings().stream()
            .filter(firing -> firing.kind() != TrueFiring.Kind.DID_NOT_OPEN)
            .count();
    assertThat(judged(seen, 1).broken(WireLaw.NEEDLESS)).isEqualTo(opened).isGreaterThan(20);
  }

  @Test
  void whatNobodyCanTellIsKeptApart() {
    // The last digit of an edge in the middle of a firing, and one of its first.
    List<InventedSession.Line> lines = session.lines();
    int place = 0;
    while (lines.get(place).text().charAt(0) != 'E') {
      place++;
    }
    String ticks = lines.get(place).text().substring(11, 19);
    String nearly = Hex.of(8, Long.parseLong(ticks, 16) + 1);
    String farOff = Hex.of(8, Long.parseLong(ticks, 16) + TrueEdge.TICKS_PER_SECOND);
    assertThat(Alteration.edgeIsImpossible(lines, place, ticks, nearly)).isFalse();
    assertThat(Alteration.edgeIsImpossible(lines, place, ticks, farOff)).isTrue();
    assertThat(Alteration.rateIsImpossible("00F42401")).isFalse();
    assertThat(Alteration.rateIsImpossible("00F42400")).isFalse();
    assertThat(Alteration.rateIsImpossible("10F42400")).isTrue();
    assertThat(Alteration.rateIsImpossible("00000001")).isTrue();
  }

  @Test
  void theCheckOfOursIsThatOfTheProtocol() {
    assertThat(Crc.of("123456789")).isEqualTo(0x29B1);
    String greeting = "H 0000 01 00F42400 full 7F R-0001 00000007 power 1.0.0 0000000012C0#3A3F";
    assertThat(Crc.fits(greeting)).isTrue();
    assertThat(Crc.fits(greeting.replace('7', '6'))).isFalse();
  }

  @Test
  void damageTouchesWhatItSaysAndNoMore() {
    WireDamage.Arrived arrived = WireDamage.of(new Random(5), session, 0.05);
    assertThat(arrived.touched().cardinality()).isPositive();
    List<String> came = arrived.lines().stream().map(InventedSession.Line::text).toList();
    for (int place = 0; place < session.lines().size(); place++) {
      if (!arrived.touched().get(place)) {
        assertThat(came).contains(session.lines().get(place).text());
      }
    }
    assertThat(came)
        .filteredOn(Crc::fits)
        .isSubsetOf(session.lines().stream().map(InventedSession.Line::text).toList());
  }

  @Test
  void aDifferenceBetweenLiveAndReplayIsNoticed() {
    List<String> lines = Originals.session().lines().toList();
    List<String> without = lines.stream().filter(line -> !line.contains(" reject ")).toList();
    assertThat(Folded.of(lines).difference(Folded.of(lines))).isEmpty();
    assertThat(Folded.of(lines).difference(Folded.of(without))).contains("thumb slipped");
  }

  @Test
  void whatIsNoSentenceIsNoticed() {
    assertThat(new Command.Came(0, "Written: a.csv\n").wrong()).isEmpty();
    assertThat(new Command.Came(1, "There is no file a.session. Check the name.\n").wrong())
        .isEmpty();
    assertThat(new Command.Came(1, "java.lang.IllegalStateException: x\n\tat a.b\n").wrong())
        .contains("innards");
    assertThat(new Command.Came(1, "").wrong()).contains("without a word");
    assertThat(new Command.Came(3, "Something.").wrong()).contains("code 3");
  }

  @Test
  void aSilentChangeIsNoticed() {
    Path file = Path.of("a.session");
    assertThat(MutationsPart.isSilent(new Command.Came(0, "1/60 s\n"), "1/60 s\n", file)).isFalse();
    assertThat(MutationsPart.isSilent(new Command.Came(0, "1/61 s\n"), "1/60 s\n", file)).isTrue();
    assertThat(
            MutationsPart.isSilent(
                new Command.Came(0, "1/61 s\na.session: 1 line\n"), "1/60 s\n", file))
        .isFalse();
    assertThat(MutationsPart.isSilent(new Command.Came(1, "No.\n"), "1/60 s\n", file)).isFalse();
  }

  @Test
  void aRecordThatTellsSomethingElseIsNoticed() throws IOException {
    Path one = written("one", Originals.session(SessionLines.FIRST));
    Path two =
        written(
            "two",
            Originals.session(SessionLines.FIRST).replace("invented%20one", "invented%20two"));
    assertThat(RecordDump.of(one)).isEqualTo(RecordDump.of(one));
    assertThat(RecordDump.of(one)).isNotEqualTo(RecordDump.of(two));
    assertThat(RecordDump.of(one).edges()).hasSizeGreaterThan(20);
  }

  @Test
  void aFiringThatARecordLacksIsNoticed() throws IOException {
    Tally tally = new Tally("sabotage");
    KillsPart.Work work = new KillsPart.Work(folder, tally, "none");
    work.onLine("SETTLED 1 4711");
    work.onLine("REJECTED 1 4711");
    work.check(folder.resolve("none.session"), 0);
    assertThat(tally.broken(KillsPart.LOST)).isEqualTo(1);
    assertThat(tally.broken(KillsPart.REJECTION)).isEqualTo(1);
    RestoresPart.write(folder.resolve("a.session"), new Random(1));
    RestoresPart.check(folder, folder.resolve("record.sqlite"), "none", tally);
    assertThat(tally.broken(RestoresPart.GONE)).isEqualTo(tally.count("firings")).isPositive();
  }

  @Test
  void aFileThatAnotherMayWriteToIsNoticed() throws IOException {
    Path file = Originals.write(folder.resolve("free.session"), Originals.session());
    Tally tally = new Tally("sabotage");
    TwoProcessesPart.third(file, folder.resolve("free.sqlite"), "none", tally);
    assertThat(tally.broken(TwoProcessesPart.BOTH)).isEqualTo(1);
    assertThat(tally.broken(TwoProcessesPart.BOTH_RECORD)).isEqualTo(1);
    TwoProcessesPart.check(file, new int[] {1, 0}, "none", tally);
    assertThat(tally.broken(TwoProcessesPart.LOST)).isEqualTo(1);
  }

  @Test
  void aCostThatGrowsIsNoticed() {
    Tally tally = new Tally("sabotage");
    ManyFiringsPart.Tenths.holds(
        "law", "it", List.of(900L, 1000L, 1L, 1L, 1L, 1L, 1L, 1L, 1L, 1400L), "none", tally);
    assertThat(tally.broken("law")).isZero();
    ManyFiringsPart.Tenths.holds(
        "law", "it", List.of(900L, 1000L, 1L, 1L, 1L, 1L, 1L, 1L, 1L, 1600L), "none", tally);
    assertThat(tally.broken("law")).isEqualTo(1);
  }

  @Test
  void aShortDiskEndsInTheMiddleOfAWrite() throws IOException {
    ShortDisk disk = new ShortDisk(folder.getFileSystem(), 4);
    Path path = disk.path(folder.resolve("short"));
    try (FileChannel channel =
        FileChannel.open(path, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      ByteBuffer bytes = ByteBuffer.wrap(new byte[10]);
      assertThat(channel.write(bytes)).isEqualTo(4);
      assertThatThrownBy(() -> channel.write(bytes)).isInstanceOf(IOException.class);
      disk.hasRoom(100);
      assertThat(channel.write(bytes)).isEqualTo(6);
    }
    assertThat(Files.size(path)).isEqualTo(10);
  }

  private Path written(String name, String text) throws IOException {
    Path file = Originals.write(folder.resolve(name + ".session"), text);
    Path record = folder.resolve(name + ".sqlite");
    try (WorkshopRecord open = WorkshopRecord.open(record, RecordDump.CLOCK)) {
      open.importSession(file);
    }
    return record;
  }

  private List<Seen> seen() {
    SessionLines file = new SessionLines().begins("2026-11-25T10:00:00Z", "laws");
    file.mark(0, SessionLines.LIGHT);
    session.lines().forEach(line -> file.received(line.nanos(), line.text()));
    return new ArrayList<>(Folded.of(file.lines()).seen());
  }

  private static int timed(List<Seen> seen) {
    int place = 0;
    while (!seen.get(place).outcome().equals("TIMED")) {
      place++;
    }
    return place;
  }

  private static Seen with(Seen seen, List<TrueEdge> edges, String outcome, double seconds) {
    return new Seen(seen.rig(), seen.bootCount(), edges, seen.marked(), outcome, seconds);
  }

  /** How often laws are broken by these results, which were seen of an untouched session. */
  private Tally judged(List<Seen> seen, int atLeast) {
    Tally tally = new Tally("sabotage");
    WireLaw.judge(session.firings(), seen, new BitSet(), new BitSet(), "none", tally);
    assertThat(tally.broken().values().stream().mapToLong(Long::longValue).sum())
        .isGreaterThanOrEqualTo(atLeast);
    return tally;
  }
}
