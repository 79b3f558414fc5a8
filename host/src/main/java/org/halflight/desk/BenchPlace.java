package org.halflight.desk;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.Timer;
import org.halflight.desk.view.AdviceText;
import org.halflight.desk.view.BenchPictures;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.ConditionKeys;
import org.halflight.desk.view.CountedFirings;
import org.halflight.desk.view.CurtainBench;
import org.halflight.desk.view.CurtainText;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.MessageText;
import org.halflight.desk.view.NextText;
import org.halflight.desk.view.NumeralsText;
import org.halflight.desk.view.RunWords;
import org.halflight.desk.view.ShownPicture;
import org.halflight.desk.view.TwoText;
import org.halflight.desk.view.UserAction;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainAdvice;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/** The bench: next speed, last firing, speed map, firing row, one sentence, and the keys. */
final class BenchPlace extends Place {
  private static final long serialVersionUID = 1L;

  private static final int LEAST_MILLIS = 50;

  private final NextPanel next;
  private final NumeralsPanel numerals;
  private final AdvicePanel advice;
  private final EdgeBar edge;
  private final MessageLine say;
  private final PictureView map;
  private final PictureView row;
  private final PictureView small;
  private final MarkField mark;
  private final KeyBar keys;
  private final KeyBar toKeys;
  private final KeyBar ofLast;
  private final KeyBar fromNowOn;
  private final JPanel conditions = new JPanel(new BorderLayout());
  private final BenchLayout layout;
  private final JPanel allKeys = new JPanel(new BorderLayout());
  private final Timer slow;

  /** A timer that is over has not yet been heard. */
  private boolean picturesDue;

  private final Timer uncount = new Timer(LEAST_MILLIS, event -> uncount());
  private transient Look look;
  private transient @Nullable BenchView view;
  private transient Optional<MarkedSpeed> looked = Optional.empty();
  private transient BenchPictures.All all = BenchPictures.All.NOTHING;
  private transient RunWords runWords = RunWords.NOTHING;
  private final transient CountedFirings counted = new CountedFirings();
  private final transient LongSupplier nanos;
  private final transient LatestWork<LookedAt, Made> pictures;
  private final transient Consumer<String> marks;
  private final transient BiConsumer<Integer, String> reasons;
  private final transient BooleanSupplier hasPedal;
  private boolean looksElsewhere;
  private boolean showsConditions;
  private boolean far;
  private boolean away;
  private int turns;

  /** What is made of a view on the drawing thread. */
  private record Made(BenchPictures.All pictures, RunWords words) {}

