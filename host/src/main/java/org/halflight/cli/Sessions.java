package org.halflight.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.bench.Workbench;
import org.halflight.extratest.Evidence;
import org.halflight.rig.LinkStatistics;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Opens session files for work and for reading. */
final class Sessions {
  private Sessions() {}

  /** Begins a session in a new file, or goes on with the one that is there. */
  static Workbench open(Path path, Surroundings surroundings) {
    OffsetDateTime at = surroundings.date().get().atZone(ZoneId.systemDefault()).toOffsetDateTime();
    SessionFile file = Files.exists(path) ? SessionFile.resume(path) : SessionFile.create(path);
    try {
      return open(file, surroundings, at);
    } catch (RuntimeException e) {
      file.close();
      throw e;
    }
  }

  private static Workbench open(SessionFile file, Surroundings surroundings, OffsetDateTime at) {
    List<BenchEvent> before = file.before();
    if (before.isEmpty()) {
      return Workbench.begin(
          file,
          surroundings.nanos(),
          Marks.begins(surroundings.version(), at, Optional.of(UUID.randomUUID().toString())));
    }
    BenchEvent.Mark begins = Marks.begins(surroundings.version(), at, Optional.empty());
    return Workbench.resume(file, surroundings.nanos(), before, begins);
  }

  /**
   * The firings of several session files of one camera; one that is in two of them, or a file given
   * twice, counts once.
   *
   * @param profiles what they are measured with
   * @throws Trouble when the files are of cameras with different labels
   */
  static List<FiringResult> firings(
      List<Path> paths, ProfileOptions profiles, Surroundings surroundings) {
    Set<FiringKey> known = new HashSet<>();
    Set<String> cameras = new TreeSet<>();
    List<FiringResult> firings = new ArrayList<>();
    for (Path path : paths) {
      List<BenchEvent> events = SessionFile.read(path).events();
      Session session = SessionReducer.replay(profiles.replayed(events, surroundings)).session();
      session.runs().stream()
          .map(RunSetup::camera)
          .filter(camera -> !camera.isBlank())
          .forEach(cameras::add);
      session.results().stream().filter(f -> known.add(f.key())).forEach(firings::add);
    }
    if (cameras.size() > 1) {
      throw new Trouble(Words.say("sessions.severalCameras", String.join(", ", cameras)));
    }
    return firings;
  }

  /** Beside firings, what else there is in session files to find out from. */
  static Evidence evidence(List<Path> paths, List<FiringResult> firings) {
    List<Session> sessions =
        paths.stream()
            .map(path -> SessionReducer.replay(SessionFile.read(path).events()).session())
            .toList();
    return new Evidence(
        firings,
        sessions.stream().flatMap(session -> session.readings().stream()).distinct().toList(),
        sessions.stream().flatMap(session -> session.presses().stream()).distinct().toList(),
        sessions.stream().flatMap(session -> session.plungers().stream()).distinct().toList());
  }

  /** What the runs of several session files were set up for, in their order. */
  static List<RunSetup> runs(List<Path> paths) {
    return paths.stream()
        .flatMap(
            path ->
                SessionReducer.replay(SessionFile.read(path).events()).session().runs().stream())
        .toList();
  }

  /** The label of the camera of session files; empty where none bears one. */
  static String camera(List<Path> paths) {
    return runs(paths).stream()
        .map(RunSetup::camera)
        .filter(camera -> !camera.isBlank())
        .findFirst()
        .orElse("");
  }

  /** What was lost or damaged in session files, in sentences; empty when nothing was. */
  static List<String> remarks(List<Path> paths) {
    List<String> remarks = new ArrayList<>();
    for (Path path : paths) {
      SessionFile.Contents contents = SessionFile.read(path);
      SessionReducer fold = SessionReducer.replay(contents.events());
      int notRead = contents.damagedLines() + fold.damagedMarks();
      if (notRead > 0) {
        remarks.add(Words.count("remark.notRead", notRead, path, notRead));
      }
      if (fold.unknownMarks() > 0) {
        remarks.add(Words.say("remark.unknownMarks", path, fold.unknownMarks()));
      }
      LinkStatistics link = fold.linkStatistics();
      if (link.bad() + link.missing() > 0) {
        remarks.add(Words.say("remark.link", path, link.bad(), link.missing()));
      }
    }
    return remarks;
  }
}
