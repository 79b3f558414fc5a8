package org.halflight.desk;

import java.awt.Component;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JRadioButton;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import org.halflight.desk.view.UserAction;
import org.halflight.session.CameraCustoms;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.ShutterUnderTest;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.halflight.words.ContactWords;
import org.halflight.words.OptionWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.RunForm;

/** The set-up of the next run. */
final class RunPlace extends Place {
  private static final long serialVersionUID = 1L;

  private static final String COLUMNS = "insets 0, gap 18 6, fillx, wrap 2";

  private final transient Supplier<RunForm> suggestion;
  private final transient Supplier<Optional<MarkedSpeed>> looked;
  private final JLabel title = new JLabel(Words.say("desk.run.title"));
  private final JTextField camera = new JTextField();
  private final Map<Phase, JRadioButton> phases = new LinkedHashMap<>();
  private final JComboBox<String> dial = new JComboBox<>();
  private final JTextField speeds = new JTextField();
  private final PlanBox firings = new PlanBox(5);
  private final JComboBox<String> marking =
      new JComboBox<>(
          new String[] {
            Words.say("desk.run.marking.exact"), Words.say("desk.run.marking.literal")
          });
  private final JComboBox<String> rest = new JComboBox<>();
  private final Map<UntimedTest, JCheckBox> checks = new EnumMap<>(UntimedTest.class);
  private final JCheckBox beforeCocking = new JCheckBox(Words.say("desk.run.beforeCocking"));
  private final JCheckBox bladesShut = new JCheckBox(Words.say("desk.run.bladesShut"));
  private final OptionFields options = new OptionFields();
  private final ReadOnlyText caution =
      new ReadOnlyText("runCaution", Words.say("desk.run.cautionName"));
  private final ReadOnlyText trouble =
      new ReadOnlyText("runTrouble", Words.say("desk.run.troubleName"));
  private final JButton begin = new JButton(Words.say("desk.run.begin"));

  private final JPanel left = group(new MigLayout(COLUMNS, "[][grow,fill]"));
  private final JPanel right = group(new MigLayout(COLUMNS, "[][grow,fill]"));
  private final List<JLabel> headings = new ArrayList<>();

  private String all = "";
  private String toAdjust = "";
  private String ownDial = Dial.CUSTOM;
  private boolean wasAdjusting;
  private boolean up;