  /**
   * @param acts takes what keys and clicks ask for
   * @param marks takes the words of adjustments
   * @param reasons takes the number of a rejected firing and its new reason
   * @param hasPedal whether a key is a pedal
   */
  BenchPlace(
      Look look,
      Executor drawing,
      LongSupplier nanos,
      Consumer<UserAction> acts,
      Consumer<String> marks,
      BiConsumer<Integer, String> reasons,
      BooleanSupplier hasPedal) {
    super(UserAction.TO_BENCH);
    this.look = look;
    this.hasPedal = hasPedal;
    this.nanos = nanos;
    pictures =
        new LatestWork<>(
            drawing,
            at ->
                new Made(
                    BenchPictures.all(at.view(), at.speed(), at.turns()), RunWords.of(at.view())),
            BenchPlace::comeToTheSame,
            (at, made) -> arrived(at.speed(), made));
    next = new NextPanel(look);
    numerals = new NumeralsPanel(look);
    advice = new AdvicePanel(look);
    edge = new EdgeBar(look);
    say = new MessageLine(look);
    map =
        new PictureView(
            Words.say("desk.map.title"), Words.say("desk.map.empty"), look, drawing, nanos);
    row =
        new PictureView(
            Words.say("desk.row.title"), Words.say("desk.row.empty"), look, drawing, nanos);
    small =
        new PictureView(
            Words.say("desk.small.title"), Words.say("desk.small.empty"), look, drawing, nanos);
    mark = new MarkField(look);
    this.marks = marks;
    this.reasons = reasons;
    keys = new KeyBar(look, "", acts);
    ofLast = conditionBar("desk.conditions.last", acts);
    fromNowOn = conditionBar("desk.conditions.fromNowOn", acts);
    toKeys = new KeyBar(look, "", acts);
    toKeys.show(List.of(ConditionKeys.back()));
    JPanel each = new JPanel(new BorderLayout());
    each.add(ofLast, BorderLayout.LINE_START);
    each.add(fromNowOn);
    conditions.add(toKeys, BorderLayout.LINE_START);
    conditions.add(each);
    allKeys.add(conditions, BorderLayout.NORTH);
    allKeys.add(keys);
    showKeys();
    map.canvas().onChoice(at -> choose(all.large(), at));
    row.canvas().onChoice(at -> choose(all.row(), at));
    small.canvas().onChoice(at -> turnCurve());

    BenchLayout.Parts parts =
        new BenchLayout.Parts(edge, next, numerals, advice, say, mark, map, row, small, allKeys);
    layout = new BenchLayout(parts);
    setLayout(layout);
    parts.all().forEach(this::add);
    List.of(next, numerals, advice)
        .forEach(block -> block.onClick(() -> acts.accept(UserAction.FAR_VIEW)));
    registerKeyboardAction(
        event -> far(false),
        KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
        JComponent.WHEN_IN_FOCUSED_WINDOW);
    slow = new Timer(LEAST_MILLIS, event -> showPictures());
    slow.setRepeats(false);
    look(look);
  }

  /** The size of a key cap goes by that of the window. */
  @Override
  public void setBounds(int x, int y, int width, int height) {
    if (width != getWidth() || height != getHeight()) {
      for (KeyBar bar : List.of(keys, toKeys, ofLast, fromNowOn)) {
        for (Component cap : bar.getComponents()) {
          cap.invalidate();
        }
      }
    }
    super.setBounds(x, y, width, height);
  }

  private KeyBar conditionBar(String title, Consumer<UserAction> acts) {
    KeyBar bar = new KeyBar(look, Words.say(title), acts);
    bar.getAccessibleContext().setAccessibleName(Words.say("desk.conditions.name"));
    return bar;
  }

  NumeralsPanel numerals() {
    return numerals;
  }

  PictureView map() {
    return map;
  }

  PictureView row() {
    return row;
  }

  /** The picture of the last firing. */
  PictureView small() {
    return small;
  }

  /** Shows a view: the figures at once, the pictures soon. */
  @Override
  void show(BenchView shown) {
    boolean moved = view != null && !view.shown().equals(shown.shown());
    boolean fired = view != null && view.results() != shown.results();
    view = shown;
    if (moved || fired) {
      looksElsewhere = false;
    }
    numerals.show(NumeralsText.of(shown));
    numerals.show(TwoText.of(shown));
    numerals.showCurtains(CurtainText.of(shown));
    next.show(counted.of(shown, nanos.getAsLong()));
    edge.show(NextText.of(shown), shown.justDone().isPresent());
    showWords();
    keys.show(hasPedal.getAsBoolean() ? KeyHints.withPedal(shown) : KeyHints.of(shown));
    ofLast.show(ConditionKeys.ofLastFiring(shown));
    fromNowOn.show(ConditionKeys.fromNowOn(shown));
    showKeys();
    picturesDue = true;
    if (!slow.isRunning()) {
      slow.start();
    }
    if (counted.isShown(nanos.getAsLong()) && !uncount.isRunning()) {
      uncount.start();
    }
  }

  /** What was counted has been shown for its time. */
  private void uncount() {
    if (view != null) {
      next.show(counted.of(view, nanos.getAsLong()));
    }
    if (!counted.isShown(nanos.getAsLong())) {
      uncount.stop();
    }
  }

