package org.halflight.desk;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.ListSelectionModel;
import net.miginfocom.swing.MigLayout;
import org.halflight.job.Id;
import org.halflight.job.MeasuredValue;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.words.Words;
import org.halflight.words.WorkWords;

/** The work log of a visit, and a line to add to it; a selected entry is corrected there. */
final class WorkLogPanel extends JPanel {
  private static final long serialVersionUID = 1L;

  /**
   * What is to be added.
   *
   * @param measured a value with its unit, where one was typed
   */
  record Entry(WorkKind kind, String text, Optional<MeasuredValue> measured) {}

  private final DefaultListModel<String> entries = new DefaultListModel<>();
  private final JComboBox<String> kind = new JComboBox<>();
  private final JTextField text = new JTextField();
  private final JTextField value = new JTextField(5);
  private final JTextField unit = new JTextField("mm", 4);
  private final JLabel trouble = new JLabel(" ");
  private final JButton add = new JButton(Words.say("desk.log.add"));
  private final JButton correct = new JButton(Words.say("desk.log.correct"));
  private final JButton strike = new JButton(Words.say("desk.log.strike"));
  private final JList<String> list = new JList<>(entries);
  private final ReadOnlyText counts = new ReadOnlyText("logCounts", Words.say("desk.log.counts"));
  private transient List<WorkEntry> shown = List.of();

  /**
   * @param onAdd takes what is to be added
   * @param onChange takes an entry that was corrected, or taken back
   */
  WorkLogPanel(Consumer<Entry> onAdd, Consumer<WorkEntry> onChange) {
    super(
        new MigLayout(
            "insets 0, fill, wrap 1, gap 4 6, hidemode 3",
            "[fill,grow]",
            "[][grow,fill][][][][][]"));
    setOpaque(false);
    for (WorkKind each : WorkKind.values()) {
      kind.addItem(Words.of("desk.work", each));
    }
    list.setName("log");
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.addListSelectionListener(event -> select());
    list.getAccessibleContext().setAccessibleName(Words.say("desk.log.title"));
    text.setName("logText");
    value.setName("logValue");
    unit.setName("logUnit");
    kind.setName("logKind");
    add.setName("logAdd");
    name(kind, "desk.log.kind");
    name(text, "desk.log.text");
    name(value, "desk.log.value");
    name(unit, "desk.log.unit");
    correct.setName("logCorrect");
    strike.setName("logStrike");
    correct.addActionListener(
        event ->
            selected()
                .ifPresent(
                    was ->
                        typed()
                            .ifPresent(
                                now ->
                                    onChange.accept(
                                        was.with(now.kind(), now.text(), now.measured())))));
    strike.addActionListener(event -> selected().ifPresent(e -> onChange.accept(e.struck(true))));
    add.addActionListener(event -> add(onAdd));
    for (JTextField field : List.of(text, value, unit)) {
      field.addActionListener(event -> add(onAdd));
    }
    add(new JLabel(Words.say("desk.log.title")));
    add(new JScrollPane(list), "hmin 60");
    counts.setVisible(false);
    counts.setBorder(null);
    counts.setOpaque(false);
    add(counts, "wmin 100");
    add(kind, "split 2, grow 0");
    add(text, "growx, pushx, wmin 120");
    add(new JLabel(Words.say("desk.log.measured")), "split 4, grow 0");
    add(value, "grow 0");
    add(unit, "grow 0");
    add(add, "grow 0, gapleft push");
    JPanel ofSelected = Place.group(new MigLayout("insets 0"));
    ofSelected.add(correct);
    ofSelected.add(strike);
    add(ofSelected);
    add(trouble);
    select();
  }

  void show(List<WorkEntry> log, ZoneId zone) {
    if (newestFirst(log).equals(shown)) {
      return;
    }
    Optional<Id<WorkEntry>> chosen = selected().map(WorkEntry::id);
    shown = newestFirst(log);
    entries.clear();
    shown.forEach(entry -> entries.addElement(WorkWords.line(entry, zone)));
    list.setSelectedIndex(
        chosen.map(id -> shown.stream().map(WorkEntry::id).toList().indexOf(id)).orElse(-1));
  }

  /** Says what the whole log comes to; empty hides the line. */
  void says(String sentence) {
    counts.say(sentence);
    counts.setVisible(!sentence.isEmpty());
  }

  private static List<WorkEntry> newestFirst(List<WorkEntry> log) {
    List<WorkEntry> turned = new ArrayList<>(log);
    Collections.reverse(turned);
    return List.copyOf(turned);
  }

  private Optional<WorkEntry> selected() {
    int row = list.getSelectedIndex();
    return row < 0 || row >= shown.size() ? Optional.empty() : Optional.of(shown.get(row));
  }

  /** What the selected entry says can be typed over. */
  private void select() {
    Optional<WorkEntry> entry = selected();
    correct.setVisible(entry.isPresent());
    strike.setVisible(entry.isPresent());
    entry.ifPresent(
        its -> {
          kind.setSelectedIndex(List.of(WorkKind.values()).indexOf(its.kind()));
          text.setText(its.text());
          value.setText(its.measured().map(m -> m.value().toPlainString()).orElse(""));
          unit.setText(its.measured().map(MeasuredValue::unit).orElse(unit.getText()));
        });
  }

  void enabled(boolean on) {
    for (JComponent each : List.of(add, text, value, unit, kind)) {
      Place.usable(each, on, Words.say("desk.camera.nameFirst"));
    }
  }

  private void add(Consumer<Entry> onAdd) {
    typed()
        .ifPresent(
            entry -> {
              onAdd.accept(entry);
              list.clearSelection();
              text.setText("");
              value.setText("");
            });
  }

  /** What is typed; empty, and said why, where it is no entry. */
  private Optional<Entry> typed() {
    Optional<MeasuredValue> measured = Optional.empty();
    if (!value.getText().isBlank()) {
      Optional<BigDecimal> number = WorkWords.number(value.getText());
      if (number.isEmpty() || unit.getText().isBlank()) {
        trouble.setText(Words.say("desk.log.badValue"));
        value.requestFocusInWindow();
        return Optional.empty();
      }
      measured = number.map(its -> new MeasuredValue(its, unit.getText().strip()));
    }
    if (text.getText().isBlank() && measured.isEmpty()) {
      trouble.setText(Words.say("desk.log.nothing"));
      text.requestFocusInWindow();
      return Optional.empty();
    }
    trouble.setText(" ");
    return Optional.of(
        new Entry(
            List.of(WorkKind.values()).get(Math.max(0, kind.getSelectedIndex())),
            text.getText().strip(),
            measured));
  }

  private static void name(JComponent component, String key) {
    component.getAccessibleContext().setAccessibleName(Words.say(key));
    Place.does(component, Words.say(key));
  }
}
