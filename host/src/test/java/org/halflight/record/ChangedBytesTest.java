package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A byte of a record that changes by itself is told of, whatever it is: no other result and no
 * other raw edge is read without a word.
 *
 * <p>The short form changes some hundred bytes. The long one is the same with {@code
 * -Dhalflight.changes=10000}; {@code -Dhalflight.seed=...} replays one.
 */
class ChangedBytesTest {
  private static final int CHANGES = Integer.getInteger("halflight.changes", 300);

  /** The same in every build; the long form may take others. */
  private static final long SEED = Long.getLong("halflight.seed", 14);

  /** What became of a changed byte. */
  private enum Came {
    /** The record was not opened, and a sentence says why. */
    REFUSED,
    /** It was opened, and a sentence says what is left out or was mended. */
    TOLD,
    /** All in it is read as before. */
    HARMLESS,
    /** Something else is read, and nobody was told. */
    SILENT
  }

  @TempDir private Path folder;
  private final List<String> silent = new ArrayList<>();

  @Test
  void noChangedByteGoesUnnoticed() throws IOException {
    Path whole = folder.resolve("whole.sqlite");
    try (WorkshopRecord record = RecordFixture.open(whole)) {
      WriteRecordFixture.fill(record);
    }
    byte[] bytes = Files.readAllBytes(whole);
    List<Object> picture;
    try (WorkshopRecord record = RecordFixture.open(whole)) {
      picture = picture(record);
      assertThat(record.damage()).isEmpty();
    }
    Random random = new Random(SEED);
    Map<Came, Integer> counts = new EnumMap<>(Came.class);
    for (int i = 0; i < CHANGES; i++) {
      int at = random.nextInt(bytes.length);
      byte[] changed = bytes.clone();
      changed[at] ^= (byte) (1 + random.nextInt(255));
      Came came = open(i, changed, picture);
      if (came == Came.SILENT) {
        silent.add("byte " + at + " from " + bytes[at] + " to " + changed[at]);
      }
      counts.merge(came, 1, Integer::sum);
    }
    System.out.println(
        "ChangedBytesTest: seed "
            + SEED
            + ", "
            + CHANGES
            + " of "
            + bytes.length
            + " bytes "
            + counts);
    assertThat(silent).isEmpty();
    assertThat(counts).containsKeys(Came.REFUSED, Came.TOLD, Came.HARMLESS);
  }

  private Came open(int number, byte[] changed, List<Object> picture) throws IOException {
    Path own = Files.createDirectory(folder.resolve("change-" + number));
    Path file = Files.write(own.resolve("record.sqlite"), changed);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      List<Object> now = picture(record);
      if (!record.damage().isEmpty()) {
        return Came.TOLD;
      }
      return now.equals(picture) ? Came.HARMLESS : Came.SILENT;
    } catch (Trouble told) {
      assertThat(told.getMessage()).doesNotContain("\n");
      return Came.REFUSED;
    } finally {
      try (Stream<Path> left = Files.list(own)) {
        for (Path each : left.toList()) {
          Files.delete(each);
        }
      }
      Files.delete(own);
    }
  }

  /** All that anybody reads from a record. */
  private static List<Object> picture(WorkshopRecord record) {
    List<Object> picture = new ArrayList<>();
    picture.add(record.cameras());
    picture.add(record.profiles());
    for (CameraLine line : record.cameras()) {
      Id<Camera> camera = line.camera().id();
      picture.add(record.history(camera).map(CameraHistory::runs).map(List::toString));
      for (Visit visit : record.visits(camera)) {
        picture.add(visit);
        picture.add(record.workLog(visit.id()));
        picture.add(record.tried(visit.id()).toString());
        record.runs(visit.id()).forEach(run -> add(record, run, picture));
      }
    }
    record.runsWithoutCamera().forEach(run -> add(record, run, picture));
    for (String session :
        record.database.read(
            c ->
                Query.asTheyStand(
                    c,
                    "SELECT session_key FROM bench_session ORDER BY id",
                    row -> row.getString(1)))) {
      picture.add(record.firings(session));
    }
    picture.add(record.rigStart("BOX-0001", 7));
    return picture;
  }

  private static void add(WorkshopRecord record, Run run, List<Object> picture) {
    Id<Run> id = run.id();
    picture.add(run);
    picture.add(record.firings(id));
    picture.add(record.readings(id));
    picture.add(record.link(id).map(Object::toString));
  }
}
