package org.halflight.desk;

import java.awt.BorderLayout;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.KeyMap;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;

/** What every key does; here the pedal is learnt and each kind of sound is switched. */
final class KeysPlace extends Place {
  private static final long serialVersionUID = 1L;

  private static final int MOST_COLUMNS = 3;

  /** As wide as its longest line. */
  private static final int COLUMN_WIDTH = 440;

  private static final int ALL = 99;

  private final JLabel title = new JLabel(Words.say("desk.keys.title"));
  private final JLabel foot = new JLabel(Words.say("desk.keys.foot"));
  private final Map<String, JLabel> pad = new LinkedHashMap<>();
  private final transient MigLayout padLayout = new MigLayout("insets 0, gap 14 4");
  private final PedalPanel pedal;
  private final SoundsPanel sounds;
  private final List<JLabel> headings = new ArrayList<>();
  private final List<JLabel> labels = new ArrayList<>();
  private final transient MigLayout listLayout = new MigLayout("insets 0, gap 18 1");
  private final JPanel list = group(listLayout);
  private final transient List<UserAction> acts =
      Arrays.stream(UserAction.values())
          .sorted(Comparator.comparingInt(KeysPlace::placeInList))
          .toList();
  private transient List<JLabel> listed = List.of();
  private final transient Runnable onLeft;

  /**
   * @param onLeft hears that this place is left
   */
  KeysPlace(Look look, PedalPanel pedal, SoundsPanel sounds, Runnable onLeft) {
    super(UserAction.KEYS);
    this.pedal = pedal;
    this.sounds = sounds;
    this.onLeft = onLeft;
    setLayout(new BorderLayout());
    setName("keysPlace");
    JPanel page = group(new MigLayout("insets 8 30 4 30, gap 18 2", "[fill,grow]", ""));
    add(new FormScroll(page));
    addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent event) {
            boolean narrow = getWidth() < Look.px(MOST_COLUMNS * COLUMN_WIDTH);
            padLayout.setLayoutConstraints("insets 0, gap 14 4, wrap " + (narrow ? 6 : ALL));
            pedal.narrow(narrow);
            list(listed);
          }
        });
    for (UserAction act : acts) {
      JLabel label = new JLabel(Words.of("desk.keyLong", act));
      label
          .getAccessibleContext()
          .setAccessibleName(Words.say("desk.keys.spoken", label.getText(), KeyHints.keyName(act)));
      labels.add(label);
    }
    list.setName("keyList");
    list(labels);
    page.add(title, "gapbottom 4");
    page.add(list, "newline");
    page.add(heading("desk.keys.pad"), "newline, span, gaptop 6");
    page.add(padKeys(), "newline, span");
    page.add(heading("desk.pedal.title"), "newline, span, gaptop 6");
    page.add(pedal, "newline, span");
    page.add(heading("desk.sounds.title"), "newline, span, gaptop 6");
    page.add(sounds, "newline, span");
    page.add(foot, "newline, span, wmin 0, gaptop 6");
    look(look);
  }

  /** The keys of the places come last, by their numbers. */
  private static int placeInList(UserAction act) {
    String key = KeyHints.keyName(act);
    return key.matches("F\\d+") ? Integer.parseInt(key.substring(1)) : 0;
  }

  /** Lists keys column by column. */
  private void list(List<JLabel> shown) {
    listed = shown;
    list.removeAll();
    int columns = Math.max(1, Math.min(MOST_COLUMNS, getWidth() / Look.px(COLUMN_WIDTH)));
    listLayout.setColumnConstraints("[sg,grow]".repeat(columns));
    int rows = (shown.size() + columns - 1) / columns;
    for (int i = 0; i < shown.size(); i++) {
      list.add(shown.get(i), "wmin 0, cell " + i / rows + " " + i % rows);
    }
    list.revalidate();
    list.repaint();
  }

  private JLabel heading(String key) {
    JLabel heading = new JLabel(Words.say(key));
    headings.add(heading);
    return heading;
  }

  private JPanel padKeys() {
    JPanel panel = group(padLayout);
    KeyMap.ofPad()
        .forEach(
            (printed, act) -> {
              String name = printed.equals("ENTER") ? Words.say("desk.keyName.enter") : printed;
              JLabel label = new JLabel(KeyHints.words(act));
              label
                  .getAccessibleContext()
                  .setAccessibleName(Words.say("desk.keys.padSpoken", label.getText(), name));
              pad.put(name, label);
              panel.add(label);
            });
    return panel;
  }

  /** Keys that mean something only at times are listed then. */
  @Override
  void show(BenchView view) {
    List<JLabel> offered = new ArrayList<>();
    for (int i = 0; i < acts.size(); i++) {
      if (KeyHints.isOffered(acts.get(i), view)) {
        offered.add(labels.get(i));
      }
    }
    if (offered.size() != listed.size()) {
      list(offered);
    }
  }

  @Override
  void isLeft() {
    onLeft.run();
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(Look.TITLE));
    title.setForeground(look.ink());
    for (JLabel heading : headings) {
      heading.setFont(Look.bold(Look.LEAD));
      heading.setForeground(look.ink());
    }
    pad.forEach((name, label) -> dress(label, name, look));
    foot.setForeground(look.quietInk());
    foot.setFont(Look.letters(Look.BODY));
    pedal.look(look);
    sounds.look(look);
    for (int i = 0; i < labels.size(); i++) {
      dress(labels.get(i), KeyHints.keyName(acts.get(i)), look);
    }
  }

  private static void dress(JLabel label, String key, Look look) {
    label.setFont(Look.letters(Look.NOTE));
    label.setForeground(look.ink());
    label.setIcon(new KeyCap(key, look, false));
    label.setIconTextGap(Look.px(8));
  }
}
