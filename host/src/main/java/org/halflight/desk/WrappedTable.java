package org.halflight.desk;

import java.awt.Component;
import java.awt.Insets;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JTable;
import javax.swing.event.TableModelEvent;
import javax.swing.plaf.basic.BasicHTML;
import javax.swing.table.DefaultTableCellRenderer;
import javax.swing.table.TableModel;
import javax.swing.text.View;

/** A table of which every word can be read: cells wrap, and lines are as high as they need. */
class WrappedTable extends JTable {
  private static final long serialVersionUID = 1L;

  /** The least height of a line, in pixels before scaling: 9 mm of a 14-inch screen. */
  private static final int LEAST_HIGH = 36;

  WrappedTable(TableModel model) {
    super(model);
    setDefaultRenderer(Object.class, new Cell());
  }

  @Override
  public void doLayout() {
    super.doLayout();
    fit();
  }

  /** Words that come later may need more lines. */
  @Override
  public void tableChanged(TableModelEvent event) {
    super.tableChanged(event);
    // Before it was laid out there is no width to wrap to.
    if (getWidth() > 0) {
      fit();
    }
  }

  private void fit() {
    for (int row = 0; row < getRowCount(); row++) {
      int high = Look.px(LEAST_HIGH);
      for (int column = 0; column < getColumnCount(); column++) {
        Component cell = prepareRenderer(getCellRenderer(row, column), row, column);
        high = Math.max(high, wrapped((JLabel) cell, width(this, column)));
      }
      if (getRowHeight(row) != high) {
        setRowHeight(row, high);
      }
    }
  }

  private static int width(JTable table, int column) {
    return table.getColumnModel().getColumn(column).getWidth();
  }

  /** Wraps the words of a cell to a width, and gives the height that they need. */
  static int wrapped(JLabel cell, int width) {
    if (!(cell.getClientProperty(BasicHTML.propertyKey) instanceof View view)) {
      return 0;
    }
    Insets edge = cell.getInsets();
    int icon = cell.getIcon() == null ? 0 : cell.getIcon().getIconWidth() + cell.getIconTextGap();
    view.setSize(width - edge.left - edge.right - icon - 1, 0);
    return (int) Math.ceil(view.getPreferredSpan(View.Y_AXIS)) + Look.px(2 * Look.UNIT);
  }

  /** A cell whose words wrap. */
  static class Cell extends DefaultTableCellRenderer {
    private static final long serialVersionUID = 1L;

    @Override
    public Component getTableCellRendererComponent(
        JTable table, Object value, boolean isSelected, boolean hasFocus, int row, int column) {
      super.getTableCellRendererComponent(table, value, isSelected, hasFocus, row, column);
      String words = String.valueOf(value);
      setText("<html>" + words.replace("&", "&amp;").replace("<", "&lt;"));
      getAccessibleContext().setAccessibleName(words);
      setEnabled(table.isEnabled());
      setBorder(BorderFactory.createEmptyBorder(0, Look.px(2 * Look.UNIT), 0, Look.px(Look.UNIT)));
      wrapped(this, width(table, column));
      return this;
    }
  }
}