  private void showWords() {
    if (view != null) {
      numerals.showMean(runWords.mean(view));
      advice.show(AdviceText.of(view, runWords));
      say.show(MessageText.of(view).with(runWords.hints()));
    }
  }

  /** Whether the pictures on the screen are those of the last view. */
  boolean isUpToDate() {
    return !picturesDue
        && pictures.isDone()
        && map.canvas().isUpToDate()
        && row.canvas().isUpToDate()
        && small.canvas().isUpToDate();
  }

  @Override
  boolean acceptsBenchKeys() {
    return true;
  }

  /** Shows the caps of the conditions in place of the other keys, or those again. */
  void turnConditions() {
    showsConditions = !showsConditions;
    showKeys();
  }

  /** A question is answered by the keys of the moment. */
  private void showKeys() {
    boolean asked = view != null && view.question().isPresent();
    boolean shown = showsConditions && !asked && (ofLast.isVisible() || fromNowOn.isVisible());
    conditions.setVisible(shown);
    keys.setVisible(!shown);
    allKeys.revalidate();
  }

  /** Whether the column alone is shown. */
  boolean isFar() {
    return far;
  }

  /** Shows the column alone, as large as the window gives, or the whole bench. */
  void far(boolean on) {
    if (far == on) {
      return;
    }
    far = on;
    layout.far(on);
    for (JComponent each : List.of(say, map, row, small, allKeys)) {
      each.setVisible(!on);
    }
    for (ColumnBlock each : List.of(next, numerals, advice)) {
      each.far(on);
    }
    revalidate();
    repaint();
  }

  /** Who asks for the bench once more wants all of it. */
  @Override
  void comesUp() {
    if (!away) {
      far(false);
    }
    away = false;
  }

  @Override
  void isLeft() {
    away = true;
  }

  /** Looks at the next slower or faster speed, without another one to fire. */
  void lookAlong(int by) {
    List<MarkedSpeed> speeds = all.speeds();
    if (!speeds.isEmpty()) {
      int here = looked.map(speeds::indexOf).orElse(0);
      lookAt(speeds.get(Math.max(0, Math.min(speeds.size() - 1, here + by))));
    }
  }

  /**
   * The speed that the person has selected beside the one to fire; empty where that is the same.
   */
  Optional<MarkedSpeed> selected() {
    return looked.filter(speed -> looksElsewhere);
  }

  /**
   * Shows another picture in the large place: the light curve and back, or the next of curtains.
   */
  void turnCurve() {
    turns++;
    showPictures();
  }

  /** The speed whose row is shown. */
  Optional<MarkedSpeed> looked() {
    return looked;
  }

  /**
   * The speed that the person has selected, else the worst one, else the one whose row is shown.
   */
  Optional<MarkedSpeed> toAdjust() {
    return selected().or(runWords::worst).or(this::looked);
  }

  @Override
  void asTables(boolean on) {
    map.asTable(on);
    row.asTable(on);
    if (on) {
      map.table().requestFocusInWindow();
    }
  }

  /** Asks for the words of an adjustment, without a box in the way. */
  void askForMark() {
    far(false);
    String begun = view == null ? "" : CurtainBench.begun(view, runWords.curtainAdvice());
    mark.ask(
        Words.say("desk.mark.what"),
        begun,
        words -> marks.accept(words.isEmpty() ? Words.say("desk.mark.noWords") : words));
    if (!begun.isEmpty()) {
      mark.field().setCaretPosition(begun.length());
    }
  }

  /** What is advised about curtains, by the firings so far. */
  Optional<CurtainAdvice> curtainAdvice() {
    return runWords.curtainAdvice();
  }

