package org.halflight.desk;

import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.LightView;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;

/** Setting the light, led by one sentence at a time. */
final class LightPlace extends Place {
  private static final long serialVersionUID = 1L;

  private final JLabel title = new JLabel(Words.say("desk.light.title"));
  private final ReadOnlyText sentence =
      new ReadOnlyText("lightSentence", Words.say("desk.light.name"));
  private final ReadOnlyText hint = new ReadOnlyText("lightHint", Words.say("desk.light.hintName"));
  private final JProgressBar progress = new JProgressBar(0, 100);
  private final JButton set = new JButton(Words.say("desk.light.set"));
  private final JButton open = new JButton(Words.say("desk.light.isOpen"));
  private boolean isSet;
  private boolean isUnderWay;

  LightPlace(Look look, Runnable onSet, Runnable onOpen) {
    super(UserAction.TO_LIGHT);
    setLayout(new MigLayout("insets 40 60 30 60, wrap 1, gap 18", "[fill, 300:900:1000]", ""));
    set.setName("setLight");
    open.setName("shutterIsOpen");
    set.addActionListener(event -> onSet.run());
    open.addActionListener(event -> onOpen.run());
    progress.getAccessibleContext().setAccessibleName(Words.say("desk.light.progress"));
    add(title);
    add(sentence);
    add(progress, "h 10!");
    JPanel buttons = group(new MigLayout("insets 4 0 4 4"));
    buttons.add(set);
    buttons.add(open, "gapleft 10");
    add(buttons);
    add(hint, "gaptop 20");
    look(look);
  }

  @Override
  void show(BenchView view) {
    LightView light = view.light();
    isSet = light.set().isPresent();
    isUnderWay = light.isUnderWay();
    String asked = light.prompt().sentence();
    sentence.say(light.isAsking() ? Words.say("desk.light.space", asked) : asked);
    hint.say(Words.say(view.link().isPractice() ? "desk.light.hint.practice" : "desk.light.hint"));
    progress.setValue((int) Math.round(100 * light.prompt().progress()));
    progress.setVisible(light.isUnderWay() && !light.isAsking());
    set.setEnabled(view.link().isUp() && !light.isUnderWay());
    boolean turns = light.isAsking() && !open.isEnabled();
    open.setEnabled(light.isAsking());
    if (turns && isShowing()) {
      open.requestFocusInWindow();
    }
  }

  /** A light that is set already is not set again by a foot; while it is read there is no act. */
  @Override
  boolean goOn() {
    if (open.isEnabled() || (set.isEnabled() && !isSet)) {
      first().doClick(0);
      return true;
    }
    return isUnderWay;
  }

  /** The button that is to have the focus when this place comes up. */
  @Override
  JButton first() {
    return open.isEnabled() ? open : set;
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(2));
    title.setForeground(look.ink());
    sentence.setFont(Look.letters(1.9));
    sentence.setForeground(look.ink());
    sentence.setBackground(look.ground());
    sentence.setBorder(null);
    hint.setBorder(null);
    hint.setFont(Look.letters(1.1));
    hint.setForeground(look.quietInk());
    hint.setBackground(look.ground());
    set.setFont(Look.letters(1.2));
    open.setFont(Look.letters(1.2));
  }
}
