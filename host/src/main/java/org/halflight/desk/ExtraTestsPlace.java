package org.halflight.desk;

import java.awt.Component;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javax.swing.BorderFactory;
import javax.swing.DefaultListCellRenderer;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.ListSelectionModel;
import net.miginfocom.swing.MigLayout;
import org.halflight.bench.LightPlan;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.CurtainBench;
import org.halflight.desk.view.ExtraTestsText;
import org.halflight.desk.view.LightTestView;
import org.halflight.desk.view.UserAction;
import org.halflight.session.StopsAsked;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.RunForm;
import org.jspecify.annotations.Nullable;

/**
 * What was tried beside the marked speeds, with its sentences and its picture; the light tests are
 * led through from here.
 */
final class ExtraTestsPlace extends Place {
  private static final long serialVersionUID = 1L;

  private final transient Consumer<Consumer<BenchActions>> bench;
  private final JLabel title = new JLabel(Words.say("desk.tried.title"));
  private final ReadOnlyText sentence =
      new ReadOnlyText("triedSentence", Words.say("desk.tried.name"));
  private final ReadOnlyText remark =
      new ReadOnlyText("triedRemark", Words.say("desk.tried.remark"));
  private final JLabel count = new JLabel(" ");
  private final JProgressBar progress = new JProgressBar(0, 100);
  private final JButton leak = new JButton(Words.say("desk.tried.leak"));
  private final JButton stops = new JButton(Words.say("desk.tried.stops"));
  private final JButton panel = new JButton(Words.say("desk.tried.panel"));
  private final JLabel markedLabel = new JLabel(Words.say("desk.tried.marked"));
  private final JTextField marked = new JTextField(stops(StopsAsked.USUAL), 16);
  private final JLabel plungerLabel = new JLabel(Words.say("desk.tried.plunger"));
  private final JLabel advanceLabel = new JLabel(Words.say("desk.tried.plunger.advance.short"));
  private final JLabel shutterLabel = new JLabel(Words.say("desk.tried.plunger.shutter.short"));
  private final JTextField plungerAdvance = new JTextField(5);
  private final JTextField plungerShutter = new JTextField(5);
  private final JButton plunger = new JButton(Words.say("desk.tried.plunger.note"));
  private final JButton done = new JButton(Words.say("desk.tried.done"));
  private final JButton skip = new JButton(Words.say("desk.tried.skip"));
  private final JButton stop = new JButton(Words.say("desk.tried.stop"));
  private final JLabel listTitle = new JLabel(Words.say("desk.tried.list"));
  private final DefaultListModel<ExtraTestsText.Entry> entries = new DefaultListModel<>();
  private final JList<ExtraTestsText.Entry> list = new JList<>(entries);
  private final JScrollPane scroll = new JScrollPane(list);
  private final ReadOnlyText said = new ReadOnlyText("triedSaid", Words.say("desk.tried.said"));
  private final JScrollPane saidScroll = new JScrollPane(said);
  private final JPanel blank = group(new MigLayout());
  private final JToggleButton tables = new JToggleButton(Words.say("desk.rig.tables"));
  private final PictureView picture;
  private transient LightTestView test = LightTestView.NOTHING;
  private transient @Nullable BenchView view;
  private boolean filling;
  private boolean isOfCurtains;
  private final transient LatestWork<BenchView, ExtraTestsText> text;

