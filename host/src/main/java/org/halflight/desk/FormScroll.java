package org.halflight.desk;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.KeyboardFocusManager;
import java.awt.Rectangle;
import java.beans.PropertyChangeEvent;
import java.beans.PropertyChangeListener;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.Scrollable;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;

/**
 * A form that is as wide as its place, and scrolls where the place is too low for it; the field
 * that has the focus is always in sight.
 */
final class FormScroll extends JScrollPane {
  private static final long serialVersionUID = 1L;

  private final transient PropertyChangeListener focus = this::focused;

  FormScroll(JComponent form) {
    super(new Sheet(form), VERTICAL_SCROLLBAR_AS_NEEDED, HORIZONTAL_SCROLLBAR_NEVER);
    setBorder(BorderFactory.createEmptyBorder());
    setOpaque(false);
    getViewport().setOpaque(false);
    getVerticalScrollBar().setUnitIncrement(Look.px(6 * Look.UNIT));
  }

  @Override
  public void addNotify() {
    super.addNotify();
    KeyboardFocusManager.getCurrentKeyboardFocusManager()
        .addPropertyChangeListener("permanentFocusOwner", focus);
  }

  @Override
  public void removeNotify() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager()
        .removePropertyChangeListener("permanentFocusOwner", focus);
    super.removeNotify();
  }

  private void focused(PropertyChangeEvent event) {
    if (event.getNewValue() instanceof JComponent field
        && SwingUtilities.isDescendingFrom(field, getViewport())) {
      reveal(field);
    }
  }

  /** Scrolls until a component is in sight. */
  static void reveal(Component component) {
    if (component instanceof JComponent inner) {
      inner.scrollRectToVisible(new Rectangle(0, 0, inner.getWidth(), inner.getHeight()));
    }
  }

  private static final class Sheet extends JPanel implements Scrollable {
    private static final long serialVersionUID = 1L;

    Sheet(JComponent form) {
      super(new MigLayout("insets 2, fill", "[fill,grow]", "[fill,grow]"));
      setOpaque(false);
      add(form, "wmin 0");
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
      return getPreferredSize();
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
      return Look.px(6 * Look.UNIT);
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
      return visible.height;
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
      return true;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
      return getParent() != null && getParent().getHeight() >= getMinimumSize().height;
    }
  }
}
