package org.halflight.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.ListSelectionModel;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import javax.swing.table.AbstractTableModel;
import net.miginfocom.swing.MigLayout;
import org.halflight.chart.DataTable;
import org.halflight.desk.view.HistoryText;
import org.halflight.desk.view.UserAction;
import org.halflight.export.FiringTable;
import org.halflight.export.SpeedTable;
import org.halflight.files.FileKind;
import org.halflight.files.FileNames;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.files.SettingsFile;
import org.halflight.job.Camera;
import org.halflight.photo.PhotoInbox;
import org.halflight.record.CameraHistory;
import org.halflight.record.CameraLine;
import org.halflight.record.KeptFiring;
import org.halflight.record.RunHistory;
import org.halflight.report.HandOverPage;
import org.halflight.report.Logo;
import org.halflight.report.PageInput;
import org.halflight.report.PageStyle;
import org.halflight.report.RecordPage;
import org.halflight.report.Workshop;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.RunSummary;
import org.halflight.words.Words;

/** All cameras of the record with a search, and the history of the one that is chosen. */
final class CamerasPlace extends Place {
  private static final long serialVersionUID = 1L;

  private final transient Archive archive;
  private final transient Clock clock;
  private final transient Path settings;
  private final transient Path folder;
  private final transient String version;
  private final JLabel title = new JLabel(Words.say("desk.cameras.title"));
  private final JTextField search = new JTextField();
  private final JLabel searchLabel = new JLabel(Words.say("desk.cameras.search"));
  private final Lines lines = new Lines();
  private final JTable cameras = new JTable(lines);
  private final PictureView map;
  private final DataTableView drifts;
  private final DataTableView tried;
  private final JLabel said = new JLabel(" ");
  private final ReadOnlyText due = new ReadOnlyText("dryRunsDue", Words.say("desk.cameras.due"));
  private final ReadOnlyText moved =
      new ReadOnlyText("movedSince", Words.say("desk.history.moved"));
  private final JButton take = new JButton(Words.say("desk.cameras.take"));
  private final JButton export = new JButton(Words.say("desk.cameras.export"));
  private final JButton page = new JButton(Words.say("desk.cameras.page"));
  private final JCheckBox bench = new JCheckBox(Words.say("desk.cameras.bench"));
  private final JCheckBox sale = new JCheckBox(Words.say("desk.cameras.sale"));
  private final JToggleButton from = new JToggleButton(Words.say("desk.cameras.from"));
  private final WorkshopPanel workshop = new WorkshopPanel(this::keep);
  private transient List<CameraLine> all = List.of();
  private transient Optional<CameraHistory> history = Optional.empty();

  /**
   * @param onTake takes a camera that comes on the bench again
   */
  CamerasPlace(
      Look look,
      Archive archive,
      DeskSurroundings surroundings,
      Executor drawing,
      Consumer<Camera> onTake) {
    super(UserAction.TO_CAMERAS);
    setLayout(
        new MigLayout(
            "insets 20 32 14 28, gap 18 8, fill",
            "[fill,330::420][fill,grow]",
            "[][][fill,grow 100][fill,grow 10][][]"));
    this.archive = archive;
    clock = surroundings.clock();
    settings = surroundings.folder();
    folder = settings.resolve("tables");
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
    search
        .getDocument()
        .addDocumentListener(
            new DocumentListener() {
              @Override
              public void insertUpdate(DocumentEvent event) {
                filter();
              }

              @Override
              public void removeUpdate(DocumentEvent event) {
                filter();
              }

              @Override
              public void changedUpdate(DocumentEvent event) {
                filter();
              }
            });
    take.setName("takeCamera");
    export.setName("exportCamera");
    said.setName("exportSaid");
    take.addActionListener(event -> history.ifPresent(h -> onTake.accept(h.camera())));
    export.addActionListener(event -> export());
    page.setName("pageCamera");
    page.addActionListener(event -> page());
    add(title, "span, wrap 8");
    add(searchLabel, "split 2, grow 0");
    add(search, "growx, pushx");
    add(map, "spany 2, grow, hmin 200, wrap");
    JPanel list =
        group(new MigLayout("insets 0, wrap 1, fill, gap 0 6", "[fill,grow]", "[][fill,grow]"));
    list.add(due, "wmin 100, hidemode 3");
    list.add(new JScrollPane(cameras), "grow, push");
    add(list, "spany 2, grow, wrap");
    JPanel speeds =
        group(new MigLayout("insets 0, wrap 1, fill, gap 0 6", "[fill,grow]", "[fill,grow][]"));
    speeds.add(drifts, "grow, push");
    speeds.add(moved, "wmin 100, hidemode 3");
    add(speeds, "grow, h 100:322:, wrap");
    add(tried, "span, grow, h 122:150:, hidemode 3, wrap");
    bench.setName("pageBench");
    bench.setOpaque(false);
    sale.setName("pageSale");
    sale.setOpaque(false);
    from.setName("pageFrom");
    from.addActionListener(event -> workshop());
    workshop.setVisible(false);
    JPanel acts = group(new MigLayout("insets 0, gap 10 0"));
    for (JComponent act : List.of(take, export, page, bench, sale, from)) {
      acts.add(act);
    }
    add(acts, "span, wrap");
    add(workshop, "span, grow, hidemode 3, wrap");
    add(said, "span, wmin 0, wrap");
    show(Optional.empty());
    look(look);
  }

