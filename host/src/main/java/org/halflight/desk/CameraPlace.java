package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTabbedPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.ChecklistText;
import org.halflight.desk.view.HistoryText;
import org.halflight.desk.view.JobActWords;
import org.halflight.desk.view.UndoStack;
import org.halflight.desk.view.UserAction;
import org.halflight.job.Camera;
import org.halflight.job.Checklist;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.job.Id;
import org.halflight.job.SheetEntry;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.record.Edit;
import org.halflight.session.RunOption;
import org.halflight.speeds.ShutterKind;
import org.halflight.words.CorrectionWords;
import org.halflight.words.OptionWords;
import org.halflight.words.SheetWords;
import org.halflight.words.Words;
import org.halflight.words.WorkWords;
import org.halflight.workflow.CameraForm;

/** The camera on the bench, its visit with both lists, and the work log. */
final class CameraPlace extends Place {
  private static final long serialVersionUID = 1L;

  private static final List<ShutterKind> KINDS = List.of(ShutterKind.values());

  private final transient Archive archive;
  private final transient Clock clock;
  private final transient Consumer<Camera> onNamed;
  private final transient Consumer<Camera> onBack;
  private final transient Runnable onNobodys;

  /** From this width on, in pixels before scaling, there is room for three columns. */
  private static final int WIDE = 1200;

  private final JLabel title = new JLabel();
  private final JPanel form =
      group(new MigLayout("insets 0, gap 8 6, fillx, wrap 2, hidemode 3", "[][fill,grow]"));
  private final transient DetailFields details = new DetailFields();
  private final JTextField label = new JTextField();
  private final JTextField serial = new JTextField();
  private final JTextField job = new JTextField();
  private final JComboBox<String> shutter = new JComboBox<>();
  private final JTextField speeds = new JTextField();
  private final JTextField widest = new JTextField();
  private final JTextField frame = new JTextField();
  private final JTextField firing = new JTextField();
  private final transient CurtainFields curtains = new CurtainFields();
  private final List<JLabel> curtainNames = new ArrayList<>();
  private final ReadOnlyText trouble =
      new ReadOnlyText("cameraTrouble", Words.say("desk.run.troubleName"));
  private final JButton keep = new JButton(Words.say("desk.camera.keep"));
  private final JButton another = new JButton(Words.say("desk.camera.another"));
  private final JButton handBack = new JButton(Words.say("desk.camera.handBack"));
  private final ReadOnlyText moved =
      new ReadOnlyText("cameraMoved", Words.say("desk.history.moved"));
  private final ChecklistTable lists = new ChecklistTable(this::listed);
  private final ReadOnlyText measured =
      new ReadOnlyText("listsMeasured", Words.say("desk.lists.said"));
  private final JScrollPane measuredScroll = new JScrollPane(measured);
  private final WorkLogPanel log = new WorkLogPanel(this::logged, this::logChanged);
  private final SheetPanel sheet;
  private final PhotosPanel photos;
  private final JTextField note = new JTextField();
  private final EarlierPanel earlier = new EarlierPanel();
  private final JTabbedPane tabs = new JTabbedPane();
  private final PlaceHead head;
  private final JPanel said =
      group(new MigLayout("insets 0, wrap 1, fillx, hidemode 3, gap 0", "[fill,grow]"));
  private final JPanel inspection =
      group(new MigLayout("insets 0, wrap 1, gap 0 8, fill", "[fill,grow]", ""));
  private final JLabel sheetTitle = new JLabel(Words.say("desk.sheet.title"));
  private final FormScroll formScroll;
  private boolean isWide;
  private transient Optional<Camera> camera = Optional.empty();
  private transient Optional<Visit> visit = Optional.empty();

  private final AskPanel question = new AskPanel();
  private final transient JobEdits edits;
  private final transient Consumer<UndoStack.Act> onDone;

  /** What was said of what was just done or undone. */
  private String news = "";

