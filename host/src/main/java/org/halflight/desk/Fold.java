package org.halflight.desk;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.util.Map;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleState;
import javax.accessibility.AccessibleStateSet;
import javax.swing.BorderFactory;
import javax.swing.Icon;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import javax.swing.SwingConstants;
import org.halflight.words.Words;

/**
 * Fields that are folded away behind one line, which says what stands in them. A click, the space
 * bar or Enter opens it; a screen reader says the line and whether it is open.
 */
final class Fold extends JPanel {
  private static final long serialVersionUID = 1L;

  private final String title;
  private final Line line = new Line();
  private final JComponent fields;

  /**
   * @param name of the component; its line has the same with {@code .line} behind it
   * @param title what the line begins with
   */
  Fold(String name, String title, JComponent fields) {
    super(new BorderLayout());
    this.title = title;
    this.fields = fields;
    setOpaque(false);
    setName(name);
    line.setName(name + ".line");
    line.addActionListener(event -> turned());
    fields.setBorder(
        BorderFactory.createEmptyBorder(
            Look.px(Look.UNIT), Look.px(6 * Look.UNIT), Look.px(2 * Look.UNIT), 0));
    fields.setVisible(false);
    add(line, BorderLayout.NORTH);
    add(fields);
    say("");
  }

  /** The line while it is folded: what stands in the fields. */
  void say(String values) {
    line.setText(values.isEmpty() ? title : Words.say("desk.fold.line", title, values));
    line.setToolTipText(line.getText());
    line.getAccessibleContext().setAccessibleName(line.getText());
  }

  boolean isOpen() {
    return line.isSelected();
  }

  void open(boolean open) {
    line.setSelected(open);
    turned();
  }

  void look(Look look) {
    line.setFont(Look.letters(Look.BODY));
    line.setForeground(look.ink());
    line.setBackground(look.shade());
    line.putClientProperty("FlatLaf.style", Map.of("selectedBackground", look.line()));
  }

  /** Hears when it opens. */
  void onOpen(Runnable hearer) {
    line.addItemListener(
        event -> {
          if (isOpen()) {
            hearer.run();
          }
        });
  }

  private void turned() {
    fields.setVisible(line.isSelected());
    line.getAccessibleContext()
        .setAccessibleDescription(
            Words.say(line.isSelected() ? "desk.fold.open" : "desk.fold.shut"));
    revalidate();
  }

  private static final class Line extends JToggleButton {
    private static final long serialVersionUID = 1L;

    Line() {
      setIcon(new Arrow());
      setHorizontalAlignment(SwingConstants.LEADING);
      setIconTextGap(Look.px(2 * Look.UNIT));
    }

    @Override
    public AccessibleContext getAccessibleContext() {
      if (accessibleContext == null) {
        accessibleContext =
            new AccessibleJToggleButton() {
              private static final long serialVersionUID = 1L;

              @Override
              public AccessibleStateSet getAccessibleStateSet() {
                AccessibleStateSet states = super.getAccessibleStateSet();
                states.add(AccessibleState.EXPANDABLE);
                states.add(isSelected() ? AccessibleState.EXPANDED : AccessibleState.COLLAPSED);
                return states;
              }
            };
      }
      return accessibleContext;
    }
  }

  /** Points to the line while it is folded, and down to the fields while it is open. */
  private static final class Arrow implements Icon {
    @Override
    public void paintIcon(Component of, Graphics graphics, int x, int y) {
      Graphics2D drawing = (Graphics2D) graphics.create();
      try {
        drawing.setRenderingHint(
            RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        drawing.setColor(of.getForeground());
        drawing.translate(x, y);
        double size = getIconWidth();
        Path2D.Double arrow = new Path2D.Double();
        if (((JToggleButton) of).isSelected()) {
          arrow.moveTo(0, size / 4);
          arrow.lineTo(size, size / 4);
          arrow.lineTo(size / 2, size * 7 / 8);
        } else {
          arrow.moveTo(size / 4, 0);
          arrow.lineTo(size * 7 / 8, size / 2);
          arrow.lineTo(size / 4, size);
        }
        arrow.closePath();
        drawing.fill(arrow);
      } finally {
        drawing.dispose();
      }
    }

    @Override
    public int getIconWidth() {
      return Look.px(10);
    }

    @Override
    public int getIconHeight() {
      return getIconWidth();
    }
  }
}