  /**
   * @param bench does something on the thread of the bench
   */
  ExtraTestsPlace(
      Look look, Executor drawing, LongSupplier nanos, Consumer<Consumer<BenchActions>> bench) {
    super(UserAction.TO_TRIED);
    setLayout(
        new MigLayout(
            Look.EDGES + ", " + Look.GAPS + ", fill, hidemode 3",
            "[fill,35%::40%][fill,grow]",
            "[][fill,grow]"));
    text =
        new LatestWork<>(
            drawing,
            ExtraTestsText::of,
            (one, other) ->
                one.results() == other.results()
                    && one.readings() == other.readings()
                    && one.presses().equals(other.presses())
                    && one.plungers().equals(other.plungers()),
            (of, made) -> arrived(made));
    this.bench = bench;
    picture =
        new PictureView(
            Words.say("desk.tried.picture"),
            Words.say("desk.tried.noPicture"),
            look,
            drawing,
            nanos);
    named();
    acts();
    add(
        new PlaceHead(title, List.of(leak, stops, panel, done, skip, stop, tables)),
        "span, growx, wrap");
    add(left(), "grow, hmin 0");
    add(right(), "grow, push, hmin 0");
    look(look);
    choose();
  }

  /** What to do, what was tried so far, and the numbers that a person writes for it. */
  private JPanel left() {
    JPanel left =
        group(new MigLayout("insets 0, wrap 1, gap 8 8, fill, hidemode 3", "[fill,grow]", ""));
    left.add(sentence, "wmin 100");
    left.add(remark, "wmin 100");
    left.add(count);
    left.add(progress, "h 10!");
    left.add(listTitle);
    left.add(scroll, "grow, pushy, wmin 100, hmin 60");
    left.add(markedLabel, "split 2, grow 0");
    left.add(marked, "growx, pushx, wmin 80");
    left.add(plungerLabel, "wmin 0");
    left.add(advanceLabel, "split 4, grow 0");
    left.add(plungerAdvance, "growx, pushx, wmin 50");
    left.add(shutterLabel, "grow 0");
    left.add(plungerShutter, "growx, pushx, wmin 50");
    left.add(plunger, "grow 0");
    left.add(blank, "pushy");
    return left;
  }

  /** The picture of the selected one, and its sentences below. */
  private JPanel right() {
    JPanel right = group(new MigLayout("insets 0, wrap 1, gap 8 8, fill", "[fill,grow]", ""));
    right.add(picture, "grow, pushy 70, hmin 120");
    right.add(saidScroll, "grow, pushy 30, wmin 100, h 60:150:");
    return right;
  }

  private void named() {
    leak.setName("triedLeak");
    stops.setName("triedStops");
    panel.setName("triedPanel");
    marked.setName("triedMarked");
    plungerAdvance.setName("triedPlungerAdvance");
    plungerShutter.setName("triedPlungerShutter");
    plunger.setName("triedPlunger");
    advanceLabel.setLabelFor(plungerAdvance);
    shutterLabel.setLabelFor(plungerShutter);
    plungerAdvance
        .getAccessibleContext()
        .setAccessibleName(Words.say("desk.tried.plunger.advance"));
    plungerShutter
        .getAccessibleContext()
        .setAccessibleName(Words.say("desk.tried.plunger.shutter"));
    done.setName("triedDone");
    skip.setName("triedSkip");
    stop.setName("triedStop");
    list.setName("triedList");
    tables.setName("triedTables");
    progress.getAccessibleContext().setAccessibleName(Words.say("desk.tried.progress"));
    markedLabel.setLabelFor(marked);
    marked.getAccessibleContext().setAccessibleName(Words.say("desk.tried.marked"));
    listTitle.setLabelFor(list);
    list.getAccessibleContext().setAccessibleName(Words.say("desk.tried.list"));
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setCellRenderer(new Line());
  }