  /**
   * @param onNamed hears which camera is on the bench
   * @param onBack hears of one that comes back without a person's doing
   * @param onNobodys hears that it is none of the record any more
   * @param onDone takes what was done here, to be undone
   */
  CameraPlace(
      Look look,
      Archive archive,
      Clock clock,
      Executor drawing,
      Consumer<Camera> onNamed,
      Consumer<Camera> onBack,
      Runnable onNobodys,
      Consumer<UndoStack.Act> onDone) {
    super(UserAction.TO_CAMERA);
    setLayout(new MigLayout(Look.EDGES + ", " + Look.GAPS + ", fill, hidemode 3", "", ""));
    this.archive = archive;
    this.clock = clock;
    this.onNamed = onNamed;
    this.onBack = onBack;
    this.onNobodys = onNobodys;
    this.onDone = onDone;
    edits = new JobEdits(archive, onDone);
    for (ShutterKind kind : KINDS) {
      shutter.addItem(Words.of("desk.shutter", kind));
    }
    label.setName("cameraLabel");
    serial.setName("cameraSerial");
    job.setName("cameraJob");
    shutter.setName("cameraShutter");
    speeds.setName("cameraSpeeds");
    widest.setName("cameraWidest");
    frame.setName("cameraFrame");
    firing.setName("cameraFiring");
    keep.setName("keepCamera");
    another.setName("anotherCamera");
    handBack.setName("handBack");
    tabs.setName("cameraTabs");
    tabs.getAccessibleContext().setAccessibleName(Words.say("desk.camera.tabs"));
    sheet = new SheetPanel(clock, this::sheetSays);
    photos = new PhotosPanel(archive, edits, drawing, clock.getZone());
    archive.onPhotos(this::photosCame);
    keep.addActionListener(event -> keep());
    another.addActionListener(event -> another());
    handBack.addActionListener(event -> handBack());
    trouble.getDocument().addDocumentListener(new Typed(this::sayOrHide));
    trouble.setText(Words.say("desk.camera.before"));

    row("complaint", details.field(Detail.COMPLAINT));
    row("label", label);
    row("owner", details.field(Detail.OWNER));
    row("film", details.field(Detail.FILM));
    row("maker", details.field(Detail.MAKER));
    row("model", details.field(Detail.MODEL));
    row("serial", serial);
    row("lens", details.field(Detail.LENS));
    row("second", details.field(Detail.SECOND_SERIAL));
    row("widest", widest);
    row("shutter", shutter);
    row("speeds", speeds);
    row("frame", frame);
    for (RunOption<?> option : CurtainFields.options()) {
      curtainNames.add(labelled(OptionWords.label(option), curtains.of(option)));
    }
    shutter.addActionListener(event -> showCurtains());
    row("firing", firing);
    row("job", job);
    row("lubricant", details.field(Detail.LUBRICANT));
    row("answer", details.field(Detail.ANSWER));
    head = new PlaceHead(title, List.of(keep, another, handBack));
    said.add(question);
    said.add(trouble, "wmin 100");
    said.add(moved, "wmin 100");
    inspection.add(new JScrollPane(lists), "grow, push, hmin 100");
    measuredScroll.setBorder(null);
    note.setName("listsNote");
    JLabel noteLabel = new JLabel(Words.say("desk.lists.note"));
    noteLabel.setLabelFor(note);
    note.getAccessibleContext().setAccessibleName(noteLabel.getText());
    note.addActionListener(event -> lists.note(note.getText().strip()));
    inspection.add(noteLabel, "split 2, grow 0");
    inspection.add(note, "growx, pushx, wmin 60");
    tabs.addChangeListener(event -> showEarlier());
    inspection.add(measuredScroll, "wmin 100, h 60:110:");
    formScroll = new FormScroll(form);
    addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent event) {
            arrange(getWidth() >= Look.px(WIDE));
          }
        });
    arrange(false);
    lists.getSelectionModel().addListSelectionListener(event -> sayMeasured());
    lists.getColumnModel().getSelectionModel().addListSelectionListener(event -> sayMeasured());
    lists.getModel().addTableModelListener(event -> sayMeasured());
    moved.setVisible(false);
    show(CameraForm.empty());
    dress();
    look(look);
  }

  /** Three columns where they fit; else what the second and third hold is behind tabs. */
  private void arrange(boolean wide) {
    if (getComponentCount() > 0 && wide == isWide) {
      return;
    }
    isWide = wide;
    removeAll();
    tabs.removeAll();
    add(head, "span, growx, wrap");
    add(said, "span, growx, wmin 0, wrap");
    add(formScroll, "grow, hmin 0, " + (wide ? "w 31%!" : "w 44%!"));
    tabs.addTab(Words.say("desk.lists.tab"), inspection);
    if (wide) {
      JPanel inTime = group(new MigLayout("insets 0, wrap 1, fill, gap 0 8", "[fill,grow]", ""));
      inTime.add(sheetTitle);
      inTime.add(sheet, "grow, pushy 65, wmin 0");
      inTime.add(log, "grow, pushy 35, wmin 0");
      add(tabs, "grow, push, hmin 0, wmin 0");
      add(new FormScroll(inTime), "grow, hmin 0, w 31%!");
    } else {
      tabs.addTab(Words.say("desk.sheet.title"), sheet);
      tabs.addTab(Words.say("desk.log.tab"), log);
      add(tabs, "grow, push, hmin 0, wmin 0");
    }
    tabs.addTab(Words.say("desk.photos.tab"), photos);
    tabs.addTab(Words.say("correction.title"), earlier);
    revalidate();
    repaint();
  }

  /** The camera on the bench, once it was named. */
  Optional<Camera> camera() {
    return camera;
  }

  @Override
  JComponent first() {
    return details.field(Detail.COMPLAINT);
  }

  /**
   * A camera that is known comes on the bench: its visit goes on, or a new one begins.
   *
   * @param then is done once it is there
   */
  void onCameraChosen(Camera known, Runnable then) {
    Instant now = clock.instant();
    Optional<Here> before = here();
    archive.ask(
        record -> {
          Optional<Visit> open =
              record.visits(known.id()).stream()
                  .filter(v -> v.handedBackAt().isEmpty())
                  .reduce((first, second) -> second);
          return new Here(
              known,
              open.orElseGet(() -> record.keep(Visit.begins(known.id(), "", now))),
              open.isEmpty());
        },
        here -> {
          isHere(here.camera(), here.visit());
          comes(Words.say("act.chosen", known.label()), before, here);
          then.run();
        });
  }

  /** A camera came on the bench, which can be undone: its visit is struck if it has just begun. */
  private void comes(String words, Optional<Here> before, Here here) {
    JobEdits.Turn turn =
        new JobEdits.Turn(here.isNew() ? Edit.struck(here.visit().id(), true) : Edit.NONE);
    onDone.accept(
        UndoStack.Act.of(
            words,
            () -> {
              archive.letsGo(here.visit().id());
              archive.ask(
                  turn::turned,
                  done ->
                      before.ifPresentOrElse(
                          was -> isHere(was.camera(), was.visit()), this::isNobodys));
            },
            () -> archive.ask(turn::turned, done -> goesOn(here.visit()))));
  }

  /** A visit goes on that was interrupted, or a bench comes that has none. */
  void onBench(Optional<Visit> here) {
    here.ifPresentOrElse(its -> goesOn(its, onBack), this::isNobodys);
  }

  private void goesOn(Visit here) {
    goesOn(here, onNamed);
  }

  private void goesOn(Visit here, Consumer<Camera> tells) {
    archive.ask(
        record ->
            record
                .camera(here.camera())
                .flatMap(its -> record.visit(here.id()).map(now -> new Here(its, now, false))),
        found -> found.ifPresent(its -> isHere(its.camera(), its.visit(), tells)));
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setForeground(look.ink());
    trouble.setBorder(null);
    trouble.setBackground(look.ground());
    trouble.setForeground(look.attention());
    measured.setBorder(null);
    measuredScroll.setBorder(null);
    measuredScroll.getViewport().setBackground(look.ground());
    measured.setBackground(look.ground());
    measured.setForeground(look.ink());
    moved.setBorder(null);
    moved.setBackground(look.ground());
    moved.setForeground(look.ink());
    sheet.look(look);
    question.look(look);
    photos.look(look);
    letters(said);
    earlier.look(look);
    letters(form);
    sheetTitle.setFont(Look.bold(Look.BODY));
    sheetTitle.setForeground(look.ink());
    title.setFont(Look.bold(Look.TITLE));
    keep.setFont(Look.bold(Look.BODY));
  }

  private static void letters(Container in) {
    for (Component each : in.getComponents()) {
      if (each instanceof JLabel || each instanceof JTextField || each instanceof JTextArea) {
        each.setFont(Look.letters(Look.BODY));
      }
    }
  }

  private void keep() {
    CameraForm.Result result = form().read(camera.map(Camera::id).orElse(Id.ofNew()));
    news = "";
    trouble.setText(result.trouble());
    if (result.camera().isEmpty()) {
      wrong(result.field()).requestFocusInWindow();
      return;
    }
    Camera typed = result.camera().get().withDetails(details.typed(Detail.OF_CAMERA));
    String number = job.getText().strip();
    Details ofVisit = details.typed(Detail.OF_VISIT);
    here()
        .ifPresentOrElse(
            was -> change(was, typed, was.visit().with(number, ofVisit)),
            () -> begin(typed, number, ofVisit));
  }

  private void sayOrHide() {
    trouble.setVisible(!trouble.getText().isEmpty());
    revalidate();
  }

  private JComponent wrong(String field) {
    return switch (field) {
      case "speeds" -> speeds;
      case "widest" -> widest;
      case "frame" -> frame;
      default -> curtains.named(field).orElse(label);
    };
  }

  @Override
  JButton byEnter() {
    return keep;
  }

  private void begin(Camera typed, String number, Details ofVisit) {
    Instant now = clock.instant();
    archive.ask(
        record -> {
          Camera kept = record.keep(typed);
          Visit begun = Visit.begins(kept.id(), number, now).with(number, ofVisit);
          return new Here(kept, record.keep(begun), true);
        },
        here -> {
          isHere(here.camera(), here.visit());
          comes(Words.say("act.named", typed.label()), Optional.empty(), here);
        });
  }

  private void change(Here was, Camera typed, Visit changed) {
    String words = JobActWords.fields(was.camera(), was.visit(), typed, changed);
    if (words.isEmpty()) {
      isHere(was.camera(), was.visit());
    } else {
      edits.does(words, Edit.of(typed).then(Edit.of(changed)), () -> goesOn(changed));
    }
  }

  /**
   * A camera and its visit.
   *
   * @param isNew whether the visit has just begun
   */
  private record Here(Camera camera, Visit visit, boolean isNew) {}

  private Optional<Here> here() {
    return camera.flatMap(known -> visit.map(its -> new Here(known, its, false)));
  }

  private void isHere(Camera known, Visit here) {
    isHere(known, here, onNamed);
  }

  private void isHere(Camera known, Visit here, Consumer<Camera> tells) {
    camera = Optional.of(known);
    visit = Optional.of(here);
    show(CameraForm.of(known));
    job.setText(here.jobNumber());
    details.show(known.details().and(here.details()));
    trouble.setText(
        here.details().of(Detail.FILM).equals(Detail.YES)
            ? Words.say("desk.camera.filmInside")
            : news);
    archive.ask(
        record ->
            Stream.concat(record.corrections(known).stream(), record.corrections(here).stream())
                .toList(),
        details::before);
    lists.ofCurtains(known.shutter().isCurtain(known.dial().name()));
    lists.show(new ChecklistText(here.intake(), here.handBack(), List.of()));
    archive.isFor(here);
    tells.accept(known);
    dress();
    comesUp();
  }

  private void another() {
    Optional<Here> before = here();
    news = "";
    isNobodys();
    before.ifPresent(
        was ->
            onDone.accept(
                UndoStack.Act.of(
                    Words.say("act.another"), () -> goesOn(was.visit()), this::isNobodys)));
  }

  private void isNobodys() {
    camera = Optional.empty();
    visit = Optional.empty();
    archive.isForNobody();
    onNobodys.run();
    show(CameraForm.empty());
    job.setText("");
    details.show(Details.NONE);
    details.before(List.of());
    lists.ofCurtains(false);
    lists.show(ChecklistText.EMPTY);
    log.show(List.of(), clock.getZone());
    sheet.show(Optional.empty(), StripSheet.EMPTY);
    photos.show(Optional.empty());
    earlier.show(List.of());
    moved.setVisible(false);
    trouble.setText(news);
    dress();
    label.requestFocusInWindow();
  }

  /** Asks once, with what is not ticked on the strip sheet. */
  private void handBack() {
    visit.ifPresent(
        here ->
            archive.ask(
                record -> SheetWords.atHandBack(record.stripSheet(here.id())),
                open -> {
                  String ask = Words.say("desk.camera.handBackAsk", form().label());
                  trouble.setText("");
                  question.ask(
                      open.map(each -> each + " " + ask).orElse(ask),
                      Words.say("desk.camera.handBackYes"),
                      () -> handBack(here, open),
                      another::requestFocusInWindow);
                }));
  }

  private void handBack(Visit here, Optional<String> open) {
    edits.does(
        Words.say("act.handedBack", form().label()),
        Edit.of(here.handedBack(clock.instant(), here.handBack())),
        this::showVisit);
    String said = Words.say("desk.camera.handedBack", form().label());
    says(open.map(each -> said + " " + each).orElse(said));
  }

  /** Reads the visit anew; what is typed in its fields stays. */
  private void showVisit() {
    visit.ifPresent(
        here ->
            archive.ask(
                record -> record.visit(here.id()),
                now -> {
                  visit = now;
                  now.ifPresent(its -> lists.show(its.intake(), its.handBack()));
                  dress();
                }));
  }

  @Override
  boolean says(String sentence) {
    news = sentence;
    trouble.setText(sentence);
    return true;
  }

  @Override
  void isLeft() {
    question.close();
  }

  private void sheetSays(SheetEntry entry) {
    question.close();
    edits.does(
        JobActWords.sheet(sheet.sheet(), entry), Edit.of(entry, clock.instant()), this::showSheet);
  }

  private void showSheet() {
    visit.ifPresent(
        here ->
            archive.ask(
                record -> record.stripSheet(here.id()),
                now -> sheet.show(visit.map(Visit::id), now)));
  }

  private void photosCame(String question) {
    photos.ask(question);
    photos.show(visit.map(Visit::id));
  }

  /** In one line, at the second visit. */
  private void showMoved() {
    visit.ifPresent(
        here ->
            archive.ask(
                record ->
                    record.visits(here.camera()).size() < 2
                        ? ""
                        : HistoryText.moved(
                            record.history(here.camera()).flatMap(all -> all.moved(here.id())),
                            clock.getZone()),
                said -> {
                  moved.say(said);
                  moved.setVisible(!said.isEmpty());
                }));
  }

  private void listed(Checklist intake, Checklist handBackList) {
    visit.ifPresent(
        was -> {
          Visit changed = was.with(intake, handBackList);
          visit = Optional.of(changed);
          edits.does(
              JobActWords.lists(was, intake, handBackList), Edit.of(changed), this::showVisit);
        });
  }

  private void logged(WorkLogPanel.Entry entry) {
    Instant now = clock.instant();
    visit.ifPresent(
        here ->
            edits.does(
                Words.say("act.log", entry.text()),
                Edit.of(
                    new WorkEntry(
                            Id.ofNew(),
                            here.id(),
                            now,
                            entry.kind(),
                            entry.text(),
                            entry.measured(),
                            Optional.empty(),
                            OptionalInt.empty())
                        .counted()),
                this::showLog));
  }

  private void logChanged(WorkEntry typed) {
    WorkEntry now = typed.counted();
    visit.ifPresent(
        here ->
            archive.ask(
                record -> record.workEntry(now.id()),
                was ->
                    was.filter(before -> !before.equals(now))
                        .ifPresent(
                            before ->
                                edits.does(
                                    JobActWords.log(before, now), Edit.of(now), this::showLog))));
  }

  /** Reads anew what the work at the bench has brought: the log, and what was measured. */
  @Override
  void comesUp() {
    showLog();
    showSheet();
    photos.show(visit.map(Visit::id));
    showEarlier();
    showMoved();
    visit.ifPresent(here -> archive.ask(record -> record.tried(here.id()), lists::measured));
  }

  private void sayMeasured() {
    Optional<String> noted = lists.note();
    note.setEnabled(noted.isPresent());
    if (!note.hasFocus() || noted.isEmpty()) {
      note.setText(noted.orElse(""));
    }
    String said = lists.said();
    measured.say(
        said.isEmpty()
            ? Words.say(visit.isPresent() ? "desk.lists.nothing" : "desk.lists.noVisit")
            : said);
    measured.setCaretPosition(0);
  }

  private void showLog() {
    visit.ifPresent(
        here ->
            archive.ask(
                record -> record.workLog(here.id()),
                all -> {
                  log.show(all, clock.getZone());
                  log.says(String.join(" ", WorkWords.counts(all)));
                }));
  }

  private void showEarlier() {
    visit.ifPresent(
        here ->
            archive.ask(
                record -> record.allCorrections(here),
                all -> earlier.show(CorrectionWords.lines(all, clock.getZone()))));
  }

  private CameraForm form() {
    return new CameraForm(
        label.getText(),
        serial.getText(),
        KINDS.get(Math.max(0, shutter.getSelectedIndex())),
        speeds.getText(),
        widest.getText(),
        frame.getText(),
        firing.getText(),
        curtains.typed());
  }

  private void show(CameraForm form) {
    label.setText(form.label());
    serial.setText(form.serialNumber());
    shutter.setSelectedIndex(KINDS.indexOf(form.shutter()));
    speeds.setText(form.speeds());
    speeds.setCaretPosition(0);
    widest.setText(form.widest());
    frame.setText(form.frame());
    firing.setText(form.firing());
    curtains.show(form.curtains());
    showCurtains();
  }

  private void dress() {
    title.setText(
        camera
            .map(known -> Words.say("desk.camera.title.of", known.label()))
            .orElseGet(() -> Words.say("desk.camera.title")));
    keep.setText(Words.say(camera.isPresent() ? "desk.camera.keepChanges" : "desk.camera.keep"));
    lists.setEnabled(visit.isPresent());
    log.enabled(visit.isPresent());
    String nameFirst = Words.say("desk.camera.nameFirst");
    usable(
        handBack,
        visit.filter(its -> its.handedBackAt().isEmpty()).isPresent(),
        visit.isPresent() ? Words.say("desk.camera.isBack") : nameFirst);
    usable(another, visit.isPresent(), nameFirst);
    sayMeasured();
  }

  /** Only a shutter that may have curtains is asked about them. */
  private void showCurtains() {
    boolean has = KINDS.get(Math.max(0, shutter.getSelectedIndex())).hasTwoCurtains();
    curtainNames.forEach(
        name -> {
          name.setVisible(has);
          name.getLabelFor().setVisible(has);
        });
    revalidate();
  }

  private void row(String key, JComponent field) {
    labelled(Words.say("desk.camera." + key), field);
  }

  private JLabel labelled(String words, JComponent field) {
    JLabel name = new JLabel(words);
    name.setLabelFor(field);
    field.getAccessibleContext().setAccessibleName(name.getText());
    form.add(name);
    form.add(field, "wmin 60" + (field instanceof JComboBox ? ", newline, span" : ""));
    return name;
  }
}
