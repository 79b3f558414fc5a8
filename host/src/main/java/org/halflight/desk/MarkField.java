package org.halflight.desk;

import java.awt.event.KeyAdapter;
import java.awt.event.KeyEvent;
import java.util.function.Consumer;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import org.halflight.words.Words;

/** A line to write down an adjustment or a reason; Enter keeps it, Escape leaves it. */
final class MarkField extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final JLabel label = new JLabel(" ");
  private final JLabel keys = new JLabel(Words.say("desk.mark.keys"));
  private final JTextField field = new JTextField();

  private transient Consumer<String> taker = words -> {};

  MarkField(Look look) {
    super(new MigLayout("insets 6 26 6 20, fillx", "[][fill,grow][]"));
    field.setName("mark");
    label.setLabelFor(field);
    field.addActionListener(
        event -> {
          leave();
          taker.accept(field.getText().strip());
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
    add(keys);
    setVisible(false);
    look(look);
  }

  JTextField field() {
    return field;
  }

  /**
   * Asks for words.
   *
   * @param what they are about, as a question
   * @param known words that are there already
   * @param takes the words, which may be none
   */
  void ask(String what, String known, Consumer<String> takes) {
    taker = takes;
    label.setText(what);
    field.setText(known);
    field.selectAll();
    setVisible(true);
    revalidate();
    field.requestFocusInWindow();
  }

  @Override
  public void look(Look look) {
    setBackground(look.askGround());
    label.setFont(Look.letters(Look.BODY));
    field.setFont(Look.letters(Look.BODY));
    keys.setFont(Look.letters(Look.BODY));
  }

  private void leave() {
    setVisible(false);
    // The keys of the bench work again.
    getParent().requestFocusInWindow();
  }
}
