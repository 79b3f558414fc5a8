package org.halflight.desk;

import java.awt.BorderLayout;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.Act;
import org.halflight.desk.view.BenchPictures;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.NextText;
import org.halflight.desk.view.NumeralsText;
import org.halflight.desk.view.SayText;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Words;

/** The bench: next speed, last firing, speed map, firing row, one sentence, and the keys. */
final class BenchPlace extends JPanel implements Looked {
  private static final long serialVersionUID = 1L;

  private static final int LEAST_MILLIS = 50;

  private final NextPanel next;
  private final NumeralsPanel numerals;
  private final EdgeBar edge;
  private final SayLine say;
  private final PictureView map;
  private final PictureView row;
  private final JTextArea verdict = new JTextArea();
  private final MarkField mark;
  private final KeyBar keys;
  private final JPanel rowSide = new JPanel(new BorderLayout());
  private final JPanel pictures =
      new JPanel(new MigLayout("insets 0, fill, gap 0", "[61%!,fill][39%!,fill]", "[fill]"));
  private final Timer slow;
  private transient Look look;
  private transient BenchView view;
  private transient BenchView pictured;
  private transient Optional<MarkedSpeed> looked = Optional.empty();
  private transient Optional<MarkedSpeed> lookedPictured = Optional.empty();
  private boolean looksElsewhere;

  /**
   * @param acts takes what keys and clicks ask for
   * @param marks takes the words of adjustments
   */
  BenchPlace(
      Look look,
      Executor drawing,
      LongSupplier nanos,
      Consumer<Act> acts,
      Consumer<String> marks) {
    super(new MigLayout("insets 0, fill, gap 0, hidemode 3", "[fill]", "[][][fill,grow][]"));
    this.look = look;
    next = new NextPanel(look);
    numerals = new NumeralsPanel(look);
    edge = new EdgeBar(look);
    say = new SayLine(look);
    map =
        new PictureView(
            Words.say("desk.map.title"), Words.say("desk.map.empty"), look, drawing, nanos);
    row =
        new PictureView(
            Words.say("desk.row.title"), Words.say("desk.row.empty"), look, drawing, nanos);
    mark = new MarkField(look, marks);
    keys = new KeyBar(look, acts);
    verdict.setName("verdict");
    verdict.setEditable(false);
    verdict.setFocusable(false);
    verdict.setLineWrap(true);
    verdict.setWrapStyleWord(true);
    verdict.getAccessibleContext().setAccessibleName(Words.say("desk.verdict.name"));
    map.canvas().onChoice(this::choose);

    JPanel band = new JPanel(new MigLayout("insets 0, fill, gap 0", "[30%!,fill][fill]", "[fill]"));
    band.add(next);
    band.add(numerals);
    rowSide.add(row);
    rowSide.add(verdict, BorderLayout.SOUTH);
    pictures.add(map, "wmin 0, hmin 0");
    pictures.add(rowSide, "wmin 0, hmin 0");
    add(edge, "dock west");
    add(keys, "dock south");
    add(band, "h pref!, wrap");
    add(say, "h pref!, wrap");
    add(mark, "wrap");
    add(pictures, "push, h 100:200:, wrap");
    slow = new Timer(LEAST_MILLIS, event -> showPictures());
    slow.setRepeats(false);
    look(look);
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

  /** Shows a view: the figures at once, the pictures soon. */
  void show(BenchView shown) {
    boolean moved = view != null && !view.shown().equals(shown.shown());
    boolean fired = view != null && view.results() != shown.results();
    view = shown;
    if (moved || fired) {
      looksElsewhere = false;
    }
    numerals.show(NumeralsText.of(shown));
    NextText nextText = NextText.of(shown);
    next.show(nextText);
    edge.show(nextText, shown.justDone().isPresent());
    say.show(SayText.of(shown));
    keys.show(KeyHints.of(shown));
    if (!slow.isRunning()) {
      slow.start();
    }
  }

  /** Looks at the next slower or faster speed, without another one to fire. */
  void lookAlong(int by) {
    List<MarkedSpeed> speeds = view == null ? List.of() : BenchPictures.speeds(view);
    if (!speeds.isEmpty()) {
      int here = looked.map(speeds::indexOf).orElse(0);
      lookAt(speeds.get(Math.max(0, Math.min(speeds.size() - 1, here + by))));
    }
  }

  /** The speed whose row is shown. */
  Optional<MarkedSpeed> looked() {
    return looked;
  }

  void asTables(boolean on) {
    map.asTable(on);
    row.asTable(on);
    if (on) {
      map.table().requestFocusInWindow();
    }
  }

  /** Asks for the words of an adjustment, without a box in the way. */
  void askForMark() {
    mark.ask();
  }

  JTextField markField() {
    return mark.field();
  }

  @Override
  public void look(Look another) {
    look = another;
    setBackground(look.ground());
    pictures.setBackground(look.ground());
    rowSide.setBackground(look.ground());
    verdict.setFont(Look.letters(1.1));
    verdict.setForeground(look.ink());
    verdict.setBackground(look.ground());
    verdict.setBorder(
        BorderFactory.createEmptyBorder(Look.px(2), Look.px(22), Look.px(8), Look.px(20)));
    for (Looked each : List.of(next, numerals, edge, say, map, row, mark, keys)) {
      each.look(look);
    }
  }

  private void lookAt(MarkedSpeed speed) {
    looked = Optional.of(speed);
    looksElsewhere = true;
    showPictures();
  }

  private void choose(double place) {
    List<MarkedSpeed> speeds = view == null ? List.of() : BenchPictures.speeds(view);
    if (!speeds.isEmpty()) {
      lookAt(speeds.get(Math.min(speeds.size() - 1, (int) (place * speeds.size()))));
    }
  }

  private void showPictures() {
    if (view == null) {
      return;
    }
    if (!looksElsewhere) {
      looked = speedToLookAt();
    }
    boolean same =
        pictured != null
            && pictured.results() == view.results()
            && pictured.setup().equals(view.setup())
            && pictured.shown().equals(view.shown())
            && pictured.link().isPractice() == view.link().isPractice()
            && pictured.marks().equals(view.marks())
            && lookedPictured.equals(looked);
    if (!same) {
      pictured = view;
      lookedPictured = looked;
      map.show(BenchPictures.speedMap(view));
      row.whenEmpty(
          looked
              .map(speed -> Words.say("desk.row.notFired", speed))
              .orElseGet(() -> Words.say("desk.row.empty")));
      row.show(looked.flatMap(speed -> BenchPictures.firingRow(view, speed)));
      verdict.setText(
          looked.map(speed -> String.join(" ", BenchPictures.verdict(view, speed))).orElse(""));
      verdict.getAccessibleContext().setAccessibleDescription(verdict.getText());
    }
    List<MarkedSpeed> speeds = BenchPictures.speeds(view);
    int place = looked.map(speeds::indexOf).orElse(-1);
    if (place >= 0) {
      map.canvas().mark((double) place / speeds.size(), (place + 1.0) / speeds.size());
    } else {
      map.canvas().mark(Double.NaN, Double.NaN);
    }
  }

  /** The speed just fired as long as it stands on the edge bar, then the one to fire. */
  private Optional<MarkedSpeed> speedToLookAt() {
    return view.justDone()
        .or(view::shown)
        .flatMap(org.halflight.session.Setting::speed);
  }
}
