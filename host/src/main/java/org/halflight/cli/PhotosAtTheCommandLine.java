package org.halflight.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.halflight.job.Camera;
import org.halflight.job.Photo;
import org.halflight.job.Visit;
import org.halflight.photo.PhotoStore;
import org.halflight.record.WorkshopRecord;
import org.halflight.trouble.Trouble;
import org.halflight.words.Numbers;
import org.halflight.words.PhotoWords;
import org.halflight.words.Words;
import org.halflight.workflow.PhotoTaking;

/** The pictures of a camera's last visit, as they are added and named at the command line. */
final class PhotosAtTheCommandLine {
  private final WorkshopRecord record;
  private final Camera camera;
  private final Visit visit;
  private final ZoneId zone;

  PhotosAtTheCommandLine(WorkshopRecord record, String typed, ZoneId zone) {
    this.record = record;
    this.zone = zone;
    camera = SheetAtTheCommandLine.camera(record, typed);
    visit =
        SheetAtTheCommandLine.lastVisit(record, camera)
            .orElseThrow(() -> new Trouble(Words.say("record.noVisit", camera.label())));
  }

  void add(Path file, Instant now) {
    PhotoTaking taking = new PhotoTaking(zone);
    taking.add(record, visit.id(), taking.candidate(file, now));
  }

  /** Reads {@code NUMBER=WORDS}. */
  void caption(String typed) {
    String[] parts = typed.split("=", 2);
    if (parts.length < 2) {
      throw new Trouble(Words.say("record.photos.parts", typed));
    }
    record.keep(photo(parts[0].strip()).withCaption(parts[1]));
  }

  void off(String number, boolean isOff) {
    record.keep(photo(number).off(isOff));
  }

  private Photo photo(String number) {
    List<Photo> all = record.photosWithOff(visit.id());
    if (!number.matches("\\d{1,6}")
        || Integer.parseInt(number) < 1
        || Integer.parseInt(number) > all.size()) {
      throw new Trouble(Words.say("record.photos.noPhoto", number, all.size()));
    }
    return all.get(Integer.parseInt(number) - 1);
  }

  /** Each picture, and where its file is. */
  List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(
        Words.say(
            "photo.heading",
            camera.label(),
            Numbers.date(LocalDate.ofInstant(visit.receivedAt(), zone))));
    List<Photo> all = record.photosWithOff(visit.id());
    for (int i = 0; i < all.size(); i++) {
      Path file = PhotoStore.beside(record.file()).file(all.get(i).file());
      lines.add(
          Words.say(
              Files.exists(file) ? "photo.line.file" : "photo.line.missing",
              PhotoWords.line(i + 1, all.get(i), zone),
              file));
    }
    if (all.isEmpty()) {
      lines.add(Words.say("photo.none"));
    }
    return lines;
  }
}
