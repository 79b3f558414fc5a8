package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import org.halflight.files.PrivateFiles;
import org.halflight.profile.InventedProfiles;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is kept of other people's cameras is for its owner's eyes. */
class PrivateRecordTest {
  @TempDir private Path folder;

  @Test
  void allThatTheProgramMakesIsItsOwnersAlone() throws Exception {
    Path data = folder.resolve("data");
    Path file = data.resolve("record.sqlite");
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Path session =
          RecordFixture.write(data.resolve("sessions/a.session"), RecordFixture.everything("R-1"));
      record.importSession(session);
      new ProfileStore(data).keep(RecordFixture.profile("R-1"));
      record.backUp(data.resolve("backups/one.sqlite"));
      // While the record is open, with its log beside it.
      assertPrivate(data);
      record.restore(data.resolve("backups/one.sqlite"));
      assertPrivate(data);
    }
    assertPrivate(data);
  }

  @Test
  void aProfileStaysOnItsShelfWhateverTheRigCallsItself() throws Exception {
    for (String serial : List.of("..", ".", "NUL", "con.1", "-rf", "R.1", "plain-1")) {
      Path data = folder.resolve("of-" + serial.hashCode() + "/deep/data");
      RigProfile profile = profile(serial);
      Path kept = new ProfileStore(data).keep(profile);
      assertThat(kept.normalize()).as(serial).hasParent(data.resolve("profiles"));
      assertThat(new ProfileStore(data).newest(serial)).as(serial).contains(profile);
    }
  }

  @Test
  void noProfileIsOfARigThatCallsItselfAPath() throws Exception {
    String plain = ProfileFile.write(profile("plain-1"));
    assertThat(ProfileFile.read(plain)).isInstanceOf(ProfileFile.Read.class);
    for (String serial : List.of("../../x", "a/b", "R:1", "\\\\s\\x", "/etc/x", "a b")) {
      assertThatIllegalArgumentException().as(serial).isThrownBy(() -> profile(serial));
      Path file =
          Files.writeString(
              folder.resolve("some.profile"), sealed(plain.replace("plain-1", serial)));
      assertThat(ProfileFile.read(Files.readString(file)))
          .as(serial)
          .isEqualTo(new ProfileFile.Refused(ProfileFile.Reason.VALUES));
      assertThatThrownBy(() -> ProfileStore.read(file)).as(serial).isInstanceOf(Trouble.class);
      // A rig may greet like this all the same; then it has no profile, and nothing is looked for.
      assertThat(new ProfileStore(folder.resolve("deep/data")).newest(serial)).isEmpty();
    }
  }

  /** A profile as whoever wrote it by hand could seal it: with the check sum that fits. */
  private static String sealed(String profile) {
    String values = profile.substring(0, profile.indexOf("check-sum"));
    CRC32 crc = new CRC32();
    crc.update(values.getBytes(StandardCharsets.UTF_16BE));
    return values + String.format(Locale.ROOT, "check-sum = %08X\n", crc.getValue());
  }

  @Test
  void aProfileThatAnEarlierVersionKeptIsFound() throws Exception {
    RigProfile profile = profile("R.1");
    Path old = folder.resolve("profiles/R.1_2026-11-20.profile");
    Files.createDirectories(old.getParent());
    Files.writeString(old, ProfileFile.write(profile));
    assertThat(new ProfileStore(folder).newest("R.1")).contains(profile);
  }

  private static RigProfile profile(String serial) {
    return InventedProfiles.bare(
        new ProfiledRig(serial, "full", "1.0.0"),
        LocalDate.of(2026, 11, 20),
        new LightRange(20, 700, 900));
  }

  private static void assertPrivate(Path top) throws Exception {
    if (!PrivateFiles.hasRights(top)) {
      System.out.println("PrivateRecordTest: no rights of owner, group and others here");
      return;
    }
    List<String> open = new ArrayList<>();
    try (Stream<Path> all = Files.walk(top)) {
      for (Path each : all.toList()) {
        String rights = PosixFilePermissions.toString(Files.getPosixFilePermissions(each));
        if (!rights.endsWith("------")) {
          open.add(rights + " " + top.relativize(each));
        }
      }
    }
    assertThat(open).isEmpty();
  }
}
