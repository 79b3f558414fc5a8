package org.halflight.desk;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JLabel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;

/** What every key does. */
final class KeysPlace extends Place {
  private static final long serialVersionUID = 1L;

  private final JLabel title = new JLabel(Words.say("desk.keys.title"));
  private final JLabel foot = new JLabel(Words.say("desk.keys.foot"));
  private final List<JLabel> labels = new ArrayList<>();
  private final transient List<UserAction> acts = List.of(UserAction.values());

  KeysPlace(Look look) {
    super(UserAction.KEYS);
    setLayout(new MigLayout("insets 26 44 20 44, gap 40 9, flowy, wrap 14", "[330::][330::]", ""));
    setName("keysPlace");
    for (UserAction act : acts) {
      JLabel label = new JLabel(Words.of("desk.keyLong", act));
      label
          .getAccessibleContext()
          .setAccessibleName(Words.say("desk.keys.spoken", label.getText(), KeyHints.keyName(act)));
      labels.add(label);
    }
    add(title, "cell 0 0 2 1, gapbottom 10");
    int rows = (labels.size() + 1) / 2;
    for (int i = 0; i < labels.size(); i++) {
      add(labels.get(i), "cell " + i / rows + " " + (1 + i % rows));
    }
    add(foot, "cell 0 " + (rows + 1) + " 2 1, gaptop 14");
    look(look);
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(2));
    title.setForeground(look.ink());
    foot.setForeground(look.quietInk());
    foot.setFont(Look.letters(1.05));
    for (int i = 0; i < labels.size(); i++) {
      labels.get(i).setFont(Look.letters(1.15));
      labels.get(i).setForeground(look.ink());
      labels.get(i).setIcon(new KeyCap(KeyHints.keyName(acts.get(i)), look, false));
      labels.get(i).setIconTextGap(Look.px(12));
    }
  }
}
