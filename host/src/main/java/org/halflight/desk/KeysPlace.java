package org.halflight.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.swing.JLabel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.KeyMap;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;

/** What every key does; here the pedal is learnt and each kind of sound is switched. */
final class KeysPlace extends Place {
  private static final long serialVersionUID = 1L;

  private static final int COLUMNS = 3;

  private final JLabel title = new JLabel(Words.say("desk.keys.title"));
  private final JLabel foot = new JLabel(Words.say("desk.keys.foot"));
  private final JLabel pad = new JLabel(Words.say("desk.keys.pad", padKeys()));
  private final PedalPanel pedal;
  private final SoundsPanel sounds;
  private final List<JLabel> headings = new ArrayList<>();
  private final List<JLabel> labels = new ArrayList<>();
  private final transient List<UserAction> acts = List.of(UserAction.values());
  private final transient Runnable onLeft;

  /**
   * @param onLeft hears that this place is left
   */
  KeysPlace(Look look, PedalPanel pedal, SoundsPanel sounds, Runnable onLeft) {
    super(UserAction.KEYS);
    this.pedal = pedal;
    this.sounds = sounds;
    this.onLeft = onLeft;
    setLayout(new MigLayout("insets 16 30 10 30, gap 22 4", "[][][]", ""));
    setName("keysPlace");
    for (UserAction act : acts) {
      JLabel label = new JLabel(Words.of("desk.keyLong", act));
      label
          .getAccessibleContext()
          .setAccessibleName(Words.say("desk.keys.spoken", label.getText(), KeyHints.keyName(act)));
      labels.add(label);
    }
    add(title, "cell 0 0 3 1, gapbottom 4");
    int rows = (labels.size() + COLUMNS - 1) / COLUMNS;
    for (int i = 0; i < labels.size(); i++) {
      add(labels.get(i), "wmin 0, cell " + i / rows + " " + (1 + i % rows));
    }
    add(pad, "newline, span, wmin 0, gaptop 8");
    add(heading("desk.pedal.title"), "newline, span, gaptop 8");
    add(pedal, "newline, span");
    add(heading("desk.sounds.title"), "newline, span, gaptop 8");
    add(sounds, "newline, span");
    add(foot, "newline, span, wmin 0, gaptop 8");
    look(look);
  }

  private JLabel heading(String key) {
    JLabel heading = new JLabel(Words.say(key));
    headings.add(heading);
    return heading;
  }

  private static String padKeys() {
    return KeyMap.ofPad().entrySet().stream()
        .map(
            key ->
                Words.say(
                    "desk.keys.padKey",
                    key.getKey().equals("ENTER") ? Words.say("desk.keyName.enter") : key.getKey(),
                    KeyHints.words(key.getValue())))
        .collect(Collectors.joining(Words.say("desk.keys.padJoint")));
  }

  @Override
  void isLeft() {
    onLeft.run();
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(1.8));
    title.setForeground(look.ink());
    for (JLabel heading : headings) {
      heading.setFont(Look.bold(1.2));
      heading.setForeground(look.ink());
    }
    pad.setForeground(look.ink());
    pad.setFont(Look.letters(1.05));
    foot.setForeground(look.quietInk());
    foot.setFont(Look.letters(1));
    pedal.look(look);
    sounds.look(look);
    for (int i = 0; i < labels.size(); i++) {
      labels.get(i).setFont(Look.letters(1));
      labels.get(i).setForeground(look.ink());
      labels.get(i).setIcon(new KeyCap(KeyHints.keyName(acts.get(i)), look, false));
      labels.get(i).setIconTextGap(Look.px(10));
    }
  }
}
