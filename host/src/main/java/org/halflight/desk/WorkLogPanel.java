package org.halflight.desk;

import java.math.BigDecimal;
import java.time.ZoneId;
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
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.HistoryText;
import org.halflight.job.MeasuredValue;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.speeds.DecimalComma;
import org.halflight.words.Words;

/** The work log of a visit, and a line to add to it. */
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

  WorkLogPanel(Consumer<Entry> onAdd) {
    super(new MigLayout("insets 0, fill, wrap 1, gap 4 6", "[fill,grow]", "[][grow,fill][][][]"));
    setOpaque(false);
    for (WorkKind each : WorkKind.values()) {
      kind.addItem(Words.of("desk.work", each));
    }
    JList<String> list = new JList<>(entries);
    list.setName("log");
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
    add.addActionListener(event -> add(onAdd));
    for (JTextField field : List.of(text, value, unit)) {
      field.addActionListener(event -> add(onAdd));
    }
    add(new JLabel(Words.say("desk.log.title")));
    add(new JScrollPane(list), "hmin 60");
    add(kind, "split 2, grow 0");
    add(text, "growx, pushx, wmin 120");
    add(new JLabel(Words.say("desk.log.measured")), "split 4, grow 0");
    add(value, "grow 0");
    add(unit, "grow 0");
    add(add, "grow 0, gapleft push");
    add(trouble);
  }

  void show(List<WorkEntry> log, ZoneId zone) {
    entries.clear();
    for (WorkEntry entry : log) {
      String words =
          entry
              .measured()
              .map(m -> Words.say("desk.log.withValue", entry.text(), m.value(), m.unit()))
              .orElse(entry.text());
      entries.add(
          0,
          Words.say(
              "desk.log.entry",
              HistoryText.day(entry.at(), zone),
              Words.of("desk.work", entry.kind()),
              words));
    }
  }

  void enabled(boolean on) {
    for (JComponent each : List.of(add, text, value, unit, kind)) {
      Place.usable(each, on, Words.say("desk.camera.nameFirst"));
    }
  }

  private void add(Consumer<Entry> onAdd) {
    Optional<MeasuredValue> measured = Optional.empty();
    if (!value.getText().isBlank()) {
      String typed = DecimalComma.pointed(value.getText());
      if (!typed.matches("-?\\d{1,6}(\\.\\d{1,6})?") || unit.getText().isBlank()) {
        trouble.setText(Words.say("desk.log.badValue"));
        value.requestFocusInWindow();
        return;
      }
      measured = Optional.of(new MeasuredValue(new BigDecimal(typed), unit.getText().strip()));
    }
    if (text.getText().isBlank() && measured.isEmpty()) {
      trouble.setText(Words.say("desk.log.nothing"));
      text.requestFocusInWindow();
      return;
    }
    trouble.setText(" ");
    onAdd.accept(
        new Entry(
            List.of(WorkKind.values()).get(Math.max(0, kind.getSelectedIndex())),
            text.getText().strip(),
            measured));
    text.setText("");
    value.setText("");
  }

  private static void name(JComponent component, String key) {
    component.getAccessibleContext().setAccessibleName(Words.say(key));
    Place.does(component, Words.say(key));
  }
}
