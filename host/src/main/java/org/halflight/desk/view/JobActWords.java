package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.Checklist;
import org.halflight.job.Detail;
import org.halflight.job.Photo;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.session.RunOption;
import org.halflight.words.OptionWords;
import org.halflight.words.SheetWords;
import org.halflight.words.Words;
import org.halflight.words.WorkWords;
import org.halflight.workflow.CameraForm;

/** What was changed in what is noted of a camera, in a few words, to be undone by. */
public final class JobActWords {
  private JobActWords() {}

  /** Which fields of a camera and its visit were changed; empty where none was. */
  public static String fields(Camera wasCamera, Visit wasVisit, Camera camera, Visit visit) {
    CameraForm was = CameraForm.of(wasCamera);
    CameraForm now = CameraForm.of(camera);
    List<String> changes = new ArrayList<>();
    add(changes, "label", was.label(), now.label());
    add(changes, "serial", was.serialNumber(), now.serialNumber());
    add(
        changes,
        "shutter",
        Words.of("desk.shutter", was.shutter()),
        Words.of("desk.shutter", now.shutter()));
    add(changes, "speeds", was.speeds(), now.speeds());
    add(changes, "widest", was.widest(), now.widest());
    add(changes, "frame", was.frame(), now.frame());
    add(changes, "firing", was.firing(), now.firing());
    now.curtains()
        .texts()
        .forEach(
            (option, text) ->
                add(changes, option, was.curtains().texts().getOrDefault(option, ""), text));
    add(changes, "job", wasVisit.jobNumber(), visit.jobNumber());
    for (Detail detail : Detail.values()) {
      String key = detail == Detail.SECOND_SERIAL ? "second" : Detail.WORDS.word(detail);
      add(
          changes,
          key,
          wasCamera.details().and(wasVisit.details()).of(detail),
          camera.details().and(visit.details()).of(detail));
    }
    return changes.size() < 2
        ? String.join("", changes)
        : Words.say("act.fields", changes.get(0), changes.size() - 1);
  }

  private static void add(List<String> changes, RunOption<?> option, String was, String now) {
    if (!was.equals(now)) {
      changes.add(change(OptionWords.label(option), was, now));
    }
  }

  private static void add(List<String> changes, String key, String was, String now) {
    if (!was.equals(now)) {
      changes.add(change(Words.say("desk.camera." + key), was, now));
    }
  }

  private static String change(String name, String was, String now) {
    return Words.say("act.change", name, orNothing(was), orNothing(now));
  }

  private static String orNothing(String words) {
    return words.isBlank() ? Words.say("act.nothing") : words;
  }

  /** Which answer of the lists was changed. */
  public static String lists(Visit was, Checklist intake, Checklist handBack) {
    return answer(was.intake(), intake, "act.intake")
        .or(() -> answer(was.handBack(), handBack, "act.handBack"))
        .orElse("");
  }

  private static Optional<String> answer(Checklist was, Checklist now, String key) {
    for (CheckItem item : CheckItem.values()) {
      if (!was.of(item).equals(now.of(item))) {
        String name = Words.say(key, Words.of("desk.item", item));
        return Optional.of(
            was.of(item).state() == now.of(item).state()
                ? change(Words.say("act.note", name), was.of(item).note(), now.of(item).note())
                : change(
                    name,
                    Words.of("desk.state", was.of(item).state()),
                    Words.of("desk.state", now.of(item).state())));
      }
    }
    return Optional.empty();
  }

  /** What becomes of an entry of the work log. */
  public static String log(WorkEntry was, WorkEntry now) {
    return now.isStruck() && !was.isStruck()
        ? Words.say("act.log.struck", WorkWords.text(was))
        : Words.say("act.log.corrected", WorkWords.text(was), WorkWords.text(now));
  }

  /** Which caption a picture gets. */
  public static String caption(Photo photo, String words) {
    return change(Words.say("act.caption", photo.name()), photo.caption(), words.strip());
  }

  /** What an entry of the strip sheet does to its line. */
  public static String sheet(StripSheet sheet, SheetEntry entry) {
    String name = SheetWords.name(entry.item());
    Optional<SheetEntry> was = sheet.line(entry.line()).map(StripSheet.Line::now);
    if (was.isEmpty()) {
      return Words.say("act.sheet.noted", name, SheetWords.noted(entry));
    }
    if (was.get().state() != entry.state() && entry.state() == SheetState.STRUCK) {
      return Words.say("act.sheet.struck", name, SheetWords.noted(entry));
    }
    String before = SheetWords.noted(was.get());
    String after = SheetWords.noted(entry);
    return before.equals(after)
        ? Words.say(
            entry.state() == SheetState.BACK ? "act.sheet.ticked" : "act.sheet.notTicked", name)
        : change(name, before, after);
  }
}
