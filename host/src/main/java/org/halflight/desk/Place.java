package org.halflight.desk;

import java.awt.event.ActionEvent;
import javax.swing.AbstractAction;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.UserAction;
import org.jspecify.annotations.Nullable;

/** A place of the window: what fills it below the top bar. For the window's own thread. */
abstract class Place extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private static final String WHAT = "halflight.what";
  private static final String LEAVES = "leaves";

  private final UserAction key;

  /**
   * @param key that goes there
   */
  Place(UserAction key) {
    this.key = key;
    setFocusable(true);
    getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke("ESCAPE"), LEAVES);
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

  /**
   * Says in a sentence what was just done here.
   *
   * @return whether this place has room for it
   */
  boolean says(String sentence) {
    return false;
  }

  /** Pictures are shown as tables, or as pictures again. */
  void asTables(boolean on) {}

  /** Whether the keys of the bench work here too. */
  boolean acceptsBenchKeys() {
    return false;
  }

  /** The button that Enter presses wherever the focus is in this place; none where null. */
  @Nullable JButton byEnter() {
    return null;
  }

  /** Enter presses this button from now on, wherever the focus is in the window. */
  final void enterIsFor(@Nullable JButton button) {
    if (getRootPane() != null) {
      getRootPane().setDefaultButton(button);
    }
  }

  /** Escape leaves this place. */
  final void onEscape(Runnable leaving) {
    getActionMap()
        .put(
            LEAVES,
            new AbstractAction() {
              private static final long serialVersionUID = 1L;

              @Override
              public void actionPerformed(ActionEvent event) {
                leaving.run();
              }
            });
  }

  /**
   * Whether a control may be used; where it may not, it says why.
   *
   * @param why what is to be done first
   */
  static void usable(JComponent control, boolean on, String why) {
    control.setEnabled(on);
    String said = on ? (String) control.getClientProperty(WHAT) : why;
    control.setToolTipText(said);
    control.getAccessibleContext().setAccessibleDescription(said);
  }

  /** What a control does, said as long as it may be used. */
  static void does(JComponent control, String what) {
    control.putClientProperty(WHAT, what);
    control.setToolTipText(what);
    control.getAccessibleContext().setAccessibleDescription(what);
  }

  /** Components that belong together, on the ground of the place. */
  static JPanel group(MigLayout layout) {
    JPanel group = new JPanel(layout);
    group.setOpaque(false);
    return group;
  }
}
