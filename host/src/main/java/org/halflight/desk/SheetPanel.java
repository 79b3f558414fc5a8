package org.halflight.desk;

import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.ListSelectionModel;
import javax.swing.table.AbstractTableModel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.SheetText;
import org.halflight.job.Id;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.words.SheetWords;
import org.halflight.words.Words;

/** The strip sheet of a visit: noted before the work, ticked at assembly with Space or a click. */
final class SheetPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final transient Clock clock;
  private final transient Consumer<SheetEntry> onEntry;
  private final JComboBox<String> item = new JComboBox<>();
  private final JTextField words = new JTextField();
  private final JTextField place = new JTextField();
  private final JButton note = new JButton(Words.say("desk.sheet.note"));
  private final JButton correct = new JButton(Words.say("desk.sheet.correct"));
  private final JButton strike = new JButton(Words.say("desk.sheet.strike"));
  private final ReadOnlyText hint = new ReadOnlyText("sheetHint", Words.say("desk.sheet.hint"));
  private final ReadOnlyText said = new ReadOnlyText("sheetSaid", Words.say("desk.sheet.said"));
  private transient SheetText sheet = new SheetText(StripSheet.EMPTY, ZoneOffset.UTC);
  private final Lines lines = new Lines();
  private final JTable table = new WrappedTable(lines);
  private transient Optional<Id<Visit>> visit = Optional.empty();

  /**
   * @param onEntry takes what is to be added to the sheet
   */
  SheetPanel(Clock clock, Consumer<SheetEntry> onEntry) {
    super(new MigLayout("insets 8 0 0 0, fill, gap 8 6", "[][fill,grow]", "[][][][][fill,grow][]"));
    setOpaque(false);
    this.clock = clock;
    this.onEntry = onEntry;
    for (SheetItem each : SheetText.items()) {
      item.addItem(SheetWords.name(each));
    }
    item.setName("sheetItem");
    item.setMaximumRowCount(SheetText.items().size());
    words.setName("sheetWords");
    place.setName("sheetPlace");
    note.setName("sheetNote");
    correct.setName("sheetCorrect");
    strike.setName("sheetStrike");
    table.setName("sheetLines");
    table.getAccessibleContext().setAccessibleName(Words.say("desk.sheet.title"));
    table.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    Look.leaveByTab(table);
    table.getTableHeader().setReorderingAllowed(false);
    table.getColumnModel().getColumn(0).setPreferredWidth(Look.px(80));
    table.getColumnModel().getColumn(1).setPreferredWidth(Look.px(300));
    table.getColumnModel().getColumn(2).setPreferredWidth(Look.px(100));
    item.addActionListener(event -> hint.say(SheetWords.hint(chosen())));
    note.addActionListener(event -> note());
    words.addActionListener(event -> note());
    place.addActionListener(event -> note());
    correct.addActionListener(event -> correct());
    strike.addActionListener(event -> selected().ifPresent(line -> add(line, SheetState.STRUCK)));
    table.getSelectionModel().addListSelectionListener(event -> select());
    BoundKey.does(
        table,
        WHEN_ANCESTOR_OF_FOCUSED_COMPONENT,
        KeyStroke.getKeyStroke("SPACE"),
        () -> selected().ifPresent(this::tick));
    table.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mouseClicked(MouseEvent event) {
            int row = table.rowAtPoint(event.getPoint());
            if (row >= 0 && table.columnAtPoint(event.getPoint()) == 0) {
              tick(sheet.line(row));
            }
          }
        });
    field("desk.sheet.item", item);
    field("desk.sheet.words", words);
    field("desk.sheet.place", place);
    JPanel buttons = Place.group(new MigLayout("insets 0"));
    buttons.add(note);
    buttons.add(correct);
    buttons.add(strike);
    add(hint, "skip 1, wmin 100, hmin 34, wrap");
    add(buttons, "span 2, wrap");
    add(new JScrollPane(table), "span 2, grow, hmin 100, wmin 100, wrap");
    add(said, "span 2, growx, wmin 100, hmin 54");
    hint.say(SheetWords.hint(chosen()));
    show(Optional.empty(), StripSheet.EMPTY);
  }

  private void field(String key, JComponent field) {
    JLabel name = new JLabel(Words.say(key));
    name.setLabelFor(field);
    field.getAccessibleContext().setAccessibleName(name.getText());
    add(name);
    add(field, "wmin 60, wrap");
  }

  /** The sheet of a visit; of none while no camera is named. */
  void show(Optional<Id<Visit>> of, StripSheet now) {
    int before = sheet.lines();
    sheet = new SheetText(now, clock.getZone());
    if (!visit.equals(of)) {
      visit = of;
      lines.fireTableDataChanged();
      words.setText("");
      place.setText("");
    } else {
      // The selection stays, and so does the focus: a button that is disabled would give it away.
      if (before > sheet.lines()) {
        lines.fireTableDataChanged();
      } else if (before < sheet.lines()) {
        lines.fireTableRowsInserted(0, sheet.lines() - 1 - before);
      }
      lines.fireTableRowsUpdated(0, Math.max(0, sheet.lines() - 1));
    }
    sayLine();
    dress();
  }

  private void sayLine() {
    String line = sheet.said(table.getSelectedRow());
    said.say(visit.isPresent() ? line : Words.say("desk.sheet.noCamera", line));
  }

  StripSheet sheet() {
    return sheet.sheet();
  }

  @Override
  public void look(Look look) {
    for (ReadOnlyText each : new ReadOnlyText[] {hint, said}) {
      each.setBorder(null);
      each.setBackground(look.ground());
      each.setForeground(look.ink());
    }
  }

  private void dress() {
    boolean on = visit.isPresent();
    String nameFirst = Words.say("desk.camera.nameFirst");
    for (JComponent each : List.of(item, words, place, note)) {
      Place.usable(each, on, nameFirst);
    }
    String why = on ? Words.say("desk.sheet.selectFirst") : nameFirst;
    Place.usable(correct, on && selected().isPresent(), why);
    Place.usable(strike, on && selected().isPresent(), why);
  }

  private SheetItem chosen() {
    return SheetText.items().get(Math.max(0, item.getSelectedIndex()));
  }

  /** The line that is selected, where it may be changed. */
  private Optional<StripSheet.Line> selected() {
    int row = table.getSelectedRow();
    return row < 0 || row >= sheet.lines()
        ? Optional.empty()
        : Optional.of(sheet.line(row)).filter(l -> l.now().state() != SheetState.STRUCK);
  }

  private void select() {
    sayLine();
    selected()
        .map(StripSheet.Line::now)
        .ifPresent(
            now -> {
              item.setSelectedIndex(SheetText.items().indexOf(now.item()));
              words.setText(now.words());
              place.setText(now.place());
            });
    dress();
  }

  private void note() {
    Optional<String> read = chosen().read(words.getText());
    if (read.isEmpty()) {
      hint.say(SheetWords.bad(chosen(), words.getText().strip()));
      words.requestFocusInWindow();
      return;
    }
    visit.ifPresent(
        here ->
            onEntry.accept(
                sheet()
                    .noted(here, chosen(), place.getText().strip(), read.get(), clock.instant())));
    hint.say(SheetWords.hint(chosen()));
    words.setText("");
    place.setText("");
    words.requestFocusInWindow();
  }

  private void correct() {
    Optional<StripSheet.Line> line = selected();
    if (line.isEmpty()) {
      return;
    }
    SheetItem its = line.get().now().item();
    Optional<String> read = its.read(words.getText());
    hint.say(
        read.isPresent() ? SheetWords.hint(its) : SheetWords.bad(its, words.getText().strip()));
    read.ifPresent(
        typed ->
            onEntry.accept(
                line.get().now().corrected(place.getText().strip(), typed, clock.instant())));
  }

  /** What is asked back is ticked; a tick is taken back the same way. */
  private void tick(StripSheet.Line line) {
    if (line.now().item().isAskedBack() && line.now().state() != SheetState.STRUCK) {
      add(line, line.isOpen() ? SheetState.BACK : SheetState.NOTED);
    }
  }

  private void add(StripSheet.Line line, SheetState to) {
    onEntry.accept(line.now().turned(to, clock.instant()));
  }

  private final class Lines extends AbstractTableModel {
    private static final long serialVersionUID = 1L;

    @Override
    public int getRowCount() {
      return sheet.lines();
    }

    @Override
    public int getColumnCount() {
      return SheetText.COLUMNS;
    }

    @Override
    public String getColumnName(int column) {
      return Words.say("desk.sheet.column" + column);
    }

    @Override
    public Object getValueAt(int row, int column) {
      return sheet.cell(row, column);
    }
  }
}
