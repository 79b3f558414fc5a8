package org.halflight.workflow;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.files.Reasons;
import org.halflight.job.BenchStays;
import org.halflight.job.Id;
import org.halflight.job.Photo;
import org.halflight.job.Visit;
import org.halflight.photo.PhotoInbox;
import org.halflight.photo.PhotoStore;
import org.halflight.photo.PictureHead;
import org.halflight.record.WorkshopRecord;
import org.halflight.trouble.Trouble;
import org.halflight.words.PhotoWords;
import org.halflight.words.Words;

/**
 * Pictures join visits: those that arrive in the inbox by the time at which they were taken, and
 * those that a person chooses. Files are copied, and left where they are.
 */
public final class PhotoTaking {
  /** An older picture that fits no visit is none of today's work, and nobody is asked of it. */
  private static final Duration ASKED_OF = Duration.ofHours(12);

  /**
   * A picture that may join a visit.
   *
   * @param file where it came from
   * @param takenAt when it was taken
   * @param takenBy what says so
   */
  public record Candidate(Path file, Instant takenAt, Photo.TakenBy takenBy) {}

  /**
   * What a look came to.
   *
   * @param joined pictures that joined a visit now
   * @param troubles whole sentences, each said once
   */
  public record Look(List<Photo> joined, List<String> troubles) {
    public Look {
      joined = List.copyOf(joined);
      troubles = List.copyOf(troubles);
    }
  }

  private final ZoneId zone;
  private final BenchStays stays = new BenchStays();
  private final Map<Path, Candidate> waiting = new LinkedHashMap<>();
  private final Map<Path, String> said = new LinkedHashMap<>();
  private Optional<PhotoInbox> inbox = Optional.empty();

  /**
   * @param zone of clocks that do not name their own
   */
  public PhotoTaking(ZoneId zone) {
    this.zone = zone;
  }

  /** Pictures arrive in another folder from now on; empty for none. */
  public void inbox(String folder) {
    waiting.clear();
    said.clear();
    inbox = folder.isBlank() ? Optional.empty() : Optional.of(new PhotoInbox(Path.of(folder)));
  }

  /** Another visit is on the bench; empty for none. */
  public void onBench(Optional<Id<Visit>> visit, Instant now) {
    stays.begins(visit, now);
  }

  /** Pictures of the inbox that fit no visit, or several: a person is to say. */
  public List<Candidate> waiting() {
    return List.copyOf(waiting.values());
  }

  /** They stay in the inbox and join no visit. */
  public void leaveWaiting() {
    waiting.clear();
  }

  /** Looks at the inbox; pictures that are whole join the visits that they were taken at. */
  public Look look(WorkshopRecord record, Instant now) {
    List<Photo> joined = new ArrayList<>();
    List<String> troubles = new ArrayList<>();
    if (inbox.isPresent()) {
      PhotoInbox.Look look = inbox.get().look();
      look.trouble().ifPresent(troubles::add);
      waiting.keySet().removeIf(file -> !Files.exists(file));
      for (PhotoInbox.Arrived arrived : look.arrived()) {
        try {
          Optional<Candidate> candidate = candidate(arrived.file(), arrived.changedAt(), now);
          if (candidate.isPresent()) {
            join(record, candidate.get(), now).ifPresent(joined::add);
          } else {
            troubles.add(noPicture(arrived.file()));
          }
          said.remove(arrived.file());
        } catch (Trouble trouble) {
          // A full disk gets room again: the file is tried again, and the sentence is not repeated.
          inbox.get().again(arrived.file());
          if (!trouble.getMessage().equals(said.put(arrived.file(), trouble.getMessage()))) {
            troubles.add(trouble.getMessage());
          }
        }
      }
    }
    return new Look(joined, troubles);
  }

  private Optional<Photo> join(WorkshopRecord record, Candidate candidate, Instant now) {
    List<Visit> open = record.visitsOpenAt(candidate.takenAt());
    Optional<Id<Visit>> visit = stays.meant(open, candidate.takenAt());
    if (visit.isPresent()) {
      return add(record, visit.get(), candidate, false);
    }
    if (candidate.takenAt().isAfter(now.minus(ASKED_OF))
        && record.photosOf(PhotoStore.sum(candidate.file())).isEmpty()) {
      waiting.put(candidate.file(), candidate);
    }
    return Optional.empty();
  }

  /**
   * A picture that a person chose.
   *
   * @throws Trouble when it is no picture, or cannot be read
   */
  public Candidate candidate(Path file, Instant now) {
    try {
      return candidate(file, Files.getLastModifiedTime(file).toInstant(), now)
          .orElseThrow(() -> new Trouble(noPicture(file)));
    } catch (IOException unreadable) {
      throw new Trouble(
          Words.say("photo.unreadable", PhotoStore.name(file), Reasons.of(unreadable)));
    }
  }

  private static String noPicture(Path file) {
    return Words.say("photo.noPicture", PhotoStore.name(file));
  }

  private Optional<Candidate> candidate(Path file, Instant changedAt, Instant now) {
    try {
      return PictureHead.read(file)
          .map(
              head ->
                  head.takenAt(zone, now)
                      .map(at -> new Candidate(file, at, Photo.TakenBy.PICTURE))
                      .orElseGet(() -> new Candidate(file, changedAt, Photo.TakenBy.FILE)));
    } catch (IOException unreadable) {
      throw new Trouble(
          Words.say("photo.unreadable", PhotoStore.name(file), Reasons.of(unreadable)));
    }
  }

  /**
   * Adds a picture to a visit, by the will of a person.
   *
   * @return empty when it is there already
   * @throws Trouble when it cannot be read or kept
   */
  public Optional<Photo> add(WorkshopRecord record, Id<Visit> visit, Candidate candidate) {
    waiting.remove(candidate.file());
    return add(record, visit, candidate, true);
  }

  /**
   * @param again whether a picture that is known at another visit, or was taken off, joins all the
   *     same
   */
  private static Optional<Photo> add(
      WorkshopRecord record, Id<Visit> visit, Candidate candidate, boolean again) {
    Path file = candidate.file();
    String sum = PhotoStore.sum(file);
    List<Photo> known = record.photosOf(sum);
    Optional<Photo> here = known.stream().filter(p -> p.visit().equals(visit)).findFirst();
    if (here.isPresent()) {
      return here.filter(p -> again && p.isOff()).map(p -> record.keep(p.off(false)));
    }
    if (!known.isEmpty() && !again) {
      return Optional.empty();
    }
    String kept = PhotoStore.beside(record.file()).keep(file, "visit-" + visit.value(), sum);
    try {
      return Optional.of(
          record.keep(
              new Photo(
                  Id.ofNew(),
                  visit,
                  kept,
                  PhotoStore.name(file),
                  sum,
                  Files.size(file),
                  candidate.takenAt(),
                  candidate.takenBy(),
                  "",
                  false)));
    } catch (IOException unreadable) {
      throw new Trouble(
          Words.say("photo.unreadable", PhotoStore.name(file), Reasons.of(unreadable)));
    }
  }

  /** The question of pictures that wait; empty for none. */
  public Optional<String> question() {
    return waiting.isEmpty()
        ? Optional.empty()
        : Optional.of(PhotoWords.waiting(waiting.keySet().stream().map(PhotoStore::name).toList()));
  }
}
