package org.halflight.desk;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.Pedal;
import org.halflight.desk.view.UndoStack;
import org.halflight.words.Words;

/** Which keys are a pedal; has others learnt, or none. */
final class PedalPanel extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final transient Pedal pedal;
  private final transient Consumer<UndoStack.Act> onDone;
  private transient Map<Pedal.Use, Pedal.Key> known;
  private final Map<Pedal.Use, JLabel> labels = new EnumMap<>(Pedal.Use.class);
  private final Map<Pedal.Use, JButton> learns = new EnumMap<>(Pedal.Use.class);
  private final JButton forget = new JButton(Words.say("desk.pedal.forget"));
  private final JLabel said = new JLabel(Words.say("desk.pedal.what"));

  /**
   * @param onDone takes what was learnt or forgotten, to be undone
   */
  PedalPanel(Pedal pedal, Consumer<UndoStack.Act> onDone) {
    super(new MigLayout("insets 0, gap 14 6", ""));
    this.pedal = pedal;
    this.onDone = onDone;
    known = pedal.learnt();
    setOpaque(false);
    for (Pedal.Use use : Pedal.Use.values()) {
      JLabel label = new JLabel();
      JButton learn = new JButton(Words.of("desk.pedal.learn", use));
      learn.setName("learn." + use);
      learn.addActionListener(
          event -> {
            pedal.learn(use);
            say(Words.say("desk.pedal.press"));
          });
      learns.put(use, learn);
      labels.put(use, label);
      add(label);
      add(learn);
    }
    forget.setName("forgetPedal");
    forget.addActionListener(
        event -> {
          pedal.forget();
          say(Words.say("desk.pedal.forgotten"));
        });
    add(forget, "wrap");
    said.setName("pedalSaid");
    add(said, "span");
    refresh();
  }

  /** In a narrow window each pedal has a line of its own. */
  void narrow(boolean narrow) {
    ((MigLayout) getLayout())
        .setComponentConstraints(
            Objects.requireNonNull(learns.get(Pedal.Use.GO)), narrow ? "wrap" : "");
    revalidate();
  }

  /** Says what came of a key that was pressed to be learnt. */
  void say(String sentence) {
    said.setText(sentence);
    said.getAccessibleContext().setAccessibleDescription(sentence);
    Map<Pedal.Use, Pedal.Key> before = known;
    Map<Pedal.Use, Pedal.Key> now = pedal.learnt();
    refresh();
    if (!before.equals(now)) {
      onDone.accept(
          UndoStack.Act.of(
              Words.say("act.pedal", names(before), names(now)),
              () -> knows(before),
              () -> knows(now)));
    }
  }

  private static String names(Map<Pedal.Use, Pedal.Key> keys) {
    return keys.isEmpty()
        ? Words.say("desk.pedal.none")
        : keys.values().stream().map(PedalKeys::name).sorted().collect(Collectors.joining(", "));
  }

  private void knows(Map<Pedal.Use, Pedal.Key> keys) {
    pedal.learnt(keys);
    refresh();
  }

  private void refresh() {
    known = pedal.learnt();
    labels.forEach(
        (use, label) ->
            label.setText(
                Words.of(
                    "desk.pedal.is",
                    use,
                    Optional.ofNullable(pedal.learnt().get(use))
                        .map(PedalKeys::name)
                        .orElseGet(() -> Words.say("desk.pedal.none")))));
    forget.setEnabled(!pedal.learnt().isEmpty());
  }

  @Override
  public void look(Look look) {
    for (JLabel label : labels.values()) {
      label.setFont(Look.letters(Look.BODY));
      label.setForeground(look.ink());
    }
    said.setFont(Look.letters(Look.BODY));
    said.setForeground(look.ink());
  }
}
