package org.halflight.desk;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.Icon;
import javax.swing.JTable;
import javax.swing.UIManager;
import org.halflight.desk.view.ChecklistText;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;

/** An answer of the lists as a button: its state by shape and word, wrapped where it is long. */
final class ChecklistCell extends WrappedTable.Cell {
  private static final long serialVersionUID = 1L;

  private final transient Supplier<ChecklistText> lists;

  private final transient IntFunction<CheckItem> items;

  /**
   * @param items by row
   */
  ChecklistCell(Supplier<ChecklistText> lists, IntFunction<CheckItem> items) {
    this.lists = lists;
    this.items = items;
  }

  @Override
  public Component getTableCellRendererComponent(
      JTable table, Object value, boolean isSelected, boolean hasFocus, int row, int column) {
    super.getTableCellRendererComponent(table, value, isSelected, hasFocus, row, column);
    setIcon(null);
    if (column > 0) {
      CheckState state = lists.get().state(items.apply(row), column == 1);
      setIcon(new Shape(state));
      setDisabledIcon(getIcon());
      setIconTextGap(Look.px(Look.UNIT));
      Color line = UIManager.getColor(hasFocus ? "Component.focusColor" : "Component.borderColor");
      int thick = hasFocus ? 2 : 1;
      int edge = Look.px(2 * Look.UNIT) - thick;
      setBorder(
          BorderFactory.createCompoundBorder(
              BorderFactory.createEmptyBorder(2, 2, 2, 2),
              BorderFactory.createCompoundBorder(
                  BorderFactory.createLineBorder(line, thick, true),
                  BorderFactory.createEmptyBorder(0, edge, 0, 2))));
      WrappedTable.wrapped(this, table.getColumnModel().getColumn(column).getWidth());
    }
    return this;
  }

  /** A tick in a circle for OK, a cross for a fault, an empty circle where nobody has tested. */
  private record Shape(CheckState state) implements Icon {
    @Override
    public void paintIcon(Component of, Graphics graphics, int x, int y) {
      Graphics2D drawing = (Graphics2D) graphics.create();
      try {
        drawing.setRenderingHint(
            RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        drawing.translate(x, y);
        drawing.scale(getIconWidth() / 16.0, getIconWidth() / 16.0);
        drawing.setColor(of.getForeground());
        drawing.setStroke(new BasicStroke(2, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        Path2D.Double lines = new Path2D.Double();
        switch (state) {
          case OK -> {
            lines.moveTo(3, 8.5);
            lines.lineTo(6.5, 12);
            lines.lineTo(13, 4);
          }
          case FAULT -> {
            lines.moveTo(3.5, 3.5);
            lines.lineTo(12.5, 12.5);
            lines.moveTo(12.5, 3.5);
            lines.lineTo(3.5, 12.5);
          }
          case NOT_TESTED -> lines.append(new Ellipse2D.Double(4, 4, 8, 8), false);
        }
        drawing.draw(lines);
      } finally {
        drawing.dispose();
      }
    }

    @Override
    public int getIconWidth() {
      return Look.px(16);
    }

    @Override
    public int getIconHeight() {
      return getIconWidth();
    }
  }
}
