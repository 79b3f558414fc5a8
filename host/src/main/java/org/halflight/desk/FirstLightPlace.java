package org.halflight.desk;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.ListSelectionModel;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.FirstLightText;
import org.halflight.desk.view.FirstLightView;
import org.halflight.desk.view.UserAction;
import org.halflight.files.FileKind;
import org.halflight.files.FileNames;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.files.OutFolder;
import org.halflight.files.SettingsFile;
import org.halflight.firstlight.FirstLight;
import org.halflight.report.RigReport;
import org.halflight.report.Workshop;
import org.halflight.trouble.Trouble;
import org.halflight.words.Numbers;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.jspecify.annotations.Nullable;

/** First light of a rig that was just built: its steps, what to do now, and what is seen. */
final class FirstLightPlace extends Place {
  private static final long serialVersionUID = 1L;

  /** The folder is kept with that of pages. */
  private static final String REPORTS = "pages";

  private final transient Consumer<Consumer<BenchActions>> bench;
  private final transient Executor drawing;
  private final transient DeskSurroundings surroundings;
  private final JLabel title = new JLabel(Words.say("desk.first.title"));
  private final DefaultListModel<String> steps = new DefaultListModel<>();
  private final JList<String> list = new JList<>(steps);
  private final JScrollPane listScroll = new JScrollPane(list);
  private final ReadOnlyText sentence =
      new ReadOnlyText("firstSentence", Words.say("desk.first.name"));
  private final ReadOnlyText remark =
      new ReadOnlyText("firstRemark", Words.say("desk.first.remark"));
  private final ReadOnlyText live = new ReadOnlyText("firstLive", Words.say("desk.first.live"));
  private final JLabel voltsLabel = new JLabel(Words.say("desk.first.volts"));
  private final JTextField volts = new JTextField(6);
  private final JButton begin = new JButton(Words.say("desk.first.begin"));
  private final JButton done = new JButton(Words.say("desk.first.done"));
  private final JButton skip = new JButton(Words.say("desk.first.skip"));
  private final JButton stop = new JButton(Words.say("desk.first.stop"));
  private final JButton goTo = new JButton(Words.say("desk.first.goTo"));
  private final JButton report = new JButton(Words.say("desk.first.report"));
  private transient FirstLightView shown = FirstLightView.NOTHING;
  private transient Optional<UserAction> next = Optional.empty();
  private transient Optional<FirstLight> written = Optional.empty();

  /**
   * @param bench does something on the thread of the bench
   * @param acts goes to another place
   */
  FirstLightPlace(
      Look look,
      Executor drawing,
      DeskSurroundings surroundings,
      Consumer<Consumer<BenchActions>> bench,
      Consumer<UserAction> acts) {
    super(UserAction.TO_FIRST_LIGHT);
    this.bench = bench;
    this.drawing = drawing;
    this.surroundings = surroundings;
    setLayout(
        new MigLayout(
            Look.EDGES + ", " + Look.GAPS + ", fill, hidemode 3",
            "[fill,30%::36%][fill,grow]",
            "[][fill,grow]"));
    named();
    begin.addActionListener(event -> bench.accept(hands -> hands.rig().firstLight()));
    done.addActionListener(event -> done());
    volts.addActionListener(event -> done());
    skip.addActionListener(event -> answer(Answer.SKIP));
    stop.addActionListener(event -> answer(Answer.STOP));
    goTo.addActionListener(event -> next.ifPresent(acts));
    report.addActionListener(event -> shown.state().ifPresent(this::write));
    add(new PlaceHead(title, List.of(begin, report)), "span, growx, wrap");
    add(listScroll, "grow, hmin 0");
    add(right(), "grow, push, hmin 0");
    look(look);
  }

  private JPanel right() {
    JPanel right =
        group(new MigLayout("insets 0, wrap 1, gap 0 14, fillx, hidemode 3", "[fill,grow]", ""));
    right.add(sentence, "wmin 100");
    JPanel typed = group(new MigLayout("insets 0, gap 8, hidemode 3"));
    typed.add(voltsLabel);
    typed.add(volts);
    right.add(typed);
    JPanel buttons = group(new MigLayout("insets 0, gap 8, hidemode 3"));
    for (JButton each : List.of(done, skip, stop, goTo)) {
      buttons.add(each, "hmin " + Look.px(40));
    }
    right.add(buttons);
    right.add(live, "wmin 100");
    right.add(remark, "wmin 100");
    return right;
  }

