package org.halflight.desk;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.ListSelectionModel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.PortsView;
import org.halflight.words.Words;

/** Why no rig is found, and the ports of this computer to choose from. */
final class PortsPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final ReadOnlyText main = new ReadOnlyText("portsMain", Words.say("desk.ports.title"));
  private final ReadOnlyText others =
      new ReadOnlyText("portsOthers", Words.say("desk.ports.causesName"));
  private final DefaultListModel<String> lines = new DefaultListModel<>();
  private final JList<String> list = new JList<>(lines);
  private final JScrollPane scroll = new JScrollPane(list);
  private final JButton change = new JButton(Words.say("desk.bench.toRig"));
  private final JButton use = new JButton(Words.say("desk.ports.use"));
  private final JButton likely = new JButton(Words.say("desk.ports.likelyOnes"));
  private final JButton all = new JButton(Words.say("desk.ports.all"));
  private transient PortsView shown = PortsView.NOTHING;

  /**
   * @param bench does something on the thread of the bench
   */
  PortsPanel(Look look, Consumer<Consumer<BenchActions>> bench) {
    super(
        new MigLayout(
            "insets 12, wrap 1, gap 8 10, fillx, hidemode 3", "[fill,grow]", "[][][grow,fill][]"));
    setName("portsPanel");
    list.setName("ports");
    list.getAccessibleContext().setAccessibleName(Words.say("desk.ports.name"));
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.addListSelectionListener(event -> dress());
    change.setName("changeBench");
    use.setName("usePort");
    likely.setName("useLikelyPorts");
    all.setName("lookAtAllPorts");
    all.setToolTipText(Words.say("desk.ports.allMore"));
    all.getAccessibleContext().setAccessibleDescription(all.getToolTipText());
    change.addActionListener(event -> bench.accept(BenchActions::changeBench));
    use.addActionListener(
        event ->
            chosen().ifPresent(path -> bench.accept(h -> h.ports().choose(Optional.of(path)))));
    likely.addActionListener(event -> bench.accept(h -> h.ports().choose(Optional.empty())));
    all.addActionListener(event -> bench.accept(h -> h.ports().lookAtAll()));
    JPanel buttons = new JPanel(new MigLayout("insets 2, gap 10 8"));
    buttons.setOpaque(false);
    buttons.add(use);
    buttons.add(likely);
    buttons.add(all, "wrap");
    buttons.add(change, "span");
    add(main, "wmin 200");
    add(others, "wmin 200");
    add(scroll, "hmin 60");
    add(buttons);
    look(look);
  }

  void show(BenchView view) {
    PortsView ports = view.link().ports();
    main.say(
        !ports.main().isEmpty()
            ? ports.main()
            : view.link().isUp() && !view.link().isPractice()
                ? Words.say("desk.ports.connected")
                : view.link().sentence());
    others.say(String.join("\n", ports.others()));
    others.setVisible(!ports.others().isEmpty());
    change.setText(KeyHints.begun(KeyHints.otherBench(view.link())));
    if (lines.isEmpty() || !ports.lines().equals(shown.lines())) {
      int selected = list.getSelectedIndex();
      Optional<String> path = chosen();
      shown = ports;
      lines.clear();
      ports.lines().forEach(line -> lines.addElement(line.words()));
      if (lines.isEmpty()) {
        lines.addElement(Words.say("desk.ports.none"));
      }
      for (int i = 0; i < ports.lines().size(); i++) {
        if (path.equals(Optional.of(ports.lines().get(i).path())) && selected >= 0) {
          list.setSelectedIndex(i);
        }
      }
    }
    dress();
  }

  private Optional<String> chosen() {
    int index = list.getSelectedIndex();
    return index >= 0 && index < shown.lines().size()
        ? Optional.of(shown.lines().get(index).path())
        : Optional.empty();
  }

  private void dress() {
    use.setEnabled(chosen().isPresent());
    likely.setEnabled(shown.lines().stream().anyMatch(PortsView.Line::chosen));
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    for (ReadOnlyText text : List.of(main, others)) {
      text.setBackground(look.ground());
      text.setForeground(look.ink());
      text.setBorder(null);
      text.setFont(Look.letters(Look.BODY));
    }
    main.setFont(Look.bold(Look.LEAD));
    list.setFont(Look.letters(Look.BODY));
    scroll.setBorder(BorderFactory.createLineBorder(look.line()));
    for (JButton button : List.of(change, use, likely, all)) {
      button.setFont(Look.letters(Look.BODY));
    }
  }
}
