package org.halflight.desk;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.LinkText;
import org.halflight.desk.view.UserAction;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/** Where to go, and how things stand with the rig; on every screen. */
final class TopBar extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private static final List<UserAction> PLACES =
      List.of(
          UserAction.TO_BENCH,
          UserAction.TO_LIGHT,
          UserAction.TO_CAMERA,
          UserAction.TO_RUN,
          UserAction.TO_TRIED,
          UserAction.TO_CAMERAS,
          UserAction.TO_RIG);

  private static final int SMALL_WIDTH = 1200;

  private final Map<UserAction, JToggleButton> places = new EnumMap<>(UserAction.class);
  private final ButtonGroup group = new ButtonGroup();
  private final JLabel practice = new JLabel(Words.say("desk.practice.mark"));
  private final JLabel link = new JLabel();
  private final JLabel light = new JLabel();
  private final JButton rig;
  private final JButton menu;
  private transient Look look;
  private transient @Nullable LinkText text;
  private boolean lightIsSet;
  private boolean isSmall;

  TopBar(Look look, Consumer<UserAction> acts) {
    super(new MigLayout("insets 4 6 4 6, fillx, hidemode 3, gapx 4", "", "[center]"));
    menu = button(UserAction.MENU, acts);
    add(menu);
    for (UserAction act : PLACES) {
      JToggleButton button = new JToggleButton(KeyHints.words(act));
      button.setName("place." + act);
      button.putClientProperty("JButton.buttonType", "toolBarButton");
      button
          .getAccessibleContext()
          .setAccessibleName(
              Words.say("desk.keys.spoken", KeyHints.words(act), KeyHints.keyName(act)));
      button.addActionListener(event -> acts.accept(act));
      group.add(button);
      places.put(act, button);
      add(button);
    }
    rig = button(UserAction.PRACTICE, acts);
    link.setName("link");
    light.setName("lightState");
    practice.setName("practiceMark");
    add(new JLabel(), "pushx");
    add(practice);
    add(light, "gapleft 4");
    add(link, "gapleft 4, wmin 70, wmax 420");
    add(rig);
    look(look);
  }

  void show(BenchView view) {
    LinkText shown = LinkText.of(view.link());
    practice.setVisible(view.link().isPractice());
    rig.setVisible(view.link().isPractice());
    boolean set = view.light().set().isPresent();
    if (shown.equals(text) && set == lightIsSet) {
      return;
    }
    text = shown;
    lightIsSet = set;
    light.setText(Words.say(set ? "desk.light.isSet" : "desk.light.isNotSet"));
    link.setText(shown.text());
    link.setToolTipText(shown.more());
    link.getAccessibleContext().setAccessibleName(Words.say("desk.link.name"));
    link.getAccessibleContext().setAccessibleDescription(shown.text() + ". " + shown.more());
    dress();
  }

  /** The place on the screen. */
  void at(UserAction place) {
    if (places.containsKey(place)) {
      places.get(place).setSelected(true);
    } else {
      group.clearSelection();
    }
  }

  /** The menu opens below it; on a system that has its menus elsewhere it is not needed. */
  JButton menuButton() {
    return menu;
  }

  JButton rigButton() {
    return rig;
  }

  /** In a small window the letters are smaller, so that all of the bar can be read. */
  @Override
  public void setBounds(int x, int y, int width, int height) {
    boolean small = width < Look.px(SMALL_WIDTH);
    if (small != isSmall) {
      isSmall = small;
      letters();
    }
    super.setBounds(x, y, width, height);
  }

  private void letters() {
    places.values().forEach(button -> button.setFont(Look.letters(isSmall ? 0.9 : 1.08)));
    for (JComponent each : List.of(menu, rig, light, link)) {
      each.setFont(Look.letters(isSmall ? 0.9 : 1));
    }
  }

  @Override
  public void look(Look another) {
    look = another;
    setBackground(look.shade());
    setBorder(BorderFactory.createMatteBorder(0, 0, 1, 0, look.line()));
    places.forEach(
        (act, button) -> {
          button.setIcon(new KeyCap(KeyHints.keyName(act), look, false));
        });
    letters();
    rig.setIcon(new KeyCap(KeyHints.keyName(UserAction.PRACTICE), look, false));
    menu.setIcon(new KeyCap(KeyHints.keyName(UserAction.MENU), look, false));
    practice.setFont(Look.bold(Look.BODY));
    practice.setForeground(look.ground());
    practice.setBackground(look.attention());
    practice.setOpaque(true);
    practice.setBorder(
        BorderFactory.createEmptyBorder(Look.px(3), Look.px(5), Look.px(3), Look.px(5)));
    dress();
  }

  private void dress() {
    light.setForeground(lightIsSet ? look.quietInk() : look.attention());
    if (text != null) {
      link.setForeground(text.up() ? look.ink() : look.attention());
      link.setIcon(new LinkDot(look, text.up()));
      link.setIconTextGap(Look.px(7));
    }
  }

  private static JButton button(UserAction act, Consumer<UserAction> acts) {
    JButton button = new JButton(KeyHints.words(act));
    button.setName("top." + act);
    button.putClientProperty("JButton.buttonType", "toolBarButton");
    button.addActionListener(event -> acts.accept(act));
    return button;
  }
}
