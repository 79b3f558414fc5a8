package org.halflight.desk;

import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import org.halflight.words.Words;

/** A question within the window: Enter says yes, Escape says no, and everything else goes on. */
final class AskPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final ReadOnlyText sentence = new ReadOnlyText("askSentence", Words.say("desk.ask.name"));
  private final JButton yes = new JButton();
  private final JButton no = new JButton(Words.say("desk.ask.no"));
  private transient Runnable doing = () -> {};
  private transient Runnable after = () -> {};

  AskPanel() {
    super(new MigLayout("insets 6 0 6 0, fillx, gap 10 6", "[][][grow]"));
    setOpaque(false);
    yes.setName("askYes");
    no.setName("askNo");
    add(sentence, "span, growx, wmin 100, wrap");
    add(yes);
    add(no);
    yes.addActionListener(event -> answer(true));
    no.addActionListener(event -> answer(false));
    key("ESCAPE", () -> answer(false));
    key("ENTER", () -> answer(!no.isFocusOwner()));
    setVisible(false);
  }

  /**
   * Asks.
   *
   * @param yesWords what the button says that does it
   * @param doing is done where the answer is yes
   * @param after is done then, whatever the answer is
   */
  void ask(String question, String yesWords, Runnable doing, Runnable after) {
    this.doing = doing;
    this.after = after;
    sentence.say(question);
    yes.setText(yesWords);
    yes.getAccessibleContext().setAccessibleDescription(question);
    setVisible(true);
    revalidate();
    yes.requestFocusInWindow();
  }

  /** Nobody answers any more. */
  void close() {
    setVisible(false);
  }

  private void answer(boolean said) {
    if (isVisible()) {
      setVisible(false);
      if (said) {
        doing.run();
      }
      after.run();
    }
  }

  private void key(String stroke, Runnable pressed) {
    BoundKey.does(
        this, WHEN_ANCESTOR_OF_FOCUSED_COMPONENT, KeyStroke.getKeyStroke(stroke), pressed);
  }

  @Override
  public void look(Look look) {
    sentence.setBorder(null);
    sentence.setBackground(look.ground());
    sentence.setForeground(look.ink());
    sentence.setFont(Look.letters(Look.BODY));
  }
}
