package org.halflight.desk;

import java.awt.CardLayout;
import java.awt.Dimension;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.LongSupplier;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTable;
import org.halflight.chart.DataTable;
import org.halflight.chart.Picture;

/** A picture and its table twin, one of them on the screen. */
final class PictureView extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private static final String PICTURE = "picture";
  private static final String TABLE = "table";
  private static final String NOTHING = "nothing";

  private final CardLayout cards = new CardLayout();
  private final PictureCanvas canvas;
  private final DataTableView table;
  private final JLabel nothing = new JLabel();
  private transient Optional<Picture> picture = Optional.empty();
  private transient Optional<DataTable> twin = Optional.empty();
  private String instead = "";
  private boolean asTable;

  /**
   * @param name what the picture is called aloud
   * @param whenEmpty what is said while there is nothing to show
   */
  PictureView(String name, String whenEmpty, Look look, Executor drawing, LongSupplier nanos) {
    setLayout(cards);
    canvas = new PictureCanvas(name, look, drawing, nanos);
    table = new DataTableView(name);
    whenEmpty(whenEmpty);
    nothing.setHorizontalAlignment(JLabel.CENTER);
    add(canvas, PICTURE);
    add(table, TABLE);
    add(nothing, NOTHING);
    look(look);
    turn();
  }

  PictureCanvas canvas() {
    return canvas;
  }

  JTable table() {
    return table.table();
  }

  /** What is said while there is nothing to show. */
  void whenEmpty(String words) {
    instead = words;
    // Only marked up words wrap.
    nothing.setText(
        words.startsWith("<html>")
            ? words
            : "<html><center>"
                + words.replace("&", "&amp;").replace("<", "&lt;")
                + "</center></html>");
  }

  void show(Optional<? extends Picture> another) {
    show(another, another.map(Picture::table));
  }

  /** Shows a picture whose table was made already. */
  void show(Optional<? extends Picture> another, Optional<DataTable> words) {
    picture = another.map(p -> p);
    twin = words;
    canvas.show(another.orElse(null));
    canvas.speak(twin.map(DataTable::caption).orElse(instead.replaceAll("<[^>]*>", " ")));
    if (asTable) {
      table.show(twin);
    }
    turn();
  }

  /** Shows the table twin, or the picture. */
  void asTable(boolean on) {
    asTable = on;
    if (on) {
      table.show(twin);
    }
    turn();
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(Look.px(120), Look.px(80));
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    table.look(look);
    table.setBorder(
        BorderFactory.createEmptyBorder(Look.px(12), Look.px(16), Look.px(8), Look.px(16)));
    nothing.setForeground(look.quietInk());
    nothing.setFont(Look.letters(Look.BODY));
    nothing.setBorder(
        BorderFactory.createEmptyBorder(Look.px(4), Look.px(16), Look.px(4), Look.px(16)));
    canvas.look(look);
  }

  private void turn() {
    cards.show(this, picture.isEmpty() ? NOTHING : asTable ? TABLE : PICTURE);
  }
}
