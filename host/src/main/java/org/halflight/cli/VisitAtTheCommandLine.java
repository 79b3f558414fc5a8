package org.halflight.cli;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.job.Correction;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.job.Finding;
import org.halflight.job.Visit;
import org.halflight.record.WorkshopRecord;
import org.halflight.session.RunOption;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.halflight.words.CorrectionWords;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.PhotoWords;
import org.halflight.words.Words;
import org.halflight.workflow.CameraForm;
import org.halflight.workflow.CurtainForm;

/**
 * What is noted of a camera and its last visit, as it is typed. Nothing is kept before all is read;
 * what is corrected is kept too.
 */
final class VisitAtTheCommandLine {
  private static final String INTAKE = "intake.";
  private static final String HAND_BACK = "hand-back.";
  private static final String JOB = "job";
  private static final String SHUTTER = "shutter";
  private static final List<String> OF_FORM =
      List.of(
          "label",
          "serial",
          "speeds",
          "widest",
          "frame",
          "firing",
          RunOption.OWN_TRAVEL.name(),
          RunOption.X_SPEED.name(),
          RunOption.ADJUSTERS.name());

  private final WorkshopRecord record;
  private final Instant now;
  private Camera camera;
  private Visit visit;

  private VisitAtTheCommandLine(WorkshopRecord record, Camera camera, Visit visit, Instant now) {
    this.record = record;
    this.camera = camera;
    this.visit = visit;
    this.now = now;
  }

  /** The last visit of a camera that the record has. */
  static VisitAtTheCommandLine last(WorkshopRecord record, String typed, Instant now) {
    Camera camera = SheetAtTheCommandLine.camera(record, typed);
    Visit visit =
        SheetAtTheCommandLine.lastVisit(record, camera)
            .orElseThrow(() -> new Trouble(Words.say("record.noVisit", camera.label())));
    return new VisitAtTheCommandLine(record, camera, visit, now);
  }

  /** A visit that begins, of a camera that bears this label or of a new one. */
  static VisitAtTheCommandLine begins(WorkshopRecord record, String label, Instant now) {
    Optional<Camera> known =
        record.search(label).stream()
            .map(line -> line.camera())
            .filter(each -> each.label().equals(label.strip()))
            .findFirst();
    Optional<Visit> open =
        known
            .flatMap(its -> SheetAtTheCommandLine.lastVisit(record, its))
            .filter(v -> v.handedBackAt().isEmpty());
    if (open.isPresent()) {
      throw new Trouble(Words.say("record.visit.open", label.strip()));
    }
    Camera camera =
        known.orElseGet(() -> Camera.of(label.strip(), ShutterKind.UNKNOWN, Dial.builtIn().get(0)));
    return new VisitAtTheCommandLine(record, camera, Visit.begins(camera.id(), "", now), now);
  }

  void handBack() {
    visit = visit.handedBack(now, visit.handBack());
  }

  void hereAgain() {
    visit = visit.hereAgain();
  }

  /** Reads {@code FIELD=WORDS}. */
  void set(String typed) {
    String[] parts = typed.split("=", 2);
    String field = parts[0].strip();
    String words = parts.length < 2 ? "" : parts[1].strip();
    Optional<Detail> detail = Detail.WORDS.find(field);
    if (parts.length < 2) {
      throw new Trouble(Words.say("record.visit.parts", typed));
    }
    if (detail.isPresent()) {
      set(detail.get(), words);
    } else if (field.equals(JOB)) {
      visit = visit.with(words, visit.details());
    } else if (field.startsWith(INTAKE)) {
      visit = visit.withIntake(answered(visit.intake(), field.substring(INTAKE.length()), words));
    } else if (field.startsWith(HAND_BACK)) {
      visit =
          visit.with(
              visit.intake(),
              answered(visit.handBack(), field.substring(HAND_BACK.length()), words));
    } else if (field.equals(SHUTTER) || OF_FORM.contains(field)) {
      ofForm(field, words);
    } else {
      throw new Trouble(Words.say("record.visit.field", field, String.join(", ", fields())));
    }
  }

  private static List<String> fields() {
    return Stream.of(
            OF_FORM.stream(),
            Stream.of(SHUTTER, JOB),
            Arrays.stream(Detail.values()).map(Detail.WORDS::word),
            Stream.of(INTAKE + "blades", HAND_BACK + "blades"))
        .flatMap(each -> each)
        .toList();
  }

  private void set(Detail detail, String words) {
    if (detail == Detail.FILM && !List.of("", Detail.YES, Detail.NO).contains(words)) {
      throw new Trouble(Words.say("page.badFilm", words));
    }
    Map<Detail, String> one = new EnumMap<>(Map.of(detail, words));
    if (detail.isOfVisit()) {
      visit = visit.with(visit.jobNumber(), replaced(visit.details(), one));
    } else {
      camera = camera.withDetails(replaced(camera.details(), one));
    }
  }

