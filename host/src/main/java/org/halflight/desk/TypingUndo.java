package org.halflight.desk;

import java.awt.KeyboardFocusManager;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.beans.PropertyChangeListener;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import javax.swing.text.JTextComponent;
import javax.swing.undo.UndoManager;

/**
 * Ctrl+Z in a text field undoes what was typed there since the field has the focus. For the
 * window's own thread.
 */
final class TypingUndo {
  private static final String PROPERTY = "focusOwner";
  private static final String MANAGER = TypingUndo.class.getName();

  private final PropertyChangeListener focus =
      event -> {
        if (event.getNewValue() instanceof JTextComponent field && field.isEditable()) {
          begins(field);
        }
      };

  void install() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager()
        .addPropertyChangeListener(PROPERTY, focus);
  }

  void remove() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager()
        .removePropertyChangeListener(PROPERTY, focus);
  }

  /** From now on what is typed in a field can be undone, and what it held before cannot. */
  static void begins(JTextComponent field) {
    if (field.getClientProperty(MANAGER) instanceof UndoManager known) {
      known.discardAllEdits();
      return;
    }
    UndoManager typed = new UndoManager();
    field.putClientProperty(MANAGER, typed);
    field.getDocument().addUndoableEditListener(typed);
    for (int control : new int[] {InputEvent.CTRL_DOWN_MASK, InputEvent.META_DOWN_MASK}) {
      bind(field, KeyEvent.VK_Z, control, () -> turn(typed, false));
      bind(field, KeyEvent.VK_Z, control | InputEvent.SHIFT_DOWN_MASK, () -> turn(typed, true));
      bind(field, KeyEvent.VK_Y, control, () -> turn(typed, true));
    }
  }

  private static void turn(UndoManager typed, boolean redo) {
    if (redo && typed.canRedo()) {
      typed.redo();
    } else if (!redo && typed.canUndo()) {
      typed.undo();
    }
  }

  private static void bind(JTextComponent field, int key, int modifiers, Runnable doing) {
    BoundKey.does(field, JComponent.WHEN_FOCUSED, KeyStroke.getKeyStroke(key, modifiers), doing);
  }
}
