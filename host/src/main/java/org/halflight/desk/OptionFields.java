package org.halflight.desk;

import com.formdev.flatlaf.FlatClientProperties;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JTextField;
import org.halflight.session.RunOption;
import org.halflight.words.OptionWords;

/** The fields for the options of a run, each made from its declaration. */
final class OptionFields {
  /** How a run is fired is chosen in one box for both. */
  private static final Set<RunOption<?>> IN_ONE_BOX = Set.of(RunOption.QUICK, RunOption.STAGES);

  private final Map<RunOption<?>, JComponent> fields = new LinkedHashMap<>();

  OptionFields() {
    RunOption.ALL.stream()
        .filter(RunOption::isOffered)
        .forEach(option -> fields.put(option, field(option)));
  }

  /** The field of an option. */
  JComponent of(RunOption<?> option) {
    return Objects.requireNonNull(fields.get(option));
  }

  /** Whether the flash contact is wired. */
  JCheckBox contact() {
    return (JCheckBox) of(RunOption.CONTACT);
  }

  /** The field of an option of this name. */
  Optional<JComponent> named(String name) {
    return fields.keySet().stream()
        .filter(option -> option.name().equals(name))
        .filter(option -> !IN_ONE_BOX.contains(option))
        .findFirst()
        .map(this::of);
  }

  /** Whether another than its usual value is chosen. */
  boolean isChosen(RunOption<?> option) {
    return of(option) instanceof JComboBox<?> box && box.getSelectedIndex() > 0;
  }

  /** Chooses what is not the usual, or the usual. */
  void choose(RunOption<?> option, boolean other) {
    ((JComboBox<?>) of(option)).setSelectedIndex(other ? 1 : 0);
  }

  /** Fills in what is written or chosen for one. */
  void show(RunOption<?> option, String text) {
    JComponent field = of(option);
    if (field instanceof JTextField line) {
      line.setText(text);
    } else if (field instanceof JCheckBox box) {
      box.setSelected(!text.isEmpty());
    } else if (field instanceof JComboBox<?> box) {
      box.setSelectedIndex(Math.max(0, option.choices().indexOf(text)));
    }
  }

  /** What is written or chosen. */
  Map<RunOption<?>, String> texts() {
    Map<RunOption<?>, String> texts = new LinkedHashMap<>();
    fields.forEach((option, field) -> texts.put(option, text(field, option.choices())));
    return texts;
  }

  private static JComponent field(RunOption<?> option) {
    JComponent field;
    if (option == RunOption.CONTACT) {
      field = new JCheckBox(OptionWords.label(option));
    } else if (option.words().isEmpty()) {
      field = new JTextField(8);
      field.putClientProperty(FlatClientProperties.PLACEHOLDER_TEXT, OptionWords.usual(option));
      field.getAccessibleContext().setAccessibleDescription(OptionWords.usual(option));
    } else {
      JComboBox<String> box = new JComboBox<>();
      option.choices().forEach(word -> box.addItem(OptionWords.choice(option, word)));
      field = box;
    }
    field.setName("run." + option.name());
    field.getAccessibleContext().setAccessibleName(OptionWords.label(option));
    return field;
  }

  private static String text(JComponent field, List<String> words) {
    if (field instanceof JTextField line) {
      return line.getText();
    }
    int chosen =
        field instanceof JComboBox<?> box
            ? box.getSelectedIndex()
            : ((JCheckBox) field).isSelected() ? 1 : 0;
    return words.get(Math.max(0, chosen));
  }
}
