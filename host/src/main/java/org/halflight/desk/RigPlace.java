package org.halflight.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JScrollPane;
import javax.swing.JTabbedPane;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import org.halflight.calibration.PrintedDisc;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.DiscForm;
import org.halflight.desk.view.RigView;
import org.halflight.desk.view.UserAction;
import org.halflight.upload.FirmwareImages;
import org.halflight.words.Words;
import org.halflight.workflow.ShippedFirmware;

/** The rig itself: what its profile says, the rig check, the calibration, and their pictures. */
final class RigPlace extends Place {
  private static final long serialVersionUID = 1L;

  private static final List<String> TABS = List.of("check", "fit", "residuals", "disc");
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
  private final JTabbedPane tabs = new JTabbedPane();
  private final List<PictureView> pictures;
  private final PortsPanel ports;
  private boolean isUp;
  private JScrollPane scroll;
  private transient RigView shown = RigView.NOTHING;

  /**
   * @param bench does something on the thread of the bench
   */
  RigPlace(
      Look look,
      Executor drawing,
      DeskSurroundings surroundings,
      Consumer<Consumer<BenchActions>> bench) {
    super(UserAction.TO_RIG);
    setLayout(
        new MigLayout(
            "insets 18 32 14 28, gap 22 8, fill, hidemode 3",
            "[fill,420::46%][fill,grow]",
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
      tabs.addTab(Words.say("desk.rig.tab." + TABS.get(i)), pictures.get(i));
    }
    ports = new PortsPanel(look, bench);
    tabs.addTab(Words.say("desk.ports.title"), ports);
    tabs.setName("rigPictures");
    tabs.getAccessibleContext().setAccessibleName(Words.say("desk.rig.title"));
    for (int seconds : CLOCK_SECONDS) {
      clock.addItem(Words.say("desk.rig.clock." + seconds));
    }
    wired.addItem(Words.say("desk.rig.upload.same"));
    rigs.forEach(rig -> wired.addItem(Words.say("desk.rig.upload.kind", rig)));
    progress.getAccessibleContext().setAccessibleName(Words.say("desk.rig.progress"));
    file.setText(surroundings.folder().resolve("my-rig.profile").toString());
    named();
    acts();
    add(title);
    add(tables, "align right, grow 0, wrap");
    add(left(), "grow");
    add(tabs, "grow, push");
    look(look);
  }

  private JPanel left() {
    JPanel left =
        group(new MigLayout("insets 0, wrap 1, gap 8 10, fillx, hidemode 3", "[fill,grow]", ""));
    left.add(standing, "wmin 200");
    left.add(clocks, "wmin 200");
    left.add(sentence, "wmin 200");
    left.add(progress, "h 10!");
    JPanel buttons = group(new MigLayout("insets 2, gap 10 8"));
    buttons.add(check);
    buttons.add(calibrate);
    buttons.add(disc);
    buttons.add(stop, "wrap");
    JLabel clockLabel = new JLabel(Words.say("desk.rig.clock"));
    clockLabel.setLabelFor(clock);
    buttons.add(clockLabel, "span, split 2");
    buttons.add(clock, "wrap");
    JLabel cutLabel = new JLabel(Words.say("desk.rig.disc.cut"));
    cutLabel.setLabelFor(cut);
    JLabel speedLabel = new JLabel(Words.say("desk.rig.disc.rpm"));
    speedLabel.setLabelFor(speed);
    buttons.add(cutLabel, "span, split 4");
    buttons.add(cut);
    buttons.add(speedLabel);
    buttons.add(speed, "wrap");
    JLabel wiredLabel = new JLabel(Words.say("desk.rig.upload.which"));
    wiredLabel.setLabelFor(wired);
    buttons.add(upload, "span, wrap");
    buttons.add(wiredLabel, "span, split 2");
    buttons.add(wired);
    left.add(buttons);
    scroll = new JScrollPane(profile);
    left.add(scroll, "wmin 200, hmin 60, grow, push");
    JLabel fileLabel = new JLabel(Words.say("desk.rig.file"));
    fileLabel.setLabelFor(file);
    left.add(fileLabel);
    left.add(file, "wmin 100");
    JPanel files = group(new MigLayout("insets 2, gap 10"));
    files.add(write);
    files.add(take);
    left.add(files);
    return left;
  }

  private void named() {
    check.setName("rigCheck");
    calibrate.setName("rigCalibrate");
    disc.setName("rigDisc");
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
    write.addActionListener(event -> withFile((hands, path) -> hands.rig().write(path)));
    take.addActionListener(event -> withFile((hands, path) -> hands.rig().importProfile(path)));
    tables.addActionListener(
        event -> pictures.forEach(picture -> picture.asTable(tables.isSelected())));
  }

  private void withFile(java.util.function.BiConsumer<BenchActions, Path> doing) {
    try {
      Path path = Path.of(file.getText().strip());
      bench.accept(hands -> doing.accept(hands, path));
    } catch (java.nio.file.InvalidPathException noPath) {
      sentence.setText(Words.say("profile.unreadable", file.getText(), noPath.getReason()));
    }
  }

  @Override
  void show(BenchView view) {
    isUp = view.link().isUp() || view.link().isPractice();
    show(view.rig());
    ports.show(view);
  }

  private void show(RigView view) {
    boolean turned = view.isUnderWay() != shown.isUnderWay() || view.isAsking() != shown.isAsking();
    title.setText(Words.say("desk.rig.titleOf", view.heading()));
    standing.say(view.standing());
    clocks.say(String.join(" ", view.clock()));
    clocks.setVisible(!view.clock().isEmpty());
    sentence.say(view.sentence());
    profile.say(String.join("\n", view.profile()));
    progress.setValue((int) Math.round(100 * view.progress()));
    progress.setVisible(view.isUnderWay());
    check.setEnabled(!view.isUnderWay() && view.hasProfile());
    calibrate.setEnabled(!view.isUnderWay());
    disc.setText(Words.say(view.isAsking() ? "desk.rig.disc.done" : "desk.rig.disc"));
    disc.setEnabled(view.isAsking() || !view.isUnderWay());
    upload.setEnabled(!view.isUnderWay());
    wired.setEnabled(!view.isUnderWay());
    cut.setEnabled(!view.isUnderWay());
    speed.setEnabled(!view.isUnderWay());
    stop.setEnabled(view.isUnderWay());
    write.setEnabled(view.hasProfile());
    if (!shown.check().equals(view.check()) && view.check().isPresent()) {
      tabs.setSelectedIndex(0);
    } else if (!shown.fit().equals(view.fit())) {
      tabs.setSelectedIndex(1);
    } else if (!shown.disc().equals(view.disc())) {
      tabs.setSelectedIndex(3);
    }
    shown = view;
    if (isShowing() && turned) {
      first().requestFocusInWindow();
    }
    pictures.get(0).show(view.check());
    pictures.get(1).show(view.fit());
    pictures.get(2).show(view.residuals());
    pictures.get(3).show(view.disc());
  }

  /** Without a rig the ports come first; they are listed as they are now. */
  @Override
  void comesUp() {
    bench.accept(hands -> hands.ports().list());
    if (!isUp) {
      tabs.setSelectedComponent(ports);
    }
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
    int shows = tabs.getSelectedIndex();
    return shows < 0 || shows >= pictures.size() || pictures.get(shows).canvas().isUpToDate();
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(2));
    title.setForeground(look.ink());
    for (ReadOnlyText area : List.of(standing, clocks, sentence, profile)) {
      area.setBackground(look.ground());
      area.setBorder(null);
      area.setForeground(area == profile || area == clocks ? look.quietInk() : look.ink());
      area.setFont(area == sentence ? Look.letters(1.35) : Look.letters(1.08));
    }
    standing.setFont(Look.bold(1.15));
    scroll.setBorder(BorderFactory.createMatteBorder(Look.px(1), 0, Look.px(1), 0, look.line()));
    profile.setBorder(BorderFactory.createEmptyBorder(Look.px(8), 0, Look.px(8), 0));
    for (JButton button : List.of(check, calibrate, disc, upload, stop)) {
      button.setFont(Look.letters(1.15));
    }
    pictures.forEach(picture -> picture.look(look));
    ports.look(look);
  }
}
