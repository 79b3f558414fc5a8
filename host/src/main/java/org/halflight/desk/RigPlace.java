package org.halflight.desk;

import java.awt.CardLayout;
import java.io.File;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.ListSelectionModel;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import org.halflight.calibration.PrintedDisc;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.DiscForm;
import org.halflight.desk.view.RigView;
import org.halflight.desk.view.UserAction;
import org.halflight.files.FileNames;
import org.halflight.files.OutFolder;
import org.halflight.trouble.Trouble;
import org.halflight.upload.FirmwareImages;
import org.halflight.words.Words;
import org.halflight.workflow.ShippedFirmware;
import org.jspecify.annotations.Nullable;

/** The rig itself: what its profile says, the rig check, the calibration, and their pictures. */
final class RigPlace extends Place {
  private static final long serialVersionUID = 1L;

  private static final List<String> TABS = List.of("check", "fit", "residuals", "disc");
  private static final String PROFILES = "profiles";
  private static final String USUAL_FILE = "my-rig.profile";
  private static final String PORTS = "ports";
  private static final List<Integer> CLOCK_SECONDS = List.of(120, 60, 0);

  private final transient Consumer<Consumer<BenchActions>> bench;
  private final JLabel title = new JLabel(Words.say("desk.rig.title"));
  private final ReadOnlyText standing =
      new ReadOnlyText("rigStanding", Words.say("desk.rig.standingName"));
  private final ReadOnlyText clocks =
      new ReadOnlyText("rigClocks", Words.say("desk.rig.clockName"));
  private final ReadOnlyText sentence = new ReadOnlyText("rigSentence", Words.say("desk.rig.name"));
  private final ReadOnlyText profile =
      new ReadOnlyText("rigProfile", Words.say("desk.rig.profileName"));
  private final JProgressBar progress = new JProgressBar(0, 100);
  private final JButton check = new JButton(Words.say("desk.rig.check"));
  private final JButton calibrate = new JButton(Words.say("desk.rig.calibrate"));
  private final JButton disc = new JButton(Words.say("desk.rig.disc"));
  private final JButton firstLight = new JButton(Words.say("desk.first.title"));
  private final JButton upload = new JButton(Words.say("desk.rig.upload"));
  private final JComboBox<String> wired = new JComboBox<>();
  private final transient List<String> rigs =
      ShippedFirmware.ifWhole().map(FirmwareImages::rigs).orElse(List.of());
  private final JTextField cut = new JTextField(String.valueOf(PrintedDisc.EDGE_MILLIMETRES), 4);
  private final JTextField speed = new JTextField(6);
  private final JButton stop = new JButton(Words.say("desk.rig.stop"));
  private final JComboBox<String> clock = new JComboBox<>();
  private final JTextField file = new JTextField();
  private final JButton write = new JButton(Words.say("desk.rig.write"));
  private final JButton take = new JButton(Words.say("desk.rig.take"));
  private final JToggleButton tables = new JToggleButton(Words.say("desk.rig.tables"));
  private final JList<String> list = new JList<>();
  private final CardLayout cards = new CardLayout();
  private final JPanel shownPicture = new JPanel(cards);
  private final JButton choose = new JButton(Words.say("desk.files.where"));
  private final JButton show = new JButton(Words.say("desk.files.show"));
  private final List<PictureView> pictures;
  private final transient Consumer<Path> keeps;
  private final PortsPanel ports;
  private boolean wantsPorts;
  private JScrollPane scroll;
  private transient RigView shown = RigView.NOTHING;

