package org.halflight.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.ListSelectionModel;
import javax.swing.table.AbstractTableModel;
import net.miginfocom.swing.MigLayout;
import org.halflight.chart.DataTable;
import org.halflight.chart.PictureImage;
import org.halflight.desk.view.HistoryText;
import org.halflight.desk.view.UndoStack;
import org.halflight.desk.view.UserAction;
import org.halflight.export.FiringTable;
import org.halflight.export.SpeedTable;
import org.halflight.export.VisitTable;
import org.halflight.files.FileKind;
import org.halflight.files.FileNames;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.files.SettingsFile;
import org.halflight.job.Camera;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.photo.PhotoInbox;
import org.halflight.record.CameraHistory;
import org.halflight.record.CameraLine;
import org.halflight.record.KeptFiring;
import org.halflight.report.HandOverPage;
import org.halflight.report.Logo;
import org.halflight.report.PageInput;
import org.halflight.report.PageStyle;
import org.halflight.report.RecordPage;
import org.halflight.report.Workshop;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.RunSummary;
import org.halflight.words.Words;
import org.halflight.workflow.RunForm;

/** All cameras of the record with a search, and the history of the one that is chosen. */
final class CamerasPlace extends Place {
  private static final long serialVersionUID = 1L;

  private static final String PAGES = "pages";
  private static final String TABLES = "tables";
  private static final String PICTURES = "pictures";
  private static final String BACKUPS = "backups";

  /** A saved picture, in pixels before scaling: as wide as a page at 150 dots an inch. */
  private static final int PICTURE_WIDTH = 620;

  private static final int PICTURE_HEIGHT = 400;
  private static final double PICTURE_SCALE = 2;

  private final transient Archive archive;
  private final transient Consumer<UndoStack.Act> onDone;
  private final transient Consumer<Path> onPage;
  private final transient Clock clock;
  private final transient Path settings;
  private final transient String version;
  private final JLabel title = new JLabel(Words.say("desk.cameras.title"));
  private final JTextField search = new JTextField();
  private final JLabel searchLabel = new JLabel(Words.say("desk.cameras.search"));
  private final Lines lines = new Lines();
  private final JTable cameras = new JTable(lines);
  private final PictureView map;
  private final DataTableView drifts;
  private final DataTableView tried;
  private final FilesPanel files;
  private final ReadOnlyText due = new ReadOnlyText("dryRunsDue", Words.say("desk.cameras.due"));
  private final ReadOnlyText moved =
      new ReadOnlyText("movedSince", Words.say("desk.history.moved"));
  private final JButton dry = new JButton();
  private final JButton take = new JButton(Words.say("desk.cameras.take"));
  private final JButton export = new JButton(Words.say("desk.cameras.export"));
  private final JButton page = new JButton(Words.say("desk.cameras.page"));
  private final JButton picture = new JButton(Words.say("desk.cameras.picture"));
  private final JButton backUp = new JButton(Words.say("desk.cameras.backUp"));
  private final JCheckBox bench = new JCheckBox(Words.say("desk.cameras.bench"));
  private final JCheckBox sale = new JCheckBox(Words.say("desk.cameras.sale"));
  private final WorkshopPanel workshop = new WorkshopPanel(this::keep);
  private final Fold from;
  private transient List<CameraLine> all = List.of();
  private transient Optional<CameraHistory> history = Optional.empty();