  /** Asks why the firing that is chosen in the table of the row, or the last one, is rejected. */
  void askForReason() {
    Optional.of(all.large())
        .filter(shown -> map.table().isShowing())
        .flatMap(shown -> shown.rejected(map.table().getSelectedRow()))
        .or(
            () ->
                Optional.of(all.row())
                    .filter(shown -> row.table().isShowing())
                    .flatMap(shown -> shown.rejected(row.table().getSelectedRow())))
        .or(
            () ->
                Optional.ofNullable(view).stream()
                    .flatMap(shown -> shown.results().stream())
                    .filter(firing -> firing.rejection().isPresent())
                    .reduce((first, second) -> second))
        .ifPresent(this::askForReason);
  }

  private void askForReason(FiringResult firing) {
    far(false);
    mark.ask(
        Words.say("desk.reason.what", firing.number()),
        firing.rejection().orElse(""),
        words -> {
          if (!words.isEmpty()) {
            reasons.accept(firing.number(), words);
          }
        });
  }

  JTextField markField() {
    return mark.field();
  }

  @Override
  public void look(Look another) {
    look = another;
    setBackground(look.ground());
    for (LookListener each :
        List.of(
            next, numerals, advice, edge, say, map, row, small, mark, keys, toKeys, ofLast,
            fromNowOn)) {
      each.look(look);
    }
  }

  private void lookAt(MarkedSpeed speed) {
    looked = Optional.of(speed);
    looksElsewhere = true;
    showPictures();
  }

  private void choose(ShownPicture in, double place) {
    in.speedAt(place).ifPresent(this::lookAt);
    in.rejectedAt(place).ifPresent(this::askForReason);
  }

  /**
   * Has the pictures of the last view made on the drawing thread, where that is not busy with
   * earlier ones; by itself this happens 20 times a second at most.
   */
  void showPictures() {
    picturesDue = false;
    if (view != null) {
      if (!looksElsewhere) {
        looked = speedToLookAt(view);
      }
      pictures.of(new LookedAt(view, looked, turns));
    }
  }

  private static boolean comeToTheSame(LookedAt at, LookedAt other) {
    BenchView one = at.view();
    BenchView two = other.view();
    return one.results() == two.results()
        && one.setup().equals(two.setup())
        && one.presses().equals(two.presses())
        && one.linkage().isShown() == two.linkage().isShown()
        && one.openSeconds().isPresent() == two.openSeconds().isPresent()
        && one.lightTest().isUnderWay() == two.lightTest().isUnderWay()
        && one.last().equals(two.last())
        && one.runDone() == two.runDone()
        && one.dial().equals(two.dial())
        && one.link().serial().equals(two.link().serial())
        && one.marks().equals(two.marks())
        && one.two().equals(two.two())
        && one.step().equals(two.step())
        && one.turns().equals(two.turns())
        && at.speed().equals(other.speed())
        && at.turns() == other.turns();
  }

  private void arrived(Optional<MarkedSpeed> at, Made work) {
    BenchPictures.All made = work.pictures();
    all = made;
    show(map, made.large(), at);
    show(row, made.row(), at);
    show(small, made.small(), at);
    runWords = work.words();
    showWords();
  }

  private static void show(PictureView view, ShownPicture shown, Optional<MarkedSpeed> at) {
    view.whenEmpty(shown.instead());
    view.show(shown.picture(), shown.twin());
    int place = at.map(shown.speeds()::indexOf).orElse(-1);
    int count = shown.speeds().size();
    view.canvas()
        .mark(
            place < 0 ? Double.NaN : (double) place / count,
            place < 0 ? Double.NaN : (place + 1.0) / count);
  }

  /** The speed just fired as long as it stands on the edge bar, then the one to fire. */
  private static Optional<MarkedSpeed> speedToLookAt(BenchView view) {
    return view.justDone()
        .filter(done -> done.speed().isPresent() || view.linkage().isShown())
        .or(view::shown)
        .flatMap(DialSetting::speed);
  }
}