  /**
   * @param bench does something on the thread of the bench
   * @param toFirstLight goes to the place of first light
   */
  RigPlace(
      Look look,
      Executor drawing,
      DeskSurroundings surroundings,
      Consumer<Consumer<BenchActions>> bench,
      Runnable toFirstLight) {
    super(UserAction.TO_RIG);
    setLayout(
        new MigLayout(
            Look.EDGES + ", " + Look.GAPS + ", fill, hidemode 3",
            "[fill,35%::40%][fill,grow]",
            "[][fill,grow]"));
    this.bench = bench;
    pictures =
        TABS.stream()
            .map(
                name ->
                    new PictureView(
                        Words.say("desk.rig.tab." + name),
                        Words.say(
                            switch (name) {
                              case "check" -> "desk.rig.noCheck";
                              case "fit" -> "desk.rig.noFit";
                              case "disc" -> "desk.rig.noDisc";
                              default -> "desk.rig.noResiduals";
                            }),
                        look,
                        drawing,
                        surroundings.nanos()))
            .toList();
    for (int i = 0; i < pictures.size(); i++) {
      shownPicture.add(pictures.get(i), TABS.get(i));
    }
    shownPicture.setOpaque(false);
    ports = new PortsPanel(look, bench);
    shownPicture.add(ports, PORTS);
    list.setListData(entries().map(tab -> Words.say("desk.rig.tab." + tab)).toArray(String[]::new));
    list.setName("rigList");
    list.getAccessibleContext().setAccessibleName(Words.say("desk.rig.list"));
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setVisibleRowCount(TABS.size() + 1);
    list.setSelectedIndex(0);
    list.addListSelectionListener(
        event -> cards.show(shownPicture, entries().skip(at()).findFirst().orElseThrow()));
    for (int seconds : CLOCK_SECONDS) {
      clock.addItem(Words.say("desk.rig.clock." + seconds));
    }
    wired.addItem(Words.say("desk.rig.upload.same"));
    rigs.forEach(rig -> wired.addItem(Words.say("desk.rig.upload.kind", rig)));
    progress.getAccessibleContext().setAccessibleName(Words.say("desk.rig.progress"));
    Path settings = surroundings.folder();
    file.setText(settings.resolve(USUAL_FILE).toString());
    drawing.execute(
        () -> {
          Path folder = OutFolder.of(settings, PROFILES, settings).path();
          SwingUtilities.invokeLater(() -> file.setText(folder.resolve(USUAL_FILE).toString()));
        });
    keeps =
        path ->
            Optional.ofNullable(path.getParent())
                .ifPresent(folder -> drawing.execute(() -> keep(settings, folder)));
    named();
    acts();
    firstLight.addActionListener(event -> toFirstLight.run());
    add(
        new PlaceHead(title, List.of(firstLight, check, calibrate, disc, upload, stop, tables)),
        "span, growx, wrap");
    add(new FormScroll(left()), "grow, hmin 0");
    add(right(), "grow, push, hmin 0");
    look(look);
  }

  /** The pictures and, last, the ports. */
  private static Stream<String> entries() {
    return Stream.concat(TABS.stream(), Stream.of(PORTS));
  }

  /** Which picture is chosen. */
  private int at() {
    return Math.max(0, list.getSelectedIndex());
  }

  private JPanel left() {
    JPanel left =
        group(new MigLayout("insets 0, wrap 1, gap 8 8, fillx, hidemode 3", "[fill,grow]", ""));
    left.add(standing, "wmin 100");
    left.add(clocks, "wmin 100");
    left.add(sentence, "wmin 100");
    left.add(progress, "h 10!");
    left.add(list, "gapy 8 8");
    JPanel fields = group(new MigLayout("insets 0, wrap 2, gap 8 8, fillx", "[][fill,grow]"));
    row(fields, "desk.rig.clock", clock);
    row(fields, "desk.rig.disc.cut", cut);
    row(fields, "desk.rig.disc.rpm", speed);
    row(fields, "desk.rig.upload.which", wired);
    left.add(fields);
    JLabel fileLabel = new JLabel(Words.say("desk.rig.file"));
    fileLabel.setLabelFor(file);
    left.add(fileLabel);
    left.add(file, "wmin 100");
    JPanel files = group(new MigLayout("insets 0, gap 8, wrap 2"));
    for (JButton each : List.of(write, take, choose, show)) {
      files.add(each, "sg");
    }
    left.add(files);
    return left;
  }

  /** The picture, and what the profile says below it. */
  private JPanel right() {
    JPanel right = group(new MigLayout("insets 0, wrap 1, gap 0 8, fill", "[fill,grow]", ""));
    right.add(shownPicture, "grow, pushy 70, hmin 120");
    scroll = new JScrollPane(profile);
    right.add(scroll, "grow, pushy 30, wmin 100, h 60:160:");
    return right;
  }

