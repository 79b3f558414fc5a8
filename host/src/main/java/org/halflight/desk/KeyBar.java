package org.halflight.desk;

import java.awt.Dimension;
import java.awt.FlowLayout;
import java.awt.Insets;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;

/**
 * The keys of the moment, quietly; each can be clicked as well. Where they do not all fit, those
 * before the last go: the last one lists them all.
 */
final class KeyBar extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private static final double LEAST_MM = 12;

  private final transient Consumer<UserAction> acts;
  private final String title;
  private transient Look look;
  private transient List<KeyHints.Hint> hints = List.of();

  /**
   * @param title what all of its keys are about, before them; may be empty
   */
  KeyBar(Look look, String title, Consumer<UserAction> acts) {
    super(new FlowLayout(FlowLayout.LEADING, Look.px(2), 0));
    this.look = look;
    this.title = title;
    this.acts = acts;
    setName("keyBar");
    getAccessibleContext().setAccessibleName(Words.say("desk.keys.name"));
    look(look);
  }

  void show(List<KeyHints.Hint> shown) {
    if (!shown.equals(hints)) {
      hints = List.copyOf(shown);
      fill();
    }
  }

  @Override
  public void look(Look another) {
    look = another;
    setBackground(look.ground());
    setBorder(
        BorderFactory.createCompoundBorder(
            BorderFactory.createMatteBorder(1, 0, 0, 0, look.line()),
            BorderFactory.createEmptyBorder(Look.px(3), Look.px(10), Look.px(3), Look.px(10))));
    fill();
  }

  private void fill() {
    removeAll();
    setVisible(!hints.isEmpty());
    if (!title.isEmpty()) {
      JLabel said = new JLabel(title);
      said.setForeground(look.ink());
      add(said);
    }
    for (KeyHints.Hint hint : hints) {
      JButton button = new CapButton(hint.words(), new KeyCap(hint.key(), look, hint.answers()));
      button.setName("key." + hint.act());
      button.putClientProperty("JButton.buttonType", "toolBarButton");
      button.setForeground(hint.answers() ? look.ink() : look.quietInk());
      button.setIconTextGap(Look.px(2));
      button.setHorizontalTextPosition(SwingConstants.CENTER);
      button.setVerticalTextPosition(SwingConstants.BOTTOM);
      button.setMargin(new Insets(Look.px(1), Look.px(4), Look.px(1), Look.px(4)));
      button
          .getAccessibleContext()
          .setAccessibleName(Words.say("desk.keys.spoken", hint.words(), hint.key()));
      button.addActionListener(event -> acts.accept(hint.act()));
      add(button);
    }
    revalidate();
    repaint();
  }

  /** Large enough for a hand with a tool in it. */
  private static final class CapButton extends JButton {
    private static final long serialVersionUID = 1L;

    private CapButton(String words, KeyCap cap) {
      super(words, cap);
    }

    @Override
    public Dimension getPreferredSize() {
      int least = Look.mm(this, LEAST_MM) + 1;
      Dimension size = super.getPreferredSize();
      return new Dimension(Math.max(least, size.width), Math.max(least, size.height));
    }
  }

  @Override
  public void doLayout() {
    int room = getWidth() - getInsets().left - getInsets().right - Look.px(2);
    int last = getComponentCount() - 1;
    for (int i = 0; i <= last; i++) {
      getComponent(i).setVisible(true);
      room -= getComponent(i).getPreferredSize().width + Look.px(2);
    }
    for (int i = last - 1; i >= 0 && room < 0; i--) {
      getComponent(i).setVisible(false);
      room += getComponent(i).getPreferredSize().width + Look.px(2);
    }
    super.doLayout();
  }
}
