package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.halflight.job.Camera;
import org.halflight.job.Checklist;
import org.halflight.job.Photo;
import org.halflight.job.Visit;
import org.halflight.photo.PhotoStore;
import org.halflight.photo.SamplePictures;
import org.halflight.record.WorkshopRecord;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures join the visit that was worked on when they were taken, once, and are left alone. */
class PhotoTakingTest {
  private static final Instant NINE = Instant.parse("2026-11-30T09:00:00Z");
  private static final Instant NOON = Instant.parse("2026-11-30T12:00:00Z");

  @TempDir Path folder;
  private Path inbox;
  private WorkshopRecord record;
  private Visit first;
  private final PhotoTaking taking = new PhotoTaking(ZoneOffset.UTC);

  @BeforeEach
  void open() throws IOException {
    inbox = Files.createDirectory(folder.resolve("inbox"));
    record =
        WorkshopRecord.open(folder.resolve("record.sqlite"), Clock.fixed(NOON, ZoneOffset.UTC));
    first = visit("first", NINE);
    taking.inbox(inbox.toString());
  }

  @AfterEach
  void close() {
    record.close();
  }

  private Visit visit(String label, Instant received) {
    Camera camera = record.keep(Camera.of(label, ShutterKind.LEAF, Dial.builtIn().get(0)));
    return record.keep(Visit.begins(camera.id(), "", received));
  }

  private Path arrives(String name, String taken) throws IOException {
    return Files.write(inbox.resolve(name), SamplePictures.jpeg(40, 30, 1, taken, "+00:00"));
  }

  private PhotoTaking.Look lookTwice() {
    List<String> troubles = taking.look(record, NOON).troubles();
    PhotoTaking.Look second = taking.look(record, NOON);
    assertThat(troubles).isEmpty();
    return second;
  }

  @Test
  void aPictureJoinsTheVisitAndIsCopiedOnce() throws IOException {
    Path from = arrives("IMG 0117.JPG", "2026:11:30 10:00:00");
    PhotoTaking.Look look = lookTwice();
    assertThat(look.joined()).hasSize(1);
    Photo photo = look.joined().get(0);
    assertThat(photo.visit()).isEqualTo(first.id());
    assertThat(photo.file()).isEqualTo("visit-" + first.id().value() + "/IMG-0117.jpg");
    assertThat(photo.name()).isEqualTo("IMG 0117.JPG");
    assertThat(PhotoStore.beside(record.file()).file(photo.file())).hasSameBinaryContentAs(from);
    assertThat(from).exists();

    // Under another name, after a new start, and taken off: it is still the same picture.
    Files.copy(from, inbox.resolve("copy.jpg"));
    record.keep(photo.off(true));
    taking.inbox(inbox.toString());
    assertThat(lookTwice().joined()).isEmpty();
    assertThat(record.photosWithOff(first.id())).hasSize(1);
    // By the will of a person it comes back.
    assertThat(taking.add(record, first.id(), taking.candidate(from, NOON))).isPresent();
    assertThat(record.photos(first.id())).hasSize(1);
  }

  @Test
  void anotherPictureOfTheSameNameReplacesNone() throws IOException {
    arrives("a.jpg", "2026:11:30 10:00:00");
    lookTwice();
    arrives("a.jpg", "2026:11:30 10:00:01");
    assertThat(lookTwice().joined())
        .extracting(Photo::file)
        .containsExactly("visit-" + first.id().value() + "/a-2.jpg");
  }

  @Test
  void aHalfCopiedFileIsWaitedFor() throws IOException {
    byte[] whole = SamplePictures.jpeg(40, 30, 1, "2026:11:30 10:00:00", "+00:00");
    Path file = inbox.resolve("a.jpg");
    for (int bytes : new int[] {200, 400, whole.length}) {
      Files.write(file, java.util.Arrays.copyOf(whole, bytes));
      assertThat(taking.look(record, NOON).joined()).isEmpty();
    }
    assertThat(taking.look(record, NOON).joined()).hasSize(1);
  }

  @Test
  void withSeveralVisitsItJoinsTheOneOnTheBench() throws IOException {
    Visit second = visit("second", NINE.plusSeconds(60));
    taking.onBench(Optional.of(second.id()), NINE.plusSeconds(60));
    taking.onBench(Optional.of(first.id()), NINE.plusSeconds(3600));
    arrives("a.jpg", "2026:11:30 09:30:00");
    arrives("b.jpg", "2026:11:30 10:30:00");
    lookTwice();
    assertThat(record.photos(second.id())).extracting(Photo::name).containsExactly("a.jpg");
    assertThat(record.photos(first.id())).extracting(Photo::name).containsExactly("b.jpg");
  }