  /**
   * @param onTake takes a camera that comes on the bench again
   * @param onDry takes one that comes for its dry run, with the form of that run
   * @param onPage hears of a page that was written; from any thread
   * @param onDone takes what was done here, to be undone
   */
  CamerasPlace(
      Look look,
      Archive archive,
      DeskSurroundings surroundings,
      Executor drawing,
      Consumer<Camera> onTake,
      BiConsumer<Camera, RunForm> onDry,
      Consumer<Path> onPage,
      Consumer<UndoStack.Act> onDone) {
    super(UserAction.TO_CAMERAS);
    setLayout(
        new MigLayout(
            Look.EDGES + ", " + Look.GAPS + ", fill, hidemode 3",
            "[fill,30%::35%][fill,grow]",
            "[][fill,grow][][]"));
    this.archive = archive;
    this.onDone = onDone;
    this.onPage = onPage;
    clock = surroundings.clock();
    settings = surroundings.folder();
    files =
        new FilesPanel(
            archive,
            settings,
            settings.resolve("tables"),
            List.of(PAGES, TABLES, PICTURES, BACKUPS));
    version = surroundings.version();
    map =
        new PictureView(
            Words.say("desk.map.title"),
            Words.say("desk.history.empty"),
            look,
            drawing,
            surroundings.nanos());
    drifts = new DataTableView(Words.say("desk.history.name"));
    tried = new DataTableView(Words.say("desk.history.tried"));
    search.setName("search");
    searchLabel.setLabelFor(search);
    search.getAccessibleContext().setAccessibleName(searchLabel.getText());
    cameras.setName("cameras");
    cameras.getAccessibleContext().setAccessibleName(Words.say("desk.cameras.title"));
    cameras.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    cameras.getTableHeader().setReorderingAllowed(false);
    Look.leaveByTab(cameras);
    cameras.getColumnModel().getColumn(0).setPreferredWidth(Look.px(220));
    cameras.getColumnModel().getColumn(1).setPreferredWidth(Look.px(70));
    cameras.getColumnModel().getColumn(2).setPreferredWidth(Look.px(100));
    cameras
        .getSelectionModel()
        .addListSelectionListener(
            event -> {
              if (!event.getValueIsAdjusting()) {
                choose();
              }
            });
    search.getDocument().addDocumentListener(new Typed(this::filter));
    take.setName("takeCamera");
    dry.setName("dryRun");
    dry.addActionListener(event -> dueNow().ifPresent(its -> fireDry(its.camera(), onDry)));
    export.setName("exportCamera");
    take.addActionListener(event -> history.ifPresent(h -> onTake.accept(h.camera())));
    export.addActionListener(event -> export());
    page.setName("pageCamera");
    page.addActionListener(event -> page());
    picture.setName("pictureCamera");
    picture.addActionListener(event -> picture());
    backUp.setName("backUp");
    backUp.addActionListener(event -> backUp());
    does(page, Words.say("desk.cameras.pageWhat"));
    does(export, Words.say("desk.cameras.exportWhat"));
    does(picture, Words.say("desk.cameras.pictureWhat"));
    does(backUp, Words.say("desk.cameras.backUpWhat"));
    does(take, Words.say("desk.cameras.takeWhat"));
    bench.setName("pageBench");
    sale.setName("pageSale");
    bench.addItemListener(event -> sayFrom());
    sale.addItemListener(event -> sayFrom());
    JPanel style = group(new MigLayout("insets 0, wrap 1, gap 8 4, fillx", "[fill,grow]"));
    JPanel boxes = group(new MigLayout("insets 0, gap 16 0"));
    boxes.add(bench);
    boxes.add(sale);
    style.add(boxes);
    style.add(workshop);
    from = new Fold("pageFrom", Words.say("desk.cameras.from"), style);
    add(new PlaceHead(title, List.of(take, page, export, picture, backUp)), "span, growx, wrap");
    add(listed(), "grow");
    add(shown(), "grow, push, wrap");
    add(from, "span, growx, wrap");
    add(files, "span, growx");
    from.onOpen(this::readWorkshop);
    readWorkshop();
    show(Optional.empty());
    look(look);
  }

  private JPanel listed() {
    JPanel list =
        group(new MigLayout("insets 0, wrap 1, fill, gap 0 8, hidemode 3", "[fill,grow]", ""));
    list.add(searchLabel, "split 2, grow 0");
    list.add(search, "growx, pushx, gapleft 8, wmin 60");
    list.add(due, "wmin 100");
    list.add(dry, "grow 0, hidemode 3");
    list.add(new JScrollPane(cameras), "grow, pushy, wmin 100");
    return list;
  }