  private void named() {
    list.setName("firstSteps");
    list.getAccessibleContext().setAccessibleName(Words.say("desk.first.list"));
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    volts.setName("firstVolts");
    voltsLabel.setLabelFor(volts);
    begin.setName("firstBegin");
    done.setName("firstDone");
    skip.setName("firstSkip");
    stop.setName("firstStop");
    goTo.setName("firstGoTo");
    report.setName("firstReport");
  }

  private void done() {
    if (shown.asksForVolts()) {
      String typed = volts.getText();
      bench.accept(hands -> hands.rig().firstVolts(typed));
    } else {
      answer(Answer.DONE);
    }
  }

  private void answer(Answer answer) {
    bench.accept(hands -> hands.rig().firstAnswer(answer));
  }

  /** The report goes into a file of its own, next to the pages. */
  private void write(FirstLight state) {
    drawing.execute(
        () -> {
          String said;
          try {
            Path settings = surroundings.folder();
            Path folder = OutFolder.of(settings, REPORTS, settings).path();
            String name = FileNames.plain("rig-report-" + state.rig().serial(), "rig-report");
            OutFile file =
                OutFiles.neverReplacing().free(folder.resolve(name + ".pdf"), FileKind.PAGE);
            Workshop by = Workshop.of(SettingsFile.read(settings));
            RigReport.write(
                state,
                Numbers.date(LocalDate.ofInstant(surroundings.clock().instant(), ZoneOffset.UTC)),
                surroundings.version(),
                by.paperIn(Locale.getDefault(Locale.Category.FORMAT)),
                file);
            said = Words.say("desk.first.written", file.path());
          } catch (Trouble notWritten) {
            said = notWritten.getMessage();
          }
          String sentenceOfIt = said;
          SwingUtilities.invokeLater(
              () -> {
                written = Optional.of(state);
                live.say(sentenceOfIt);
              });
        });
  }

  @Override
  void show(BenchView view) {
    FirstLightView first = view.rig().firstLight();
    FirstLightText text = FirstLightText.of(view);
    boolean turned =
        first.isUnderWay() != shown.isUnderWay()
            || first.asksForVolts() != shown.asksForVolts()
            || !text.goTo().equals(next);
    shown = first;
    next = text.goTo();
    if (!text.steps().equals(Collections.list(steps.elements()))) {
      steps.clear();
      steps.addAll(text.steps());
    }
    if (text.at() >= 0) {
      list.setSelectedIndex(text.at());
    } else {
      list.clearSelection();
    }
    sentence.say(text.sentence());
    remark.say(text.remark());
    if (first.isUnderWay() || !first.state().equals(written)) {
      live.say(first.live());
    }
    boolean asks = first.prompt().filter(its -> its.answers().contains(Answer.DONE)).isPresent();
    usable(begin, text.mayBegin(), Words.say("desk.rig.busy"));
    usable(report, first.state().isPresent(), Words.say("desk.first.noReport"));
    done.setVisible(first.isUnderWay());
    skip.setVisible(first.isUnderWay());
    stop.setVisible(first.isUnderWay());
    done.setEnabled(asks);
    skip.setEnabled(asks);
    goTo.setVisible(next.isPresent());
    voltsLabel.setVisible(first.asksForVolts());
    volts.setVisible(first.asksForVolts());
    if (turned && isShowing()) {
      first().requestFocusInWindow();
      enterIsFor(byEnter());
    }
  }

  @Override
  @Nullable JButton byEnter() {
    return shown.isUnderWay() ? done : next.isPresent() ? goTo : null;
  }

  @Override
  boolean goOn() {
    if (done.isVisible() && done.isEnabled()) {
      done.doClick(0);
      return true;
    }
    return shown.isUnderWay();
  }

  @Override
  JComponent first() {
    if (volts.isVisible()) {
      return volts;
    }
    return done.isVisible() ? done : goTo.isVisible() ? goTo : begin;
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(Look.TITLE));
    title.setForeground(look.ink());
    for (ReadOnlyText area : List.of(sentence, remark, live)) {
      area.setBackground(look.ground());
      area.setBorder(null);
      area.setForeground(area == live ? look.quietInk() : look.ink());
      area.setFont(Look.letters(Look.LEAD));
    }
    sentence.setFont(Look.bold(Look.SENTENCE));
    voltsLabel.setForeground(look.ink());
    list.setFont(Look.letters(Look.LEAD));
    list.setBackground(look.shade());
    listScroll.setBorder(null);
    for (JButton each : List.of(begin, done, skip, stop, goTo, report)) {
      each.setFont(Look.letters(Look.BODY));
    }
  }
}
