package org.halflight.desk;

import java.awt.BorderLayout;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.table.DefaultTableModel;
import org.halflight.chart.DataTable;

/** A picture in words and numbers as a table that arrow keys can read. */
final class DataTableView extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  /** On a dense screen a long text is drawn a little wider than it is measured. */
  private static final int SPARE = 25;

  private final JTable table = new JTable();
  private final ReadOnlyText caption;

  /**
   * @param name what the table is called aloud
   */
  DataTableView(String name) {
    super(new BorderLayout());
    caption = new ReadOnlyText("caption", name);
    table.setName(name);
    table.getAccessibleContext().setAccessibleName(name);
    table.setCellSelectionEnabled(true);
    Look.leaveByTab(table);
    table.setAutoResizeMode(JTable.AUTO_RESIZE_OFF);
    table.getTableHeader().setReorderingAllowed(false);
    add(caption, BorderLayout.NORTH);
    add(new JScrollPane(table));
  }

  JTable table() {
    return table;
  }

  @Override
  public java.awt.Dimension getMinimumSize() {
    return new java.awt.Dimension(Look.px(120), Look.px(80));
  }

  void show(Optional<DataTable> twin) {
    caption.say(twin.map(DataTable::caption).orElse(""));
    DefaultTableModel model =
        new DefaultTableModel(twin.map(t -> t.headings().toArray()).orElse(new Object[0]), 0) {
          private static final long serialVersionUID = 1L;

          @Override
          public boolean isCellEditable(int row, int column) {
            return false;
          }
        };
    for (List<String> row : twin.map(DataTable::rows).orElse(List.of())) {
      model.addRow(row.toArray());
    }
    int row = table.getSelectedRow();
    int column = table.getSelectedColumn();
    table.setModel(model);
    fitColumns();
    if (row >= 0 && row < model.getRowCount() && column < model.getColumnCount()) {
      table.changeSelection(row, Math.max(0, column), false, false);
    }
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    caption.setForeground(look.ink());
    caption.setBackground(look.ground());
    caption.setFont(Look.bold(Look.BODY));
    caption.setBorder(BorderFactory.createEmptyBorder(0, 0, Look.px(6), 0));
  }

  /** Every word can be read: columns as wide as their widest cell. */
  private void fitColumns() {
    for (int column = 0; column < table.getColumnCount(); column++) {
      int widest =
          table
              .getTableHeader()
              .getDefaultRenderer()
              .getTableCellRendererComponent(
                  table, table.getColumnName(column), false, false, -1, column)
              .getPreferredSize()
              .width;
      for (int row = 0; row < table.getRowCount(); row++) {
        widest =
            Math.max(
                widest,
                table
                    .prepareRenderer(table.getCellRenderer(row, column), row, column)
                    .getPreferredSize()
                    .width);
      }
      table
          .getColumnModel()
          .getColumn(column)
          .setPreferredWidth(widest + widest / SPARE + Look.px(14));
    }
  }
}