  private static void row(JPanel in, String key, JComponent field) {
    JLabel label = new JLabel(Words.say(key));
    label.setLabelFor(field);
    in.add(label);
    in.add(field, "wmin 60");
  }

  private void named() {
    check.setName("rigCheck");
    calibrate.setName("rigCalibrate");
    disc.setName("rigDisc");
    firstLight.setName("rigFirstLight");
    upload.setName("rigUpload");
    wired.setName("rigWired");
    wired.getAccessibleContext().setAccessibleName(Words.say("desk.rig.upload.which"));
    cut.setName("rigDiscCut");
    speed.setName("rigDiscSpeed");
    stop.setName("rigStop");
    clock.setName("rigClock");
    file.setName("rigFile");
    write.setName("rigWrite");
    take.setName("rigTake");
    choose.setName("rigChoose");
    show.setName("rigShow");
    tables.setName("rigTables");
    clock.getAccessibleContext().setAccessibleName(Words.say("desk.rig.clock"));
    cut.getAccessibleContext().setAccessibleName(Words.say("desk.rig.disc.cut"));
    speed.getAccessibleContext().setAccessibleName(Words.say("desk.rig.disc.rpm"));
    file.getAccessibleContext().setAccessibleName(Words.say("desk.rig.file"));
  }

  private void acts() {
    check.addActionListener(event -> bench.accept(hands -> hands.rig().check()));
    calibrate.addActionListener(
        event -> {
          int seconds = CLOCK_SECONDS.get(Math.max(0, clock.getSelectedIndex()));
          bench.accept(hands -> hands.rig().calibrate(seconds));
        });
    disc.addActionListener(
        event -> {
          DiscForm form = new DiscForm(cut.getText(), speed.getText());
          bench.accept(hands -> hands.rig().disc(form));
        });
    upload.addActionListener(
        event -> {
          int index = wired.getSelectedIndex();
          Optional<String> rig = index > 0 ? Optional.of(rigs.get(index - 1)) : Optional.empty();
          bench.accept(hands -> hands.rig().upload(rig));
        });
    stop.addActionListener(event -> bench.accept(hands -> hands.rig().stop()));
    choose.addActionListener(event -> choose());
    show.addActionListener(
        event -> withPath(path -> DesktopFiles.showInFolder(path, sentence::say)));
    speed.addActionListener(event -> disc.doClick());
    cut.addActionListener(event -> disc.doClick());
    write.addActionListener(event -> withFile((hands, path) -> hands.rig().write(path)));
    take.addActionListener(event -> withFile((hands, path) -> hands.rig().importProfile(path)));
    tables.addActionListener(
        event -> pictures.forEach(picture -> picture.asTable(tables.isSelected())));
  }

  private void withFile(BiConsumer<BenchActions, Path> doing) {
    withPath(path -> bench.accept(hands -> doing.accept(hands, path)));
  }

  /** The file that is named; a name that some system refuses is said. */
  private void withPath(Consumer<Path> doing) {
    try {
      Path path = Path.of(file.getText().strip());
      if (path.getFileName() != null) {
        FileNames.check(path.getFileName().toString());
      }
      doing.accept(path);
    } catch (InvalidPathException noPath) {
      sentence.say(Words.say("profile.unreadable", file.getText(), noPath.getReason()));
      file.requestFocusInWindow();
    } catch (Trouble refused) {
      sentence.say(refused.getMessage());
      file.requestFocusInWindow();
    }
  }

  /** The folder is proposed again next time. */
  private void keep(Path settings, Path folder) {
    try {
      OutFolder.keep(settings, PROFILES, folder);
    } catch (Trouble notKept) {
      SwingUtilities.invokeLater(() -> sentence.say(notKept.getMessage()));
    }
  }

  private void choose() {
    JFileChooser chooser = new JFileChooser(file.getText());
    chooser.setDialogTitle(Words.say("desk.rig.file"));
    chooser.setSelectedFile(new File(file.getText()));
    if (chooser.showDialog(this, Words.say("desk.rig.file.choose"))
        == JFileChooser.APPROVE_OPTION) {
      file.setText(chooser.getSelectedFile().getPath());
      keeps.accept(chooser.getSelectedFile().toPath());
    }
  }

