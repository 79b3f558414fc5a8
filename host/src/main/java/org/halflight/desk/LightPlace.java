package org.halflight.desk;

import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.LightText;
import org.halflight.desk.view.LightView;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;

/** Aiming and setting the light: a meter, three lamps, one sentence at a time. */
final class LightPlace extends Place {
  private static final long serialVersionUID = 1L;

  private final transient Consumer<Boolean> onMeter;
  private final MeterPanel meter;
  private final AimLamps lamps;
  private final ReadOnlyText sentence =
      new ReadOnlyText("lightSentence", Words.say("desk.light.name"));
  private final ReadOnlyText hint = new ReadOnlyText("lightHint", Words.say("desk.light.hintName"));
  private final JLabel mode = new JLabel();
  private final JProgressBar progress = new JProgressBar(0, 100);
  private final JButton set = new JButton(Words.say("desk.light.set"));
  private final JButton open = new JButton(Words.say("desk.light.isOpen"));
  private final JButton again = new JButton(Words.say("desk.light.aim"));
  private final JButton screen = new JButton(Words.say("desk.light.checkScreen"));
  private boolean isSet;
  private boolean isUnderWay;

  /**
   * @param acts does what a button is for
   * @param onMeter hears whether the meter is in sight
   * @param onOpen hears that the shutter is open, as was asked for
   */
  LightPlace(Look look, Consumer<UserAction> acts, Consumer<Boolean> onMeter, Runnable onOpen) {
    super(UserAction.TO_LIGHT);
    this.onMeter = onMeter;
    meter = new MeterPanel(look);
    lamps = new AimLamps(look);
    setLayout(
        new MigLayout(
            "insets 20 30 20 30, wrap 2, gap 20 14", "[fill, grow][]", "[][][][][][]push"));
    set.setName("setLight");
    open.setName("shutterIsOpen");
    again.setName("aimLight");
    screen.setName("checkScreen");
    mode.setName("lightMode");
    open.addActionListener(event -> onOpen.run());
    does(set, UserAction.SET_LIGHT, acts);
    does(again, UserAction.AIM_LIGHT, acts);
    does(screen, UserAction.CHECK_SCREEN, acts);
    progress.getAccessibleContext().setAccessibleName(Words.say("desk.light.progress"));
    add(meter, "grow, aligny top");
    add(lamps, "aligny top");
    add(mode, "span 2");
    add(sentence, "span 2, grow, wmin 200");
    add(progress, "span 2, h 10!");
    JPanel buttons = group(new MigLayout("insets 4 0 4 4, gap 10"));
    for (JButton each : new JButton[] {set, open, again, screen}) {
      buttons.add(each, "hmin " + Look.px(40));
    }
    add(buttons, "span 2");
    add(hint, "span 2, grow, wmin 200");
    look(look);
  }

  private static void does(JButton button, UserAction act, Consumer<UserAction> acts) {
    button.addActionListener(event -> acts.accept(act));
  }

  @Override
  void comesUp() {
    onMeter.accept(true);
  }

  @Override
  void isLeft() {
    onMeter.accept(false);
  }

  @Override
  void show(BenchView view) {
    LightView light = view.light();
    LightText text = LightText.of(view);
    isSet = light.set().isPresent();
    isUnderWay = light.isUnderWay();
    if (isShowing()) {
      if (light.aim().isEmpty()) {
        // Another rig is on the bench than when this place came up.
        onMeter.accept(true);
      }
      meter.show(light.aim());
      lamps.show(light.aim());
    }
    mode.setText(text.mode());
    sentence.say(text.sentence());
    hint.say(String.join("\n\n", text.remarks()));
    progress.setValue((int) Math.round(100 * light.prompt().progress()));
    progress.setVisible(light.isUnderWay() && !light.isAsking());
    boolean hadFocus = set.isFocusOwner() || again.isFocusOwner() || open.isFocusOwner();
    set.setEnabled(text.maySet());
    again.setEnabled(text.mayAim());
    screen.setEnabled(text.mayCheckScreen());
    boolean turns = light.isAsking() && !open.isEnabled();
    open.setEnabled(light.isAsking());
    if (turns && isShowing()) {
      open.requestFocusInWindow();
    } else if (hadFocus
        && !(set.isFocusOwner() ? set : open.isFocusOwner() ? open : again).isEnabled()) {
      // Else the focus would go on by itself, out of this place.
      requestFocusInWindow();
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
    meter.look(look);
    lamps.look(look);
    mode.setFont(Look.letters(Look.BODY));
    mode.setForeground(look.quietInk());
    sentence.setFont(Look.bold(2.7));
    sentence.setForeground(look.ink());
    sentence.setBackground(look.ground());
    sentence.setBorder(null);
    hint.setBorder(null);
    hint.setFont(Look.letters(Look.LEAD));
    hint.setForeground(look.ink());
    hint.setBackground(look.ground());
    for (JButton each : new JButton[] {set, open, again, screen}) {
      each.setFont(Look.letters(Look.LEAD));
    }
  }
}