  /**
   * @param suggestion what is known of the next run
   * @param looked the speed that adjusting would be about
   * @param onBegin takes the set-up when it is complete
   */
  RunPlace(
      Look look,
      Supplier<RunForm> suggestion,
      Supplier<Optional<MarkedSpeed>> looked,
      Consumer<RunSetup> onBegin) {
    super(UserAction.TO_RUN);
    this.suggestion = suggestion;
    this.looked = looked;
    setLayout(
        new MigLayout("insets 20 44 16 44, gap 36 8, fillx", "[grow 58,fill][grow 42,fill]", ""));
    ButtonGroup group = new ButtonGroup();
    JPanel phasePanel = group(new MigLayout("insets 0"));
    for (Phase phase : Phase.values()) {
      JRadioButton button = new JRadioButton(Sentences.phase(phase));
      button.setName("phase." + phase);
      group.add(button);
      phases.put(phase, button);
      phasePanel.add(button);
    }
    button(Phase.AS_FOUND).setSelected(true);
    button(Phase.ADJUSTING).addItemListener(event -> adjustingChosen());
    for (String name : Dial.names()) {
      dial.addItem(Words.say("desk.dial." + name));
    }
    dial.addItem(Words.say("desk.dial.custom"));
    dial.addActionListener(event -> dialChosen());
    for (String each : RunForm.RESTS.keySet()) {
      rest.addItem(Words.say("desk.run.rest." + each));
    }
    named(camera, "runCamera");
    named(dial, "runDial");
    named(speeds, "runSpeeds");
    named(firings, "runFirings");
    named(rest, "runRest");
    named(marking, "runMarking");
    begin.setName("beginRun");
    begin.addActionListener(event -> begin(onBegin));

    JPanel firingPanel = group(new MigLayout("insets 0, fillx", "[][grow,fill]"));
    firingPanel.add(firings, "wmin 80");
    firingPanel.add(options.of(RunOption.UNTIL_DECIDED));
    firings.getAccessibleContext().setAccessibleName(Words.say("desk.run.firings"));
    row(left, Words.say("desk.run.camera"), camera);
    row(left, Words.say("desk.run.phase"), phasePanel);
    row(left, RunOption.QUICK);
    row(left, RunOption.STAGES);
    row(left, Words.say("desk.run.dial"), dial);
    row(left, Words.say("desk.run.speeds"), speeds);
    row(left, Words.say("desk.run.firings"), firingPanel);
    row(left, Words.say("desk.run.marking"), marking);
    row(left, Words.say("desk.run.rest"), rest);
    row(left, Words.say("desk.run.checks"), checks());
    row(left, Words.say("desk.run.customs"), beforeCocking);
    left.add(bladesShut, "skip 1");
    left.add(options.contact(), "skip 1");
    left.add(caution, "skip 1, growx, wmin 200, hidemode 3");
    heading("desk.run.conditions");
    RunOption.CONDITIONS.forEach(option -> row(right, option));
    heading("desk.run.criteria");
    RunOption.CRITERIA.stream()
        .filter(option -> option.isOffered() && !option.isFlag())
        .forEach(option -> row(right, option));
    add(title, "span, wrap");
    // The columns give way, so that the button is seen whatever the height of the window.
    add(left, "aligny top, hmin 0");
    add(right, "aligny top, hmin 0, wrap");
    add(trouble, "span, wmin 200, wrap");
    add(begin, "span, growx 0");
    caution.say(ContactWords.caution());
    caution.setVisible(false);
    options.contact().addItemListener(event -> caution.setVisible(options.contact().isSelected()));
    ((JComboBox<?>) options.of(RunOption.STAGES)).addItemListener(event -> stagesTurned());
    dialChosen();
    look(look);
  }

  /** What was typed stays while this place is on the screen. */
  @Override
  void comesUp() {
    if (!up) {
      up = true;
      suggest(suggestion.get(), looked.get());
    }
  }

  @Override
  void isLeft() {
    up = false;
  }

  private void suggest(RunForm form, Optional<MarkedSpeed> one) {
    toAdjust = one.map(MarkedSpeed::label).orElse("");
    camera.setText(form.shutter().camera());
    button(form.phase()).setSelected(true);
    int known = Dial.names().indexOf(form.shutter().dial());
    dial.setSelectedIndex(known >= 0 ? known : Dial.names().size());
    ownDial = known >= 0 ? Dial.CUSTOM : form.shutter().dial();
    if (!wasAdjusting || all.isEmpty()) {
      all = form.speeds();
    }
    speeds.setText(form.phase() == Phase.ADJUSTING ? form.speeds() : all);
    marking.setSelectedIndex(form.shutter().reference() == Reference.EXACT ? 0 : 1);
    // What was noted of the set-up stays as it is.
    RunOption.CRITERIA.stream()
        .filter(RunOption::isOffered)
        .forEach(option -> options.show(option, form.options().getOrDefault(option, "")));
  }

  @Override
  JButton first() {
    return begin;
  }

  @Override
  boolean goOn() {
    begin.doClick(0);
    return true;
  }

  JTextField speeds() {
    return speeds;
  }

  @Override
  public void look(Look look) {
    setBackground(look.ground());
    title.setFont(Look.bold(2));
    title.setForeground(look.ink());
    for (ReadOnlyText each : List.of(caution, trouble)) {
      each.setBackground(look.ground());
      each.setForeground(look.attention());
    }
    trouble.setFont(Look.letters(1.15));
    begin.setFont(Look.bold(1.25));
    for (JPanel column : List.of(left, right)) {
      for (Component each : column.getComponents()) {
        each.setFont(Look.letters(1.08));
      }
    }
    for (JLabel heading : headings) {
      heading.setFont(Look.bold(1.08));
      heading.setForeground(look.ink());
    }
  }

