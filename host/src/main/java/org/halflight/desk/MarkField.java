package org.halflight.desk;

import java.awt.event.KeyAdapter;
import java.awt.event.KeyEvent;
import java.util.function.Consumer;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import org.halflight.words.Words;

/** A line to write down an adjustment; Enter marks it, Escape leaves it. */
final class MarkField extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final JLabel label = new JLabel(Words.say("desk.mark.what"));
  private final JTextField field = new JTextField();

  MarkField(Look look, Consumer<String> marks) {
    super(new MigLayout("insets 6 26 6 20, fillx", "[][fill,grow]"));
    field.setName("mark");
    label.setLabelFor(field);
    field.addActionListener(
        event -> {
          String words = field.getText().strip();
          leave();
          marks.accept(words.isEmpty() ? Words.say("desk.mark.noWords") : words);
        });
    field.addKeyListener(
        new KeyAdapter() {
          @Override
          public void keyPressed(KeyEvent event) {
            if (event.getKeyCode() == KeyEvent.VK_ESCAPE) {
              leave();
            }
          }
        });
    add(label);
    add(field);
    setVisible(false);
    look(look);
  }

  JTextField field() {
    return field;
  }

  void ask() {
    field.setText("");
    setVisible(true);
    revalidate();
    field.requestFocusInWindow();
  }

  @Override
  public void look(Look look) {
    setBackground(look.askGround());
    label.setFont(Look.letters(1.1));
    field.setFont(Look.letters(1.1));
  }

  private void leave() {
    setVisible(false);
    // The keys of the bench work again.
    getParent().requestFocusInWindow();
  }
}