  @Test
  void oneTakenAfterTheVisitClosedIsAskedOfAndOneTakenBeforeJoins() throws IOException {
    record.keep(first.handedBack(NINE.plusSeconds(3600), Checklist.EMPTY));
    arrives("during.jpg", "2026:11:30 09:30:00");
    arrives("after.jpg", "2026:11:30 11:00:00");
    arrives("holiday.jpg", "2026:07:30 11:00:00");
    assertThat(lookTwice().joined()).extracting(Photo::name).containsExactly("during.jpg");
    assertThat(taking.waiting()).hasSize(1);
    assertThat(taking.question())
        .contains(
            "after.jpg fits no visit by its time. Add it to this visit, or leave it in the"
                + " inbox.");
    Visit next = visit("next", NOON);
    assertThat(taking.add(record, next.id(), taking.waiting().get(0))).isPresent();
    assertThat(taking.waiting()).isEmpty();
    assertThat(record.photos(next.id())).extracting(Photo::name).containsExactly("after.jpg");
  }

  @Test
  void whenNobodysCameraIsOnTheBenchSomebodyIsAsked() throws IOException {
    taking.onBench(Optional.of(first.id()), NINE);
    taking.onBench(Optional.empty(), NINE.plusSeconds(600));
    arrives("a.jpg", "2026:11:30 09:30:00");
    assertThat(lookTwice().joined()).isEmpty();
    assertThat(taking.waiting()).hasSize(1);
    taking.leaveWaiting();
    assertThat(lookTwice().joined()).isEmpty();
    assertThat(taking.question()).isEmpty();
  }

  @Test
  void aPictureWithoutATimeIsOfTheTimeOfItsFile() throws IOException {
    Path file = Files.write(inbox.resolve("a.png"), SamplePictures.picture("png", 9, 9));
    Files.setLastModifiedTime(file, FileTime.from(NINE.plusSeconds(5)));
    Path kept = Files.writeString(inbox.resolve("b.heic"), "\0\0\0\30ftypheic\0\0\0\0mif1heic");
    Files.setLastModifiedTime(kept, FileTime.from(NINE.plusSeconds(6)));
    assertThat(lookTwice().joined())
        .extracting(Photo::takenBy)
        .containsExactly(Photo.TakenBy.FILE, Photo.TakenBy.FILE);
  }

  @Test
  void whatIsNoPictureIsNamedOnceAndOthersJoin() throws IOException {
    Files.writeString(inbox.resolve("notes.jpg"), "two shims");
    Files.writeString(inbox.resolve("notes.txt"), "two shims");
    Files.writeString(inbox.resolve(".hidden.jpg"), "two shims");
    arrives("a.jpg", "2026:11:30 10:00:00");
    PhotoTaking.Look look = lookTwice();
    assertThat(look.joined()).hasSize(1);
    assertThat(look.troubles())
        .containsExactly(
            "notes.jpg is not a picture, whatever its name says. It was not taken and stays where"
                + " it is.");
    assertThat(lookTwice().troubles()).isEmpty();
    assertThat(inbox.resolve("notes.jpg")).exists();
  }

  @Test
  void anInboxThatIsGoneIsSaidOnceAndComesBack() throws IOException {
    Path gone = folder.resolve("stick");
    taking.inbox(gone.toString());
    assertThat(taking.look(record, NOON).troubles())
        .containsExactly(
            "The photo inbox "
                + gone
                + " is not there. Connect it, or choose another folder (F7, Page). Pictures"
                + " join their visits once it is back.");
    assertThat(taking.look(record, NOON).troubles()).isEmpty();
    Files.createDirectory(gone);
    Files.write(
        gone.resolve("a.jpg"), SamplePictures.jpeg(40, 30, 1, "2026:11:30 10:00:00", "+00:00"));
    assertThat(lookTwice().joined()).hasSize(1);
    Files.delete(gone.resolve("a.jpg"));
    Files.delete(gone);
    assertThat(taking.look(record, NOON).troubles()).hasSize(1);
  }

  @Test
  void whatCannotBeCopiedIsTriedAgainAndSaidOnce() throws IOException {
    Path blocked = Files.writeString(folder.resolve(PhotoStore.FOLDER), "in the way");
    arrives("a.jpg", "2026:11:30 10:00:00");
    assertThat(lookTwice().troubles())
        .singleElement()
        .asString()
        .startsWith("a.jpg could not be copied beside the record: ");
    assertThat(taking.look(record, NOON).troubles()).isEmpty();
    Files.delete(blocked);
    assertThat(taking.look(record, NOON).joined()).hasSize(1);
  }
}