  /** The picture, and below it its words: what the runs came to, and whatever else was checked. */
  private JPanel shown() {
    JPanel shown =
        group(new MigLayout("insets 0, wrap 1, fill, gap 0 8, hidemode 3", "[fill,grow]", ""));
    shown.add(map, "grow, pushy 60, hmin 120");
    shown.add(drifts, "grow, pushy 30, h 90:280:340");
    shown.add(moved, "wmin 100");
    shown.add(tried, "grow, pushy 10, h 90:130:160");
    return shown;
  }

  @Override
  boolean says(String sentence) {
    files.say(sentence);
    return true;
  }

  @Override
  JTextField first() {
    return search;
  }

  @Override
  JButton byEnter() {
    return take;
  }

  @Override
  void asTables(boolean on) {
    map.asTable(on);
  }

  PictureView map() {
    return map;
  }

  DataTableView drifts() {
    return drifts;
  }

  /** Reads the list anew, and the history of the camera that is chosen. */
  @Override
  void comesUp() {
    archive.ask(
        record -> record.cameras(),
        found -> {
          all = found;
          due.say(HistoryText.due(found, clock.instant(), clock.getZone()));
          due.setVisible(!due.getText().isEmpty());
          filter();
          showDue();
        });
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(Look.TITLE));
    title.setForeground(look.ink());
    from.look(look);
    files.look(look);
    for (ReadOnlyText each : List.of(due, moved)) {
      each.setBorder(null);
      each.setBackground(look.ground());
      each.setForeground(each == due ? look.attention() : look.ink());
    }
    workshop.look(look);
    map.look(look);
    drifts.look(look);
    tried.look(look);
  }

  private void filter() {
    Optional<Camera> chosen = history.map(CameraHistory::camera);
    List<CameraLine> shown = all.stream().filter(line -> line.holds(search.getText())).toList();
    lines.show(shown);
    int row =
        chosen
            .map(c -> shown.stream().map(line -> line.camera().id()).toList().indexOf(c.id()))
            .orElse(-1);
    if (row < 0 && !shown.isEmpty()) {
      row = 0;
    }
    if (row >= 0) {
      cameras.changeSelection(row, 0, false, false);
    } else {
      show(Optional.empty());
    }
  }

  /** The camera that is selected, where it is due for its dry run; else the one longest due. */
  private Optional<CameraLine> dueNow() {
    Optional<Camera> chosen = history.map(CameraHistory::camera);
    List<CameraLine> due =
        all.stream()
            .filter(line -> line.dryRun().isPresent())
            .sorted(Comparator.comparing(line -> line.dryRun().orElseThrow().firedWetAt()))
            .toList();
    return due.stream()
        .filter(line -> chosen.map(c -> c.id().equals(line.camera().id())).orElse(false))
        .findFirst()
        .or(() -> due.stream().findFirst());
  }

  private void showDue() {
    dry.setVisible(dueNow().isPresent());
    dueNow()
        .flatMap(CameraLine::dryRun)
        .ifPresent(its -> dry.setText(Words.say("desk.cameras.dry", its.name())));
  }

  private void fireDry(Camera camera, BiConsumer<Camera, RunForm> onDry) {
    archive.ask(
        record ->
            record.visits(camera.id()).stream()
                .flatMap(visit -> record.runs(visit.id()).stream())
                .filter(run -> run.asked().phase() == Phase.AS_LEFT)
                .reduce((earlier, later) -> later),
        wet ->
            wet.ifPresent(run -> onDry.accept(camera, RunForm.dry(run.asked(), camera.label()))));
  }

  private void choose() {
    int row = cameras.getSelectedRow();
    if (row < 0 || row >= lines.getRowCount()) {
      return;
    }
    Camera camera = lines.line(row).camera();
    archive.ask(record -> record.history(camera.id()), this::show);
  }

  private void show(Optional<CameraHistory> shown) {
    history = shown;
    showDue();
    String choose = Words.say("desk.cameras.chooseFirst");
    usable(take, shown.isPresent(), choose);
    usable(export, shown.isPresent(), choose);
    boolean hasRuns = shown.flatMap(RecordPage::of).isPresent();
    usable(page, hasRuns, shown.isPresent() ? Words.say("desk.cameras.noRuns") : choose);
    usable(
        picture,
        shown.flatMap(h -> HistoryText.map(h, clock.getZone())).isPresent(),
        shown.isPresent() ? Words.say("desk.cameras.noRuns") : choose);
    map.whenEmpty(
        Words.say(
            all.isEmpty()
                ? "desk.cameras.empty"
                : shown.isPresent() ? "desk.cameras.noRuns" : "desk.history.empty"));
    drifts.setVisible(hasRuns);
    map.show(Optional.of(HistoryText.picture(shown, !all.isEmpty(), clock.getZone())));
    drifts.show(shown.map(h -> HistoryText.drifts(h, clock.getZone())));
    moved.say(shown.flatMap(h -> HistoryText.moved(h, clock.getZone())).orElse(""));
    moved.setVisible(!moved.getText().isEmpty());
    Optional<DataTable> also = shown.flatMap(h -> HistoryText.tried(h, clock.getZone()));
    tried.setVisible(also.isPresent());
    tried.show(also);
  }

  private void readWorkshop() {
    archive.ask(record -> SettingsFile.read(settings), this::shows);
  }

  private void shows(Properties kept) {
    workshop.show(Workshop.of(kept), PhotoInbox.chosen(kept));
    sayFrom();
  }

  private void sayFrom() {
    from.say(
        HistoryText.page(
            workshop.typed().name(), workshop.paper(), bench.isSelected(), sale.isSelected()));
  }

  private void keep(Workshop typed, String inbox) {
    archive.ask(
        record -> SettingsFile.read(settings),
        kept -> {
          Workshop before = Workshop.of(kept);
          String earlier = PhotoInbox.chosen(kept);
          keep(
              typed,
              inbox,
              () -> {
                files.say(Words.say("desk.workshop.kept"));
                onDone.accept(
                    UndoStack.Act.of(
                        Words.say("act.workshop"),
                        () -> keep(before, earlier, this::readWorkshop),
                        () -> keep(typed, inbox, this::readWorkshop)));
              });
        });
  }

  private void keep(Workshop typed, String inbox, Runnable then) {
    archive.ask(
        record -> {
          try {
            if (!typed.logo().isEmpty()) {
              Logo.read(typed.logo());
            }
            String checked = PhotoInbox.checked(inbox);
            SettingsFile.change(
                settings,
                kept -> {
                  typed.keepIn(kept);
                  PhotoInbox.choose(kept, checked);
                });
            archive.inbox(checked);
          } catch (Trouble noPicture) {
            return noPicture.getMessage();
          } catch (IOException notKept) {
            return Words.say("workshop.notKept", settings);
          }
          return "";
        },
        trouble -> {
          if (trouble.isEmpty()) {
            then.run();
          } else {
            files.say(trouble);
          }
          sayFrom();
        });
  }

  private void page() {
    boolean forBench = bench.isSelected();
    boolean forSale = sale.isSelected();
    String name =
        history.map(h -> forSale ? saleName(h.camera()) : fileName(h.camera())).orElse("") + ".pdf";
    history
        .flatMap(RecordPage::of)
        .ifPresent(
            of ->
                files.write(
                    PAGES,
                    (folder, record, progress) -> {
                      PageInput input =
                          of.input(
                              record.workLog(of.visit().id()),
                              record.stripSheet(of.visit().id()),
                              run -> {
                                progress.at(Words.say("desk.files.readingPage"), 0, 0);
                                return record.firings(run).stream()
                                    .map(KeptFiring::result)
                                    .toList();
                              },
                              clock.instant(),
                              clock.getZone(),
                              version);
                      OutFile file =
                          OutFiles.neverReplacing().free(folder.resolve(name), FileKind.PAGE);
                      Workshop by = Workshop.of(SettingsFile.read(settings));
                      progress.at(Words.say("desk.files.drawing"), 0, 0);
                      List<String> told =
                          HandOverPage.write(
                              input,
                              new PageStyle(
                                  by.paperIn(Locale.getDefault(Locale.Category.FORMAT)),
                                  forBench,
                                  forSale,
                                  by),
                              file);
                      onPage.accept(file.path());
                      return new FilesPanel.Written(
                          file.path(),
                          Words.say("desk.cameras.pageWritten", file.path())
                              + told.stream()
                                  .map(each -> " " + each)
                                  .collect(Collectors.joining()));
                    }));
  }

  private void export() {
    history.ifPresent(
        h ->
            files.write(
                TABLES,
                (folder, record, progress) -> {
                  List<KeptFiring> firings = new ArrayList<>();
                  for (int i = 0; i < h.runs().size(); i++) {
                    progress.at(
                        Words.say("desk.files.reading", i + 1, h.runs().size()),
                        i,
                        h.runs().size());
                    firings.addAll(record.firings(h.runs().get(i).run().id()));
                  }
                  Path file =
                      Tables.write(
                          folder,
                          fileName(h.camera()),
                          FiringTable.ofKept(firings),
                          SpeedTable.of(
                              Source.of(firings.stream().map(KeptFiring::result).toList()),
                              h.runs().stream()
                                  .map(
                                      run ->
                                          new RunSummary(run.run().asked().phase(), run.speeds()))
                                  .toList()),
                          VisitTable.of(record, List.of(h.camera())));
                  return new FilesPanel.Written(file, Words.say("desk.cameras.exported", file));
                }));
  }

  private void picture() {
    history
        .flatMap(h -> HistoryText.map(h, clock.getZone()).map(drawn -> Map.entry(h, drawn)))
        .ifPresent(
            of ->
                files.write(
                    PICTURES,
                    (folder, record, progress) -> {
                      OutFile file =
                          OutFiles.neverReplacing()
                              .free(
                                  folder.resolve(fileName(of.getKey().camera()) + ".png"),
                                  FileKind.PICTURE);
                      file.write(
                          PictureImage.png(
                              of.getValue(), PICTURE_WIDTH, PICTURE_HEIGHT, PICTURE_SCALE));
                      return new FilesPanel.Written(
                          file.path(), Words.say("desk.cameras.pictureWritten", file.path()));
                    }));
  }

  private void backUp() {
    String name = "halflight-" + LocalDate.ofInstant(clock.instant(), clock.getZone()) + ".sqlite";
    files.write(
        BACKUPS,
        (folder, record, progress) -> {
          progress.at(Words.say("desk.files.copying"), 0, 0);
          Path file = OutFiles.free(folder.resolve(name));
          record.backUp(file);
          return new FilesPanel.Written(file, Words.say("desk.cameras.backedUp", file));
        });
  }

  /** Of a page for a stranger: the label may be the owner's name. */
  private static String saleName(Camera camera) {
    Details its = camera.details();
    return FileNames.plain(its.of(Detail.MAKER) + " " + its.of(Detail.MODEL), "camera")
        + "-"
        + camera.id().value()
        + "-sale";
  }

  private static String fileName(Camera camera) {
    return FileNames.plain(camera.label(), "camera") + "-" + camera.id().value();
  }

  private final class Lines extends AbstractTableModel {
    private static final long serialVersionUID = 1L;

    private transient List<CameraLine> shown = List.of();

    void show(List<CameraLine> lines) {
      shown = List.copyOf(lines);
      fireTableDataChanged();
    }

    CameraLine line(int row) {
      return shown.get(row);
    }

    @Override
    public int getRowCount() {
      return shown.size();
    }

    @Override
    public int getColumnCount() {
      return 3;
    }

    @Override
    public String getColumnName(int column) {
      return Words.say("desk.cameras.column" + column);
    }

    @Override
    public Object getValueAt(int row, int column) {
      CameraLine line = shown.get(row);
      return switch (column) {
        case 0 ->
            line.sources().contains(Source.PRACTICE)
                ? Words.say("desk.cameras.practice", line.camera().label())
                : line.camera().label();
        case 1 -> line.jobNumbers().stream().collect(Collectors.joining(", "));
        default -> line.lastReceivedAt().map(at -> HistoryText.day(at, clock.getZone())).orElse("");
      };
    }
  }
}