  @Override
  JTextField first() {
    return search;
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
        });
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(2));
    title.setForeground(look.ink());
    said.setForeground(look.quietInk());
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
    take.setEnabled(shown.isPresent());
    export.setEnabled(shown.isPresent());
    page.setEnabled(shown.flatMap(RecordPage::of).isPresent());
    map.show(shown.flatMap(h -> HistoryText.map(h, clock.getZone())));
    drifts.show(shown.map(h -> HistoryText.drifts(h, clock.getZone())));
    moved.say(shown.flatMap(h -> HistoryText.moved(h, clock.getZone())).orElse(""));
    moved.setVisible(!moved.getText().isEmpty());
    Optional<DataTable> also = shown.flatMap(h -> HistoryText.tried(h, clock.getZone()));
    tried.setVisible(also.isPresent());
    tried.show(also);
  }

  /** Where the line is too short, the rest can be read over it. */
  private void say(String sentence) {
    said.setText(sentence);
    said.setToolTipText(sentence);
  }

  private void workshop() {
    workshop.setVisible(from.isSelected());
    if (from.isSelected()) {
      archive.ask(
          record -> SettingsFile.read(settings),
          kept -> workshop.show(Workshop.of(kept), PhotoInbox.chosen(kept)));
    }
    revalidate();
  }

  private void keep(Workshop typed, String inbox) {
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
          return Words.say("desk.workshop.kept");
        },
        this::say);
  }

  private void page() {
    boolean forBench = bench.isSelected();
    boolean forSale = sale.isSelected();
    Path named = folder.resolve(history.map(h -> fileName(h.camera())).orElse("") + ".pdf");
    history
        .flatMap(RecordPage::of)
        .ifPresent(
            of ->
                archive.ask(
                    record -> {
                      PageInput input =
                          of.input(
                              record.workLog(of.visit().id()),
                              run -> record.firings(run).stream().map(KeptFiring::result).toList(),
                              clock.instant(),
                              clock.getZone(),
                              version);
                      Tables.folder(folder);
                      OutFile file = OutFiles.neverReplacing().free(named, FileKind.PAGE);
                      Workshop by = Workshop.of(SettingsFile.read(settings));
                      List<String> told =
                          HandOverPage.write(
                              input,
                              new PageStyle(
                                  by.paperIn(Locale.getDefault(Locale.Category.FORMAT)),
                                  forBench,
                                  forSale,
                                  by),
                              file);
                      return Words.say("desk.cameras.pageWritten", file.path())
                          + told.stream().map(each -> " " + each).collect(Collectors.joining());
                    },
                    this::say));
  }

  private void export() {
    history.ifPresent(
        h ->
            archive.ask(
                record -> {
                  List<KeptFiring> firings = new ArrayList<>();
                  for (RunHistory run : h.runs()) {
                    firings.addAll(record.firings(run.run().id()));
                  }
                  return Tables.write(
                      folder,
                      fileName(h.camera()),
                      FiringTable.ofKept(firings),
                      SpeedTable.of(
                          Source.of(firings.stream().map(KeptFiring::result).toList()),
                          h.runs().stream()
                              .map(run -> new RunSummary(run.run().asked().phase(), run.speeds()))
                              .toList()));
                },
                file -> said.setText(Words.say("desk.cameras.exported", file))));
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
