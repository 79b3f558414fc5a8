package org.halflight.desk;

import java.util.List;
import javax.swing.DefaultListModel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import org.halflight.words.Words;

/** What stood in the fields of a visit before they were corrected, the newest first. */
final class EarlierPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final DefaultListModel<String> lines = new DefaultListModel<>();
  private final ReadOnlyText hint = new ReadOnlyText("earlierHint", Words.say("correction.title"));

  EarlierPanel() {
    super(new MigLayout("insets 8 0 0 0, fill, wrap 1, gap 0 6", "[fill,grow]", "[][fill,grow]"));
    setOpaque(false);
    JList<String> list = new JList<>(lines);
    list.setName("earlier");
    list.getAccessibleContext().setAccessibleName(Words.say("correction.title"));
    add(hint, "wmin 100");
    add(new JScrollPane(list), "grow, hmin 100");
    show(List.of());
  }

  void show(List<String> now) {
    lines.clear();
    lines.addAll(now);
    hint.say(Words.say(now.isEmpty() ? "correction.none" : "correction.hint"));
  }

  @Override
  public void look(Look look) {
    hint.setBorder(null);
    hint.setBackground(look.ground());
    hint.setForeground(look.ink());
  }
}
