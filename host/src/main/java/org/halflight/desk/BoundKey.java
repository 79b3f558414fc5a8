package org.halflight.desk;

import java.awt.event.ActionEvent;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;

/** What a key does in a component, whatever it did there before. For the window's own thread. */
final class BoundKey {
  private BoundKey() {}

  /**
   * Has a key do something from now on.
   *
   * @param condition where the focus is then: one of the conditions of {@link JComponent}
   */
  static void does(JComponent component, int condition, KeyStroke stroke, Runnable doing) {
    component.getInputMap(condition).put(stroke, stroke);
    component
        .getActionMap()
        .put(
            stroke,
            new AbstractAction() {
              private static final long serialVersionUID = 1L;

              @Override
              public void actionPerformed(ActionEvent event) {
                doing.run();
              }
            });
  }
}