  @Override
  void show(BenchView view) {
    boolean isNew =
        view.rig().check().isEmpty() && view.rig().fit().isEmpty() && view.rig().disc().isEmpty();
    wantsPorts =
        !view.link().isUp() || view.link().ports().offer() || (view.link().isPractice() && isNew);
    show(view.rig());
    ports.show(view);
  }

  private void show(RigView view) {
    boolean turned = view.isUnderWay() != shown.isUnderWay() || view.isAsking() != shown.isAsking();
    standing.say(Words.say("desk.rig.of", view.heading(), view.standing()));
    clocks.say(String.join(" ", view.clock()));
    clocks.setVisible(!view.clock().isEmpty());
    sentence.say(view.sentence());
    profile.say(String.join("\n", view.profile()));
    progress.setValue((int) Math.round(100 * view.progress()));
    progress.setVisible(view.isUnderWay());
    String busy = Words.say("desk.rig.busy");
    usable(
        check,
        !view.isUnderWay() && view.hasProfile(),
        view.isUnderWay() ? busy : Words.say("desk.rig.noProfile"));
    usable(calibrate, !view.isUnderWay(), busy);
    disc.setText(Words.say(view.isAsking() ? "desk.rig.disc.done" : "desk.rig.disc"));
    usable(disc, view.isAsking() || !view.isUnderWay(), busy);
    usable(upload, !view.isUnderWay(), busy);
    usable(wired, !view.isUnderWay(), busy);
    usable(cut, !view.isUnderWay(), busy);
    usable(speed, !view.isUnderWay(), busy);
    usable(stop, view.isUnderWay(), Words.say("desk.rig.nothingToStop"));
    usable(write, view.hasProfile(), Words.say("desk.rig.noProfile"));
    if (!shown.check().equals(view.check()) && view.check().isPresent()) {
      list.setSelectedIndex(0);
    } else if (!shown.fit().equals(view.fit())) {
      list.setSelectedIndex(1);
    } else if (!shown.disc().equals(view.disc())) {
      list.setSelectedIndex(3);
    }
    shown = view;
    if (isShowing() && turned) {
      first().requestFocusInWindow();
      enterIsFor(byEnter());
    }
    pictures.get(0).show(view.check());
    pictures.get(1).show(view.fit());
    pictures.get(2).show(view.residuals());
    pictures.get(3).show(view.disc());
  }

  /** Without a rig that was worked on the ports come first; they are listed as they are now. */
  @Override
  void comesUp() {
    bench.accept(hands -> hands.ports().list());
    if (wantsPorts) {
      list.setSelectedIndex(TABS.size());
    }
  }

  @Override
  @Nullable JButton byEnter() {
    return shown.isAsking() ? disc : null;
  }

  /** The button that is to have the focus when this place comes up. */
  @Override
  JButton first() {
    if (shown.isAsking()) {
      return disc;
    }
    return stop.isEnabled() ? stop : check.isEnabled() ? check : calibrate;
  }

  /** The pictures: rig check, reference pulses, residuals, slotted disc. */
  List<PictureView> pictures() {
    return pictures;
  }

  /** Whether the picture on the screen is the last one. */
  boolean isUpToDate() {
    return at() >= pictures.size() || pictures.get(at()).canvas().isUpToDate();
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(Look.TITLE));
    title.setForeground(look.ink());
    for (ReadOnlyText area : List.of(standing, clocks, sentence, profile)) {
      area.setBackground(look.ground());
      area.setBorder(null);
      area.setForeground(area == profile || area == clocks ? look.quietInk() : look.ink());
      area.setFont(Look.letters(area == sentence ? Look.SENTENCE : Look.BODY));
    }
    standing.setFont(Look.bold(Look.BODY));
    list.setFont(Look.letters(Look.BODY));
    list.setBackground(look.shade());
    scroll.setBorder(BorderFactory.createMatteBorder(Look.px(1), 0, Look.px(1), 0, look.line()));
    profile.setBorder(BorderFactory.createEmptyBorder(Look.px(8), 0, Look.px(8), 0));
    for (JButton button : List.of(firstLight, check, calibrate, disc, upload, stop)) {
      button.setFont(Look.letters(Look.BODY));
    }
    pictures.forEach(picture -> picture.look(look));
    ports.look(look);
  }
}
