package org.halflight.desk;

import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.UserAction;

/** A place of the window: what fills it below the top bar. For the window's own thread. */
abstract class Place extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final UserAction key;

  /**
   * @param key that goes there
   */
  Place(UserAction key) {
    this.key = key;
    setFocusable(true);
  }

  /** The key that goes there. */
  final UserAction key() {
    return key;
  }

  /** What is to have the focus when this place comes up. */
  JComponent first() {
    return this;
  }

  /** It comes on the screen, or is asked for once more. */
  void comesUp() {}

  /** Another place comes on the screen. */
  void isLeft() {}

  /** There is something new at the bench. */
  void show(BenchView view) {}

  /**
   * Presses the button that goes on here, for the pedal.
   *
   * @return whether there is one to press
   */
  boolean goOn() {
    return false;
  }

  /** What was just done here, in a sentence, where this place has room for one. */
  void says(String sentence) {}

  /** Pictures are shown as tables, or as pictures again. */
  void asTables(boolean on) {}

  /** Whether the keys of the bench work here too. */
  boolean acceptsBenchKeys() {
    return false;
  }

  /** Components that belong together, on the ground of the place. */
  static JPanel group(MigLayout layout) {
    JPanel group = new JPanel(layout);
    group.setOpaque(false);
    return group;
  }
}