  /** An empty one takes away what was noted. */
  private static Details replaced(Details before, Map<Detail, String> one) {
    Map<Detail, String> all = new EnumMap<>(Detail.class);
    all.putAll(before.noted());
    all.putAll(one);
    return new Details(all);
  }

  private static Checklist answered(Checklist list, String item, String words) {
    String[] state = words.split(",", 2);
    return list.with(
        CliWords.constant(CheckItem.WORDS, item, "--set"),
        CliWords.constant(CheckState.WORDS, state[0].strip(), "--set"),
        state.length > 1 ? state[1].strip() : "");
  }

  private void ofForm(String field, String words) {
    CameraForm before = CameraForm.of(camera);
    Map<String, String> typed = new LinkedHashMap<>();
    typed.put("label", before.label());
    typed.put("serial", before.serialNumber());
    typed.put("speeds", before.speeds());
    typed.put("widest", before.widest());
    typed.put("frame", before.frame());
    typed.put("firing", before.firing());
    before.curtains().texts().forEach((option, text) -> typed.put(option.name(), text));
    typed.put(field, words);
    CameraForm.Result read =
        new CameraForm(
                typed.getOrDefault("label", ""),
                typed.getOrDefault("serial", ""),
                field.equals(SHUTTER)
                    ? CliWords.constant(ShutterKind.WORDS, words, "--set")
                    : before.shutter(),
                typed.getOrDefault("speeds", ""),
                typed.getOrDefault("widest", ""),
                typed.getOrDefault("frame", ""),
                typed.getOrDefault("firing", ""),
                new CurtainForm(
                    typed.getOrDefault(RunOption.OWN_TRAVEL.name(), ""),
                    typed.getOrDefault(RunOption.X_SPEED.name(), ""),
                    typed.getOrDefault(RunOption.ADJUSTERS.name(), "")))
            .read(camera.id());
    Details details = camera.details();
    camera = read.camera().orElseThrow(() -> new Trouble(read.trouble())).withDetails(details);
  }

  /** Keeps all that was typed. */
  void keep() {
    camera = record.keep(camera);
    Visit of = visit;
    visit =
        record.keep(
            new Visit(
                of.id(),
                camera.id(),
                of.jobNumber(),
                of.receivedAt(),
                of.handedBackAt(),
                of.intake(),
                of.handBack(),
                of.details()));
  }

  /** All that is noted, a line each; what is empty is left out. */
  List<String> lines(ZoneId zone) {
    List<String> lines = new ArrayList<>();
    lines.add(
        Words.say(
            visit.handedBackAt().isEmpty() ? "record.visit.here" : "record.visit.gone",
            camera.label(),
            PhotoWords.moment(visit.receivedAt(), zone),
            visit.handedBackAt().map(at -> PhotoWords.moment(at, zone)).orElse("")));
    CameraForm form = CameraForm.of(camera);
    Map<String, String> said = new LinkedHashMap<>();
    Details details = camera.details().and(visit.details());
    details
        .noted()
        .forEach((detail, words) -> said.put(Detail.WORDS.word(detail).replace('-', '_'), words));
    said.put("serial_number", form.serialNumber());
    said.put("job_number", visit.jobNumber());
    said.put("shutter", Words.of("desk.shutter", form.shutter()));
    said.put("dial_speeds", form.speeds());
    said.put("widest_f_number", form.widest());
    said.put("frame", form.frame());
    said.put("firing_without_film", form.firing());
    if (camera.shutter().isCurtain(camera.dial().name())) {
      form.curtains()
          .texts()
          .forEach((option, text) -> said.put(option.name().replace('-', '_'), text));
    }
    said.forEach(
        (field, words) -> {
          if (!words.isBlank()) {
            lines.add(Words.say("record.visit.line", CorrectionWords.name(field), words));
          }
        });
    Map.of("intake", visit.intake(), "hand-back", visit.handBack()).entrySet().stream()
        .sorted(Map.Entry.<String, Checklist>comparingByKey().reversed())
        .forEach(list -> lines.addAll(answers(list.getKey(), list.getValue())));
    return lines;
  }

  private static List<String> answers(String list, Checklist answers) {
    return answers.findings().entrySet().stream()
        .filter(each -> !each.getValue().equals(Finding.NOT_TESTED))
        .map(
            each ->
                Words.say(
                    "record.visit.line",
                    Words.say("correction.list." + list, ExtraTestWords.item(each.getKey())),
                    Stream.of(
                            Words.of("correction.state", each.getValue().state()),
                            each.getValue().note())
                        .filter(words -> !words.isEmpty())
                        .collect(Collectors.joining(" "))))
        .toList();
  }

  /** What was corrected: camera, visit, lists, work log and pictures. */
  List<String> earlier(ZoneId zone) {
    List<Correction> all = record.allCorrections(visit);
    return all.isEmpty() ? List.of(Words.say("correction.none")) : CorrectionWords.lines(all, zone);
  }
}
