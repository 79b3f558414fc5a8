package org.halflight.desk;

import java.awt.Component;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
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
import org.halflight.desk.view.RunForm;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.ContactWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** The set-up of the next run. */
final class RunPlace extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  /** Conditions that are noted by choosing one of a few words; the words are in the bundle. */
  private static final Map<String, List<String>> CONDITIONS = conditions();

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
  private final Map<String, JComboBox<String>> conditions = new LinkedHashMap<>();
  private final JTextField stop = new JTextField();
  private final Map<UntimedTest, JCheckBox> checks = new EnumMap<>(UntimedTest.class);
  private final JCheckBox beforeCocking = new JCheckBox(Words.say("desk.run.beforeCocking"));
  private final JCheckBox bladesShut = new JCheckBox(Words.say("desk.run.bladesShut"));
  private final CriteriaPanel criteria = new CriteriaPanel();
  private final ReadOnlyText caution =
      new ReadOnlyText("runCaution", Words.say("desk.run.cautionName"));
  private final ReadOnlyText trouble =
      new ReadOnlyText("runTrouble", Words.say("desk.run.troubleName"));
  private final JButton begin = new JButton(Words.say("desk.run.begin"));

  private String all = "";
  private String toAdjust = "";
  private String ownDial = Dial.CUSTOM;
  private boolean wasAdjusting;

  RunPlace(Look look, Consumer<RunSetup> onBegin) {
    super(new MigLayout("insets 26 44 20 44, gap 22 8, fillx", "[][fill,grow][][fill,grow]", ""));
    ButtonGroup group = new ButtonGroup();
    JPanel phasePanel = new JPanel(new MigLayout("insets 0"));
    phasePanel.setOpaque(false);
    for (Phase phase : Phase.values()) {
      JRadioButton button = new JRadioButton(Sentences.phase(phase));
      button.setName("phase." + phase);
      group.add(button);
      phases.put(phase, button);
      phasePanel.add(button);
    }
    phases.get(Phase.AS_FOUND).setSelected(true);
    phases.get(Phase.ADJUSTING).addItemListener(event -> adjustingChosen());
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
    named(stop, "runStop");
    begin.setName("beginRun");
    begin.addActionListener(event -> begin(onBegin));

    add(title, "span 2");
    add(new JLabel(Words.say("desk.run.conditions")), "span 2, wrap 14");
    row("desk.run.camera", camera, "desk.run.place", condition(RunConditions.PLACE));
    row("desk.run.phase", phasePanel, "desk.run.cells", condition(RunConditions.CELLS));
    row("desk.run.dial", dial, "desk.run.cover", condition(RunConditions.COVER));
    row("desk.run.speeds", speeds, "desk.run.attitude", condition(RunConditions.ATTITUDE));
    JPanel firingPanel = new JPanel(new MigLayout("insets 0, fillx", "[][grow,fill]"));
    firingPanel.setOpaque(false);
    firingPanel.add(firings, "wmin 80");
    firingPanel.add(criteria.rule());
    row("desk.run.firings", firingPanel, "desk.run.wet", condition(RunConditions.WET));
    firings.getAccessibleContext().setAccessibleName(Words.say("desk.run.firings"));
    criteria.rule().getAccessibleContext().setAccessibleName(Words.say("desk.run.rule"));
    row("desk.run.marking", marking, "desk.run.release", condition(RunConditions.RELEASE));
    row("desk.run.rest", rest, "desk.run.stop", stop);
    row("desk.run.tolerance", criteria.tolerance(), "desk.run.measurand", criteria.measurand());
    row("desk.run.stops", criteria.stops(), "desk.run.stopTolerance", criteria.stopTolerance());
    add(label("desk.run.linkage", criteria.linkage()));
    add(criteria.linkage(), "wmin 220, wrap");
    add(checks(), "skip 1");
    add(beforeCocking, "skip 1, split 3, flowy");
    add(bladesShut);
    add(criteria.contact(), "wrap");
    add(caution, "skip 1, span 3, growx, wmin 200, hidemode 3, wrap");
    add(trouble, "span, growx, wmin 200, gaptop 6, wrap");
    add(begin, "skip 1, grow 0, gaptop 6");
    caution.say(ContactWords.caution());
    caution.setVisible(false);
    criteria
        .contact()
        .addItemListener(event -> caution.setVisible(criteria.contact().isSelected()));
    dialChosen();
    look(look);
  }

  /**
   * Fills in what is known of the next run.
   *
   * @param one the speed that adjusting would be about
   */
  void suggest(RunForm form, Optional<MarkedSpeed> one) {
    toAdjust = one.map(MarkedSpeed::label).orElse("");
    camera.setText(form.camera());
    phases.get(form.phase()).setSelected(true);
    int known = Dial.names().indexOf(form.dial());
    dial.setSelectedIndex(known >= 0 ? known : Dial.names().size());
    ownDial = known >= 0 ? Dial.CUSTOM : form.dial();
    if (!wasAdjusting || all.isEmpty()) {
      all = form.speeds();
    }
    speeds.setText(form.phase() == Phase.ADJUSTING ? form.speeds() : all);
    marking.setSelectedIndex(form.exact() ? 0 : 1);
    criteria.show(form.criteria());
  }

  JButton first() {
    return begin;
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
    for (Component each : getComponents()) {
      if (each instanceof JComponent inner && each != title && each != trouble && each != begin) {
        inner.setFont(Look.letters(1.08));
      }
    }
  }

  /** Adjusting is about one speed; the others come back for the run after it. */
  private void adjustingChosen() {
    if (!phases.get(Phase.ADJUSTING).isSelected()) {
      speeds.setText(all);
    } else if (!toAdjust.isEmpty()) {
      all = speeds.getText();
      speeds.setText(toAdjust);
    }
  }

  private void dialChosen() {
    int index = dial.getSelectedIndex();
    if (index < 0 || index >= Dial.builtIn().size()) {
      // Its own speeds stay as they are written.
      return;
    }
    Dial chosen = Dial.builtIn().get(index);
    speeds.setText(RunForm.list(chosen));
    marking.setSelectedIndex(chosen.reference() == org.halflight.speeds.Reference.EXACT ? 0 : 1);
  }

  private void begin(Consumer<RunSetup> onBegin) {
    Map<String, String> noted = new LinkedHashMap<>();
    conditions.forEach(
        (name, box) -> {
          if (box.getSelectedIndex() > 0) {
            noted.put(name, CONDITIONS.get(name).get(box.getSelectedIndex() - 1));
          }
        });
    if (!stop.getText().isBlank()) {
      noted.put(RunConditions.STOP, stop.getText().strip());
    }
    List<UntimedTest> wanted = new ArrayList<>();
    checks.forEach(
        (check, box) -> {
          if (box.isSelected()) {
            wanted.add(check);
          }
        });
    RunForm form =
        new RunForm(
            camera.getText().strip(),
            phases.entrySet().stream()
                .filter(entry -> entry.getValue().isSelected())
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow(),
            dial.getSelectedIndex() >= 0 && dial.getSelectedIndex() < Dial.names().size()
                ? Dial.names().get(dial.getSelectedIndex())
                : ownDial,
            speeds.getText(),
            marking.getSelectedIndex() == 0,
            firings.planned(),
            restSeconds(),
            noted,
            wanted,
            beforeCocking.isSelected(),
            bladesShut.isSelected(),
            criteria.form());
    RunForm.Result result = form.read();
    trouble.setText(result.trouble());
    Optional<RunSetup> setup = result.setup();
    wasAdjusting = form.phase() == Phase.ADJUSTING;
    setup.ifPresent(onBegin);
  }

  private OptionalDouble restSeconds() {
    List<OptionalDouble> seconds = List.copyOf(RunForm.RESTS.values());
    return seconds.get(Math.max(0, rest.getSelectedIndex()));
  }

  private JPanel checks() {
    JPanel panel = new JPanel(new MigLayout("insets 0, gap 16 4, wrap 3"));
    panel.setOpaque(false);
    for (UntimedTest check : UntimedTest.values()) {
      JCheckBox box = new JCheckBox(Words.say("desk.run.check." + Sentences.check(check)));
      box.setName("check." + check);
      checks.put(check, box);
      panel.add(box);
    }
    return panel;
  }

  private JComboBox<String> condition(String name) {
    JComboBox<String> box = new JComboBox<>();
    box.addItem(Words.say("desk.run.notNoted"));
    CONDITIONS
        .get(name)
        .forEach(each -> box.addItem(Words.say("desk.condition." + name + "." + each)));
    named(box, "condition." + name);
    conditions.put(name, box);
    return box;
  }

  private void row(String label, JComponent field, String label2, JComponent field2) {
    add(label(label, field));
    add(field, "wmin 220");
    add(label(label2, field2));
    add(field2, "wmin 200, wrap");
  }

  private static JLabel label(String key, JComponent of) {
    JLabel label = new JLabel(Words.say(key));
    label.setLabelFor(of);
    of.getAccessibleContext().setAccessibleName(label.getText());
    return label;
  }

  private static void named(JComponent component, String name) {
    component.setName(name);
  }

  private static Map<String, List<String>> conditions() {
    Map<String, List<String>> all = new LinkedHashMap<>();
    all.put(RunConditions.PLACE, List.of("in-camera", "out"));
    all.put(RunConditions.CELLS, List.of("on", "off"));
    all.put(RunConditions.COVER, List.of("on", "off"));
    all.put(
        RunConditions.ATTITUDE,
        List.of("lens-level", "lens-up", "lens-down", "on-its-side", "upside-down"));
    all.put(RunConditions.WET, List.of("dry", "wet"));
    all.put(RunConditions.RELEASE, List.of("finger", "cable"));
    return all;
  }
}
