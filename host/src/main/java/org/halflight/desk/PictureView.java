package org.halflight.desk;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.LongSupplier;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.table.DefaultTableModel;
import org.halflight.chart.Picture;
import org.halflight.chart.TableTwin;

/** A picture and its table twin, one of them on the screen. Arrow keys read the table. */
final class PictureView extends JPanel implements Looked {
  private static final long serialVersionUID = 1L;

  private static final String PICTURE = "picture";
  private static final String TABLE = "table";
  private static final String NOTHING = "nothing";

  private final CardLayout cards = new CardLayout();
  private final PictureCanvas canvas;
  private final JTable table = new JTable();
  private final JLabel caption = new JLabel();
  private final JLabel nothing = new JLabel();
  private final JPanel tableSide = new JPanel(new BorderLayout());
  private transient Look look;
  private transient Optional<Picture> picture = Optional.empty();
  private boolean asTable;

  /**
   * @param name what the picture is called aloud
   * @param whenEmpty what is said while there is nothing to show
   */
  PictureView(String name, String whenEmpty, Look look, Executor drawing, LongSupplier nanos) {
    this.look = look;
    setLayout(cards);
    canvas = new PictureCanvas(name, look, drawing, nanos);
    table.setName(name);
    table.getAccessibleContext().setAccessibleName(name);
    table.setAutoCreateRowSorter(false);
    table.setCellSelectionEnabled(true);
    table.setAutoResizeMode(JTable.AUTO_RESIZE_OFF);
    table.getTableHeader().setReorderingAllowed(false);
    nothing.setText(whenEmpty);
    nothing.setHorizontalAlignment(JLabel.CENTER);
    tableSide.add(caption, BorderLayout.NORTH);
    tableSide.add(new JScrollPane(table));
    add(canvas, PICTURE);
    add(tableSide, TABLE);
    add(nothing, NOTHING);
    look(look);
    turn();
  }

  PictureCanvas canvas() {
    return canvas;
  }

  JTable table() {
    return table;
  }

  /** What is said while there is nothing to show. */
  void whenEmpty(String words) {
    nothing.setText(words);
  }

  @Override
  public java.awt.Dimension getMinimumSize() {
    return new java.awt.Dimension(Look.px(120), Look.px(80));
  }

  void show(Optional<? extends Picture> another) {
    picture = another.map(p -> p);
    canvas.show(another.orElse(null));
    if (picture.isPresent()) {
      TableTwin twin = picture.get().table();
      canvas.speak(twin.caption());
      if (asTable) {
        fill(twin);
      }
    }
    turn();
  }

  /** Shows the table twin, or the picture. */
  void asTable(boolean on) {
    asTable = on;
    if (on) {
      picture.ifPresent(p -> fill(p.table()));
    }
    turn();
  }

  @Override
  public void look(Look another) {
    look = another;
    setBackground(look.ground());
    tableSide.setBackground(look.ground());
    tableSide.setBorder(
        BorderFactory.createEmptyBorder(Look.px(12), Look.px(16), Look.px(8), Look.px(16)));
    caption.setFont(Look.bold(1.1));
    caption.setBorder(BorderFactory.createEmptyBorder(0, 0, Look.px(8), 0));
    nothing.setForeground(look.quietInk());
    nothing.setFont(Look.letters(1.1));
    canvas.look(look);
  }

  private void turn() {
    cards.show(this, picture.isEmpty() ? NOTHING : asTable ? TABLE : PICTURE);
  }

  private void fill(TableTwin twin) {
    caption.setText(twin.caption());
    caption.setToolTipText(twin.caption());
    DefaultTableModel model =
        new DefaultTableModel(twin.headings().toArray(), 0) {
          private static final long serialVersionUID = 1L;

          @Override
          public boolean isCellEditable(int row, int column) {
            return false;
          }
        };
    for (List<String> row : twin.rows()) {
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
      table.getColumnModel().getColumn(column).setPreferredWidth(widest + Look.px(14));
    }
  }
}