  private void acts() {
    leak.addActionListener(event -> bench.accept(hands -> hands.light().test(LightPlan.leak())));
    panel.addActionListener(event -> bench.accept(hands -> hands.light().test(LightPlan.panel())));
    stops.addActionListener(
        event -> {
          List<String> written = RunForm.stops(marked.getText());
          bench.accept(hands -> hands.light().stops(written));
        });
    plunger.addActionListener(
        event -> {
          String advance = plungerAdvance.getText();
          String shutter = plungerShutter.getText();
          bench.accept(hands -> hands.plunger(advance, shutter));
        });
    done.addActionListener(event -> bench.accept(hands -> hands.light().answer(Answer.DONE)));
    skip.addActionListener(event -> bench.accept(hands -> hands.light().answer(Answer.SKIP)));
    stop.addActionListener(event -> bench.accept(hands -> hands.light().answer(Answer.STOP)));
    marked.addActionListener(event -> stops.doClick());
    plungerAdvance.addActionListener(event -> plungerShutter.requestFocusInWindow());
    plungerShutter.addActionListener(event -> plunger.doClick());
    list.addListSelectionListener(
        event -> {
          // A list that is empty for a moment would be hidden, and would lose the focus.
          if (!filling) {
            choose();
          }
        });
    tables.addActionListener(
        event -> {
          picture.asTable(tables.isSelected());
          if (tables.isSelected()) {
            picture.table().requestFocusInWindow();
          }
        });
  }

  /** Shows the test that goes on; what was tried follows as soon as it is worked out. */
  @Override
  void show(BenchView shown) {
    Optional<StopsAsked> before = asked(view);
    view = shown;
    // Those of the run that begins, until the person writes others.
    asked(shown)
        .filter(stopsOfRun -> !before.equals(Optional.of(stopsOfRun)))
        .ifPresent(stopsOfRun -> marked.setText(stops(stopsOfRun)));
    boolean curtains = CurtainBench.isCurtain(shown);
    if (!shown.lightTest().equals(test) || curtains != isOfCurtains) {
      isOfCurtains = curtains;
      show(shown.lightTest());
    }
    make();
  }

  private static String stops(StopsAsked asked) {
    return String.join(", ", asked.markings());
  }

  private static Optional<StopsAsked> asked(@Nullable BenchView of) {
    return Optional.ofNullable(of).flatMap(BenchView::setup).map(setup -> setup.criteria().stops());
  }

  private void show(LightTestView now) {
    boolean asksAnew =
        now.isAsking() && (!test.isAsking() || test.prompt().step() != now.prompt().step());
    boolean ended = !now.isUnderWay() && test.isUnderWay();
    test = now;
    sentence.say(
        isOfCurtains && now.prompt().sentence().equals(Words.say("lightTest.ready"))
            ? Words.say("lightTest.ready.curtains")
            : now.prompt().sentence());
    remark.say(now.prompt().remark());
    remark.setVisible(!now.prompt().remark().isEmpty());
    count.setText(now.count());
    count.setVisible(now.isUnderWay());
    progress.setValue((int) Math.round(100 * now.prompt().progress()));
    progress.setVisible(now.isUnderWay());
    for (JComponent each : List.of(leak, panel)) {
      each.setVisible(!now.isUnderWay());
    }
    for (JComponent each :
        List.of(
            stops,
            markedLabel,
            marked,
            plungerLabel,
            advanceLabel,
            plungerAdvance,
            shutterLabel,
            plungerShutter,
            plunger)) {
      each.setVisible(!now.isUnderWay() && !isOfCurtains);
    }
    for (JComponent each : List.of(done, skip, stop)) {
      each.setVisible(now.isUnderWay());
    }
    // Disabling the button would throw the focus away between two readings.
    done.setText(Words.say(now.isReading() ? "desk.tried.reading" : "desk.tried.done"));
    if (isShowing()) {
      enterIsFor(byEnter());
    }
    if (isShowing() && asksAnew) {
      done.requestFocusInWindow();
    } else if (isShowing() && ended) {
      first().requestFocusInWindow();
    }
  }

  /** What was tried is worked out where it is on the screen. */
  private void make() {
    if (view != null && isShowing()) {
      text.of(view);
    }
  }

  @Override
  void comesUp() {
    make();
  }

