package org.halflight.desk;

import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import javax.swing.KeyStroke;
import javax.swing.ListSelectionModel;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableModel;
import org.halflight.desk.view.ChecklistText;
import org.halflight.extratest.ExtraTest;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.words.Words;

/** The lists of intake and hand-back side by side; Space or a click turns an answer over. */
final class ChecklistTable extends WrappedTable {
  private static final long serialVersionUID = 1L;

  private transient List<CheckItem> items = List.of(CheckItem.values());
  private boolean ofCurtains;

  private final transient BiConsumer<Checklist, Checklist> onChange;

  /** Of the names beside the answers, which are 75: the longest word has room. */
  private static final int ITEM_WIDTH = 95;

  private transient ChecklistText lists = ChecklistText.EMPTY;

  /**
   * @param onChange takes both lists, intake first
   */
  ChecklistTable(BiConsumer<Checklist, Checklist> onChange) {
    super(new DefaultTableModel());
    this.onChange = onChange;
    setName("lists");
    setModel(new Lists());
    setCellSelectionEnabled(true);
    Look.leaveByTab(this);
    setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    getTableHeader().setReorderingAllowed(false);
    setDefaultRenderer(Object.class, new ChecklistCell(() -> lists, this::item));
    getColumnModel().getColumn(0).setPreferredWidth(ITEM_WIDTH);
    getAccessibleContext().setAccessibleName(Words.say("desk.lists.name"));
    BoundKey.does(
        this,
        WHEN_ANCESTOR_OF_FOCUSED_COMPONENT,
        KeyStroke.getKeyStroke("SPACE"),
        () -> turn(getSelectedRow(), getSelectedColumn()));
    addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent event) {
            turn(rowAtPoint(event.getPoint()), columnAtPoint(event.getPoint()));
          }
        });
  }

  /** The item of a row. */
  CheckItem item(int row) {
    return items.get(row);
  }

  /** The items of a camera with curtains, or of another one. */
  void ofCurtains(boolean curtains) {
    if (ofCurtains != curtains) {
      ofCurtains = curtains;
      items =
          Arrays.stream(CheckItem.values())
              .filter(item -> !curtains || item.isOfCurtains())
              .toList();
      ((Lists) getModel()).fireTableDataChanged();
    }
  }

  void show(ChecklistText shown) {
    lists = shown;
    ((Lists) getModel()).fireTableRowsUpdated(0, items.size() - 1);
  }

  /** Other answers, with what was measured as it is. */
  void show(Checklist intake, Checklist handBack) {
    show(new ChecklistText(intake, handBack, lists.tried()));
  }

  /** What was measured joins the lists as they are. */
  void measured(List<ExtraTest> tried) {
    show(new ChecklistText(lists.intake(), lists.handBack(), tried));
  }

  /** What was measured for the item that is looked at, in sentences. */
  String said() {
    int row = getSelectedRow();
    return row < 0 ? "" : String.join("\n", lists.said(items.get(row)));
  }

  /** The note on the answer that is selected; empty where none is. */
  Optional<String> note() {
    return selected().map(item -> answers().of(item).note());
  }

  /** Notes something on the answer that is selected. */
  void note(String words) {
    selected()
        .filter(item -> !answers().of(item).note().equals(words))
        .ifPresent(item -> change(item, answers().with(item, answers().of(item).state(), words)));
  }

  private Optional<CheckItem> selected() {
    int row = getSelectedRow();
    return row < 0 || getSelectedColumn() < 1 || !isEnabled()
        ? Optional.empty()
        : Optional.of(items.get(row));
  }

  /** The list of the selected answer. */
  private Checklist answers() {
    return getSelectedColumn() == 1 ? lists.intake() : lists.handBack();
  }

  private void change(CheckItem item, Checklist now) {
    boolean intake = getSelectedColumn() == 1;
    lists =
        new ChecklistText(
            intake ? now : lists.intake(), intake ? lists.handBack() : now, lists.tried());
    ((Lists) getModel()).fireTableCellUpdated(items.indexOf(item), getSelectedColumn());
    onChange.accept(lists.intake(), lists.handBack());
  }

  private void turn(int row, int column) {
    if (row < 0 || column < 1 || !isEnabled()) {
      return;
    }
    CheckItem item = items.get(row);
    lists =
        new ChecklistText(
            column == 1 ? turned(lists.intake(), item) : lists.intake(),
            column == 1 ? lists.handBack() : turned(lists.handBack(), item),
            lists.tried());
    ((Lists) getModel()).fireTableCellUpdated(row, column);
    onChange.accept(lists.intake(), lists.handBack());
  }

  /** Not tested, OK, fault, and round again. */
  private static Checklist turned(Checklist list, CheckItem item) {
    CheckState next =
        switch (list.of(item).state()) {
          case NOT_TESTED -> CheckState.OK;
          case OK -> CheckState.FAULT;
          case FAULT -> CheckState.NOT_TESTED;
        };
    return list.with(item, next, list.of(item).note());
  }

  private final class Lists extends AbstractTableModel {
    private static final long serialVersionUID = 1L;

    @Override
    public int getRowCount() {
      return items.size();
    }

    @Override
    public int getColumnCount() {
      return 3;
    }

    @Override
    public String getColumnName(int column) {
      return Words.say("desk.lists.column" + column);
    }

    @Override
    public Object getValueAt(int row, int column) {
      CheckItem item = items.get(row);
      if (column == 0) {
        return ofCurtains && item == CheckItem.BLADES
            ? Words.say("desk.item.curtains")
            : Words.of("desk.item", item);
      }
      return lists.cell(item, column == 1);
    }
  }
}
