package org.halflight.desk;

import java.awt.AWTKeyStroke;
import java.awt.Component;
import java.awt.Container;
import java.awt.FocusTraversalPolicy;
import java.awt.KeyboardFocusManager;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import javax.swing.AbstractButton;
import javax.swing.DefaultButtonModel;
import javax.swing.JComboBox;
import javax.swing.JFrame;
import javax.swing.JList;
import javax.swing.JScrollBar;
import javax.swing.JSlider;
import javax.swing.JSpinner;
import javax.swing.JTabbedPane;
import javax.swing.JTable;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;

/**
 * Goes through a window by Tab as its focus policy leads, and says what a person without a mouse
 * cannot reach or not leave. For the window's own thread.
 */
final class TabWalk {
  private static final AWTKeyStroke TAB = KeyStroke.getKeyStroke("TAB");

  private TabWalk() {}

  /** The faults of what is showing, one a line. */
  static List<String> of(JFrame window) {
    FocusTraversalPolicy policy = window.getFocusTraversalPolicy();
    Set<Component> reached = Collections.newSetFromMap(new IdentityHashMap<>());
    List<String> faults = new ArrayList<>();
    for (Component at = policy.getFirstComponent(window);
        at != null && reached.add(at);
        at = policy.getComponentAfter(window, at)) {
      if (!at.getFocusTraversalKeys(KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS).contains(TAB)) {
        faults.add(LayoutFaults.name(at) + " keeps Tab to itself");
      }
    }
    unreached(window.getContentPane(), reached, faults);
    return faults;
  }

  private static void unreached(Container in, Set<Component> reached, List<String> faults) {
    for (Component each : in.getComponents()) {
      if (!each.isVisible() || each instanceof JScrollBar) {
        continue;
      }
      if (isWorked(each) && each.isEnabled() && !isReached(each, reached)) {
        faults.add(LayoutFaults.name(each) + " is not reached by Tab");
      }
      if (each instanceof Container inner
          && !(each instanceof JComboBox || each instanceof JSpinner)) {
        unreached(inner, reached, faults);
      }
    }
  }

  /** By itself, by what is within it, or, of buttons that exclude each other, by its neighbour. */
  private static boolean isReached(Component each, Set<Component> reached) {
    if (each instanceof AbstractButton button
        && button.getModel() instanceof DefaultButtonModel model
        && model.getGroup() != null
        && Collections.list(model.getGroup().getElements()).stream().anyMatch(reached::contains)) {
      return true;
    }
    return reached.stream().anyMatch(one -> SwingUtilities.isDescendingFrom(one, each));
  }

  /** What a person does something with; text that is only read is read aloud otherwise. */
  private static boolean isWorked(Component each) {
    return each instanceof AbstractButton
        || (each instanceof JTextComponent text && text.isEditable())
        || each instanceof JComboBox
        || (each instanceof JTable table && table.getRowCount() > 0)
        || each instanceof JList
        || each instanceof JSlider
        || each instanceof JSpinner
        || each instanceof JTabbedPane;
  }
}