  private void arrived(ExtraTestsText text) {
    Optional<ExtraTestsText.Entry> chosen = Optional.ofNullable(list.getSelectedValue());
    Optional<ExtraTestsText.Entry> changed =
        text.entries().stream().filter(entry -> !holds(entry)).findFirst();
    filling = true;
    entries.clear();
    text.entries().forEach(entries::addElement);
    // What has just come is looked at, and else the same as before.
    String key = changed.or(() -> chosen).map(ExtraTestsText.Entry::key).orElse("");
    for (int i = 0; i < entries.size(); i++) {
      if (entries.get(i).key().equals(key)) {
        list.setSelectedIndex(i);
        list.ensureIndexIsVisible(i);
      }
    }
    filling = false;
    choose();
  }

  private boolean holds(ExtraTestsText.Entry entry) {
    for (int i = 0; i < entries.size(); i++) {
      ExtraTestsText.Entry before = entries.get(i);
      if (before.key().equals(entry.key()) && before.sentences().equals(entry.sentences())) {
        return true;
      }
    }
    return false;
  }

  private void choose() {
    Optional<ExtraTestsText.Entry> chosen = Optional.ofNullable(list.getSelectedValue());
    said.say(
        chosen
            .map(entry -> String.join("\n", entry.sentences()))
            .orElseGet(() -> Words.say("desk.tried.empty")));
    listTitle.setVisible(!entries.isEmpty());
    blank.setVisible(entries.isEmpty());
    scroll.setVisible(!entries.isEmpty());
    picture.show(
        chosen.flatMap(ExtraTestsText.Entry::picture), chosen.flatMap(ExtraTestsText.Entry::twin));
    picture.whenEmpty(
        Words.say(chosen.isPresent() ? "desk.tried.noPicture" : "desk.tried.emptyPicture"));
  }

  /** What is to have the focus when this place comes up. */
  @Override
  JComponent first() {
    return test.isUnderWay() ? done : entries.isEmpty() ? leak : list;
  }

  @Override
  @Nullable JButton byEnter() {
    return test.isUnderWay() ? done : null;
  }

  /** The picture of the chosen one. */
  PictureView picture() {
    return picture;
  }

  /** Whether what is on the screen is of the last view. */
  boolean isUpToDate() {
    return !isShowing() || (text.isDone() && picture.canvas().isUpToDate());
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(Look.TITLE));
    title.setForeground(look.ink());
    for (ReadOnlyText area : List.of(sentence, remark, said)) {
      area.setBackground(look.ground());
      area.setBorder(null);
      area.setForeground(area == remark ? look.quietInk() : look.ink());
      area.setFont(Look.letters(area == sentence ? Look.SENTENCE : Look.BODY));
    }
    for (JLabel label : List.of(count, markedLabel, plungerLabel, advanceLabel, shutterLabel)) {
      label.setForeground(look.quietInk());
      label.setFont(Look.letters(Look.BODY));
    }
    listTitle.setFont(Look.bold(Look.BODY));
    listTitle.setForeground(look.ink());
    list.setBackground(look.ground());
    list.setFont(Look.letters(Look.BODY));
    scroll.setBorder(BorderFactory.createMatteBorder(Look.px(1), 0, Look.px(1), 0, look.line()));
    saidScroll.setBorder(null);
    saidScroll.getViewport().setBackground(look.ground());
    for (JButton button : List.of(leak, stops, panel, plunger, done, skip, stop)) {
      button.setFont(Look.letters(Look.BODY));
    }
    picture.look(look);
  }

  /** One thing that was tried in a line of the list. */
  private static final class Line extends DefaultListCellRenderer {
    private static final long serialVersionUID = 1L;

    @Override
    public Component getListCellRendererComponent(
        JList<?> list, Object value, int index, boolean selected, boolean focused) {
      ExtraTestsText.Entry entry = (ExtraTestsText.Entry) value;
      super.getListCellRendererComponent(
          list,
          Words.say("desk.tried.line", entry.headline(), entry.run()),
          index,
          selected,
          focused);
      setBorder(BorderFactory.createEmptyBorder(Look.px(5), Look.px(4), Look.px(5), Look.px(4)));
      return this;
    }
  }
}