  private JRadioButton button(Phase phase) {
    return Objects.requireNonNull(phases.get(phase));
  }

  /**
   * Adjusting is about one speed, unless stages of assembly are compared; the others come back for
   * the run after it.
   */
  private void adjustingChosen() {
    if (!button(Phase.ADJUSTING).isSelected() || options.isChosen(RunOption.STAGES)) {
      speeds.setText(all);
    } else if (!toAdjust.isEmpty() && !speeds.getText().equals(toAdjust)) {
      all = speeds.getText();
      speeds.setText(toAdjust);
    }
  }

  /** Whoever has chosen to adjust one speed has its dial back. */
  private void stagesTurned() {
    if (button(Phase.ADJUSTING).isSelected()) {
      adjustingChosen();
    }
  }

  private void dialChosen() {
    int index = dial.getSelectedIndex();
    if (index < 0 || index >= Dial.builtIn().size()) {
      // Its own speeds stay as they are written.
      return;
    }
    Dial chosen = Dial.builtIn().get(index);
    speeds.setText(RunForm.list(chosen.speeds()));
    marking.setSelectedIndex(chosen.reference() == Reference.EXACT ? 0 : 1);
  }

  private void begin(Consumer<RunSetup> onBegin) {
    List<UntimedTest> wanted = new ArrayList<>();
    checks.forEach(
        (check, box) -> {
          if (box.isSelected()) {
            wanted.add(check);
          }
        });
    RunForm form =
        new RunForm(
            new ShutterUnderTest(
                camera.getText().strip(),
                ShutterKind.UNKNOWN,
                dial.getSelectedIndex() >= 0 && dial.getSelectedIndex() < Dial.names().size()
                    ? Dial.names().get(dial.getSelectedIndex())
                    : ownDial,
                marking.getSelectedIndex() == 0 ? Reference.EXACT : Reference.LITERAL,
                new CameraCustoms(beforeCocking.isSelected(), bladesShut.isSelected())),
            phases.entrySet().stream()
                .filter(entry -> entry.getValue().isSelected())
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow(),
            speeds.getText(),
            firings.planned(),
            restSeconds(),
            wanted,
            options.texts());
    wasAdjusting = form.phase() == Phase.ADJUSTING;
    RunSetup setup;
    try {
      setup = form.read();
    } catch (Trouble notUnderstood) {
      trouble.setText(notUnderstood.getMessage());
      return;
    }
    trouble.setText("");
    onBegin.accept(setup);
  }

  private OptionalDouble restSeconds() {
    List<OptionalDouble> seconds = List.copyOf(RunForm.RESTS.values());
    return seconds.get(Math.max(0, rest.getSelectedIndex()));
  }

  private JPanel checks() {
    JPanel panel = group(new MigLayout("insets 0, gap 16 4, wrap 3"));
    for (UntimedTest check : UntimedTest.offered()) {
      JCheckBox box = new JCheckBox(Words.say("desk.run.check." + Sentences.check(check)));
      box.setName("check." + check);
      checks.put(check, box);
      panel.add(box);
    }
    return panel;
  }

  private void heading(String key) {
    JLabel heading = new JLabel(Words.say(key));
    headings.add(heading);
    right.add(heading, "span, gaptop " + (headings.size() > 1 ? 10 : 0));
  }

  private void row(JPanel column, RunOption<?> option) {
    row(column, OptionWords.label(option), options.of(option));
  }

  private static void row(JPanel column, String label, JComponent field) {
    JLabel said = new JLabel(label);
    said.setLabelFor(field);
    field.getAccessibleContext().setAccessibleName(label);
    column.add(said);
    column.add(field, "wmin 200");
  }

  private static void named(JComponent component, String name) {
    component.setName(name);
  }
}
