package org.halflight.desk;

import java.awt.Component;
import java.awt.KeyEventDispatcher;
import java.awt.KeyboardFocusManager;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.awt.event.WindowFocusListener;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javax.swing.AbstractButton;
import javax.swing.JFrame;
import javax.swing.JTable;
import javax.swing.MenuSelectionManager;
import javax.swing.text.JTextComponent;
import org.halflight.desk.view.HeldKeys;
import org.halflight.desk.view.KeyMap;
import org.halflight.desk.view.UserAction;

/** Hears every key of the window before whatever has the focus does. */
final class DeskKeys implements KeyEventDispatcher {
  private static final Set<String> OF_TABLES = Set.of("LEFT", "RIGHT", "ENTER");

  private final JFrame window;
  private final BooleanSupplier atBench;
  private final BooleanSupplier practice;
  private final Consumer<UserAction> acts;
  private final PedalKeys pedal;
  private final HeldKeys held = new HeldKeys();
  private final WindowFocusListener focus =
      new WindowAdapter() {
        @Override
        public void windowLostFocus(WindowEvent event) {
          held.forget();
        }
      };

  private boolean swallow;

  /** The key that did something and is held down: what it repeats is for nobody. */
  private int eaten = KeyEvent.VK_UNDEFINED;

  DeskKeys(
      JFrame window,
      BooleanSupplier atBench,
      BooleanSupplier practice,
      Consumer<UserAction> acts,
      PedalKeys pedal) {
    this.window = window;
    this.pedal = pedal;
    this.atBench = atBench;
    this.practice = practice;
    this.acts = acts;
  }

  void install() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager().addKeyEventDispatcher(this);
    window.addWindowFocusListener(focus);
  }

  void remove() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager().removeKeyEventDispatcher(this);
    window.removeWindowFocusListener(focus);
  }

  @Override
  public boolean dispatchKeyEvent(KeyEvent event) {
    if (event.getID() == KeyEvent.KEY_TYPED) {
      return swallow;
    }
    if (event.getID() == KeyEvent.KEY_RELEASED) {
      held.released(event.getKeyCode(), event.getWhen());
      boolean was = swallow;
      swallow = false;
      return was;
    }
    boolean anew = held.pressed(event.getKeyCode(), event.getWhen());
    swallow = false;
    Optional<UserAction> act = act(event, anew);
    boolean acts = anew ? act.isPresent() : act.filter(KeyMap::repeats).isPresent();
    if (anew) {
      eaten = act.isPresent() || swallow ? event.getKeyCode() : KeyEvent.VK_UNDEFINED;
    }
    if (acts) {
      this.acts.accept(act.orElseThrow());
    }
    swallow |= act.isPresent() || (!anew && eaten == event.getKeyCode());
    return swallow;
  }

  private Optional<UserAction> act(KeyEvent event, boolean anew) {
    boolean withOthers =
        (event.getModifiersEx() & (InputEvent.ALT_DOWN_MASK | InputEvent.ALT_GRAPH_DOWN_MASK)) != 0;
    boolean inMenu = MenuSelectionManager.defaultManager().getSelectedPath().length > 0;
    if (withOthers || inMenu || !window.isFocused()) {
      return Optional.empty();
    }
    Component focus = KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
    boolean typing = focus instanceof JTextComponent text && text.isEditable();
    if (pedal.pressed(event, anew, typing)) {
      swallow = true;
      return Optional.empty();
    }
    String key = name(event);
    if (OF_TABLES.contains(key) && focus instanceof JTable) {
      return Optional.empty();
    }
    if (key.equals("ENTER") && focus instanceof AbstractButton button && atBench.getAsBoolean()) {
      // The space bar belongs to the firing, so Enter presses buttons here.
      if (anew) {
        button.doClick();
      }
      swallow = true;
      return Optional.empty();
    }
    return KeyMap.act(key, atBench.getAsBoolean(), typing, practice.getAsBoolean());
  }

  /** What {@link KeyMap} calls a key, with those that are held down. */
  static String name(KeyEvent event) {
    int modifiers = event.getModifiersEx();
    boolean shift = (modifiers & InputEvent.SHIFT_DOWN_MASK) != 0;
    return (isWithControl(event) ? shift ? "CTRL+SHIFT+" : "CTRL+" : "") + bareName(event);
  }

  static boolean isWithControl(KeyEvent event) {
    int control = InputEvent.CTRL_DOWN_MASK | InputEvent.META_DOWN_MASK;
    return (event.getModifiersEx() & control) != 0;
  }

  /** The same without those that are held down. */
  static String bareName(KeyEvent event) {
    if (event.getKeyLocation() == KeyEvent.KEY_LOCATION_NUMPAD) {
      return padName(event.getKeyCode());
    }
    return switch (event.getKeyCode()) {
      case KeyEvent.VK_TAB -> "TAB";
      case KeyEvent.VK_ESCAPE -> "ESCAPE";
      case KeyEvent.VK_UP -> "UP";
      case KeyEvent.VK_DOWN -> "DOWN";
      case KeyEvent.VK_PAGE_UP -> "PAGE UP";
      case KeyEvent.VK_PAGE_DOWN -> "PAGE DOWN";
      case KeyEvent.VK_SHIFT -> "SHIFT";
      case KeyEvent.VK_CONTROL -> "CTRL";
      case KeyEvent.VK_ALT, KeyEvent.VK_ALT_GRAPH -> "ALT";
      case KeyEvent.VK_META, KeyEvent.VK_WINDOWS -> "META";
      case KeyEvent.VK_SPACE -> "SPACE";
      case KeyEvent.VK_BACK_SPACE -> "BACKSPACE";
      case KeyEvent.VK_ENTER -> "ENTER";
      case KeyEvent.VK_LEFT -> "LEFT";
      case KeyEvent.VK_RIGHT -> "RIGHT";
      default -> {
        int code = event.getKeyCode();
        if (code >= KeyEvent.VK_F1 && code <= KeyEvent.VK_F12) {
          yield "F" + (code - KeyEvent.VK_F1 + 1);
        }
        boolean plain =
            (code >= KeyEvent.VK_A && code <= KeyEvent.VK_Z)
                || (code >= KeyEvent.VK_0 && code <= KeyEvent.VK_9);
        yield plain ? String.valueOf((char) code) : "";
      }
    };
  }

  /** What is printed on a key of the number pad, whatever NumLock makes of it. */
  private static String padName(int code) {
    String printed =
        switch (code) {
          case KeyEvent.VK_ENTER -> "ENTER";
          case KeyEvent.VK_ADD -> "+";
          case KeyEvent.VK_SUBTRACT -> "-";
          case KeyEvent.VK_MULTIPLY -> "*";
          case KeyEvent.VK_DIVIDE -> "/";
          case KeyEvent.VK_DECIMAL, KeyEvent.VK_SEPARATOR, KeyEvent.VK_DELETE -> ".";
          case KeyEvent.VK_NUMPAD0, KeyEvent.VK_INSERT -> "0";
          case KeyEvent.VK_NUMPAD1, KeyEvent.VK_END -> "1";
          default -> "";
        };
    return printed.isEmpty() ? "" : KeyMap.PAD_KEY + printed;
  }
}
