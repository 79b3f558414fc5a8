package org.halflight.desk;

import java.awt.Component;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.KeyStroke;
import org.halflight.session.RunPlan;
import org.halflight.words.Words;

/** How many firings of each speed are planned: one of those offered, or any that is typed. */
final class PlanBox extends JComboBox<String> {
  private static final long serialVersionUID = 1;
  private static final String LOOK = String.valueOf(RunPlan.OFFERED.get(0));

  PlanBox(int planned) {
    super(RunPlan.OFFERED.stream().map(String::valueOf).toArray(String[]::new));
    setEditable(true);
    setSelectedItem(String.valueOf(planned));
    setToolTipText(Words.say("desk.run.firings.offered"));
    getAccessibleContext().setAccessibleDescription(Words.say("desk.run.firings.offered"));
    if (getEditor().getEditorComponent() instanceof JComponent typed) {
      // Enter is for the form, as in every other field.
      typed.getInputMap().put(KeyStroke.getKeyStroke("ENTER"), "none");
    }
    setRenderer(
        new DefaultListCellRenderer() {
          private static final long serialVersionUID = 1;

          @Override
          public Component getListCellRendererComponent(
              JList<?> list, Object value, int index, boolean selected, boolean focused) {
            return super.getListCellRendererComponent(
                list,
                LOOK.equals(value) ? Words.say("desk.run.firings.look", value) : value,
                index,
                selected,
                focused);
          }
        });
  }

  /** Plans another number. */
  void plan(int firings) {
    setSelectedItem(String.valueOf(firings));
  }

  /** The number; 0 where what is typed is none. */
  int planned() {
    try {
      return Integer.parseInt(String.valueOf(getEditor().getItem()).strip());
    } catch (NumberFormatException typed) {
      return 0;
    }
  }
}
