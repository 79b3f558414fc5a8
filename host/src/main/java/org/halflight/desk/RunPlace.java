package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.ItemSelectable;
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
import java.util.stream.Stream;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JRadioButton;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
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
import org.halflight.words.ContactWords;
import org.halflight.words.OptionWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.CurtainPlan;
import org.halflight.workflow.RunForm;
import org.halflight.workflow.RunFormText;
import org.halflight.workflow.WrongField;

/** The set-up of the next run. */
final class RunPlace extends Place {
  private static final long serialVersionUID = 1L;

  private static final String COLUMNS = "insets 0, gap 16 8, fillx, wrap 2, hidemode 3";
  private static final String GROW = "[][fill,grow,100:500:800]push";

  /** Below a field of a form, where its columns are. */
  private static final String AT_FIELD = "skip 1, growx, wmin 100";

  /** How a run is fired: in the order of the box. */
  private static final List<String> WAYS = List.of("each", "quick", "stages");

  private final transient Supplier<RunForm> suggestion;
  private final transient Supplier<Optional<MarkedSpeed>> looked;
  private final JLabel title = new JLabel(Words.say("desk.run.title"));
  private final JTextField camera = new JTextField();
  private final Map<Phase, JRadioButton> phases = new LinkedHashMap<>();
  private final JComboBox<String> dial = new JComboBox<>();
  private final JTextField speeds = new JTextField();
  private final JComboBox<String> way = new JComboBox<>();
  private final PlanBox firings = new PlanBox(5);
  private final JComboBox<String> marking =
      new JComboBox<>(
          new String[] {
            Words.say("desk.run.marking.exact"), Words.say("desk.run.marking.literal")
          });
  private final JComboBox<String> rest = new JComboBox<>();

  /** Rows that a shutter of curtains has no use for, as they are in the form. */
  private final List<JComponent> ofLeaves = new ArrayList<>();

  private final Map<UntimedTest, JCheckBox> checks = new EnumMap<>(UntimedTest.class);
  private final JCheckBox beforeCocking = new JCheckBox(Words.say("desk.run.beforeCocking"));
  private final JCheckBox bladesShut = new JCheckBox(Words.say("desk.run.bladesShut"));
  private final OptionFields options = new OptionFields();
  private final ReadOnlyText caution =
      new ReadOnlyText("runCaution", Words.say("desk.run.cautionName"));
  private final ReadOnlyText trouble =
      new ReadOnlyText("runTrouble", Words.say("desk.run.troubleName"));
  private final JButton begin = new JButton(Words.say("desk.run.begin"));

  private final JPanel main = group(new MigLayout(COLUMNS, GROW));
  private final JPanel ofSpeeds = group(new MigLayout(COLUMNS, GROW));
  private final JPanel conditions = group(new MigLayout(COLUMNS, GROW));
  private final JPanel curtains = group(new MigLayout(COLUMNS, GROW));
  private final JPanel criteria = group(new MigLayout(COLUMNS, GROW));
  private final JPanel shutter = group(new MigLayout(COLUMNS, GROW));
  private final Fold speedsFold;
  private final Fold conditionsFold;
  private final Fold curtainsFold;
  private final Fold criteriaFold;
  private final Fold shutterFold;

  private String all = "";
  private String toAdjust = "";
  private String ownDial = Dial.CUSTOM;
  private static final List<ShutterKind> TRAVELS =
      List.of(
          ShutterKind.UNKNOWN,
          ShutterKind.CURTAIN_LONG_SIDE,
          ShutterKind.CURTAIN_SHORT_SIDE,
          ShutterKind.ROTARY);

  /** Which way curtains run, where the camera is not named. */
  private final JComboBox<String> travel = new JComboBox<>();

  private transient ShutterKind kind = ShutterKind.UNKNOWN;
  private boolean wasAdjusting;
  private boolean up;
  private boolean suggesting;

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
        new MigLayout(
            Look.EDGES + ", " + Look.GAPS + ", fill, wrap 1", "[fill,grow]", "[][fill,grow][]"));
    for (String name : Dial.names()) {
      dial.addItem(Words.say("desk.dial." + name));
    }
    dial.addItem(Words.say("desk.dial.custom"));
    WAYS.forEach(each -> way.addItem(Words.say("desk.run.way." + each)));
    for (ShutterKind each : TRAVELS) {
      travel.addItem(Words.of("desk.shutter", each));
    }
    travel.addActionListener(event -> travelChosen());
    for (String each : RunForm.RESTS.keySet()) {
      rest.addItem(Words.say("desk.run.rest." + each));
    }
    named(camera, "runCamera");
    named(dial, "runDial");
    named(speeds, "runSpeeds");
    named(way, "runWay");
    named(firings, "runFirings");
    named(rest, "runRest");
    named(travel, "runTravel");
    named(marking, "runMarking");
    named(begin, "beginRun");
    begin.addActionListener(event -> begin(onBegin));
    fiveRows();
    folded();
    speedsFold = new Fold("runFold.speeds", Words.say("desk.run.speedsFold"), ofSpeeds);
    conditionsFold = new Fold("runFold.conditions", Words.say("desk.run.conditions"), conditions);
    curtainsFold = new Fold("runFold.curtains", Words.say("desk.run.curtains"), curtains);
    criteriaFold = new Fold("runFold.criteria", Words.say("desk.run.criteria"), criteria);
    shutterFold = new Fold("runFold.shutter", Words.say("desk.run.customs"), shutter);
    for (Fold fold : folds()) {
      main.add(fold, "span, growx, wmin 0");
    }
    main.add(caution, "span, growx, wmin 200");
    main.add(trouble, AT_FIELD);
    add(title);
    add(new FormScroll(main), "hmin 0");
    add(begin, "growx 0, " + Look.MAIN_ACT);
    caution.say(ContactWords.caution());
    caution.setVisible(false);
    trouble.setVisible(false);
    hear();
    dialChosen();
    look(look);
  }

  private List<Fold> folds() {
    return List.of(speedsFold, conditionsFold, curtainsFold, criteriaFold, shutterFold);
  }

  /** The five things that every run is asked for. */
  private void fiveRows() {
    ButtonGroup group = new ButtonGroup();
    JPanel phasePanel = group(new MigLayout("insets 0, gap 16"));
    for (Phase phase : Phase.values()) {
      JRadioButton button = new JRadioButton(Sentences.phase(phase));
      button.setName("phase." + phase);
      group.add(button);
      phases.put(phase, button);
      phasePanel.add(button);
    }
    button(Phase.AS_FOUND).setSelected(true);
    JPanel firingPanel = group(new MigLayout("insets 0, gap 8 4, fillx", "[fill,grow][]"));
    firings.getAccessibleContext().setAccessibleName(Words.say("desk.run.firings"));
    firingPanel.add(way, "wmin 0");
    firingPanel.add(firings, "wmin 80");
    firingPanel.add(options.of(RunOption.UNTIL_DECIDED));
    row(main, Words.say("desk.run.phase"), phasePanel);
    row(main, Words.say("desk.run.camera"), camera);
    row(main, Words.say("desk.run.dial"), dial);
    row(main, Words.say("desk.run.way"), firingPanel);
    row(main, Words.say("desk.run.checks"), checks());
    way.getAccessibleContext().setAccessibleName(Words.say("desk.run.way"));
  }

  /** What is folded away, with its usual value as long as nobody looks. */
  private void folded() {
    row(ofSpeeds, Words.say("desk.run.speeds"), speeds);
    row(ofSpeeds, Words.say("desk.run.marking"), marking);
    RunOption.CONDITIONS.stream()
        .filter(option -> !option.isOfCurtains())
        .forEach(option -> row(conditions, option));
    row(conditions, Words.say("desk.run.rest"), rest);
    RunOption.CRITERIA.stream()
        .filter(option -> option.isOffered() && !option.isFlag() && !option.isOfCurtains())
        .forEach(option -> row(criteria, option));
    row(curtains, Words.say("desk.camera.shutter"), travel);
    RunOption.OF_CURTAINS.forEach(option -> row(curtains, option));
    shutter.add(beforeCocking, "span");
    shutter.add(bladesShut, "span");
    shutter.add(options.contact(), "span");
    beforeCocking.setName("runBeforeCocking");
    bladesShut.setName("runBladesShut");
  }

  private void hear() {
    dial.addActionListener(event -> dialChosen());
    button(Phase.ADJUSTING).addItemListener(event -> adjustingChosen());
    way.addActionListener(event -> wayChosen());
    options.contact().addItemListener(event -> caution.setVisible(options.contact().isSelected()));
    for (JComponent panel : List.of(main, ofSpeeds, conditions, curtains, criteria, shutter)) {
      hear(panel);
    }
  }

  /** Whatever is typed or chosen is on the line of its fold. */
  private void hear(Container in) {
    for (Component each : in.getComponents()) {
      if (each instanceof JTextField field) {
        field.getDocument().addDocumentListener(new Typed(this::sayFolds));
      } else if (each instanceof ItemSelectable choice) {
        choice.addItemListener(event -> sayFolds());
      } else if (each instanceof JPanel panel) {
        hear(panel);
      }
    }
  }

  private void sayFolds() {
    RunForm form = form();
    int index = dial.getSelectedIndex();
    boolean isBuiltIn = index >= 0 && index < Dial.builtIn().size();
    speedsFold.say(
        RunFormText.speeds(
            form, isBuiltIn ? RunForm.list(Dial.builtIn().get(index).speeds()) : ""));
    conditionsFold.say(
        RunFormText.conditions(
            form.options(),
            form.restSeconds().isEmpty() ? "" : String.valueOf(rest.getSelectedItem())));
    curtainsFold.say(RunFormText.curtains(form.options()));
    boolean isCurtain = form.shutter().isCurtain();
    curtainsFold.setVisible(isCurtain);
    ofLeaves.forEach(each -> each.setVisible(!isCurtain));
    criteriaFold.say(RunFormText.criteria(form.options()));
    shutterFold.say(RunFormText.shutter(form));
  }

  /** What was typed stays while this place is on the screen. */
  @Override
  void comesUp() {
    if (!up) {
      up = true;
      suggesting = true;
      suggest(suggestion.get(), looked.get());
      suggesting = false;
      sayFolds();
    }
  }

  @Override
  void isLeft() {
    up = false;
    trouble.setVisible(false);
  }

  private void suggest(RunForm form, Optional<MarkedSpeed> one) {
    toAdjust = one.map(MarkedSpeed::label).orElse("");
    camera.setText(form.shutter().camera());
    kind = form.shutter().kind();
    travel.setSelectedIndex(Math.max(0, TRAVELS.indexOf(kind)));
    button(form.phase()).setSelected(true);
    int known = Dial.names().indexOf(form.shutter().dial());
    dial.setSelectedIndex(known >= 0 ? known : Dial.names().size());
    ownDial = known >= 0 ? Dial.CUSTOM : form.shutter().dial();
    if (!wasAdjusting || all.isEmpty()) {
      all = form.speeds();
    }
    speeds.setText(form.phase() == Phase.ADJUSTING ? form.speeds() : all);
    marking.setSelectedIndex(form.shutter().reference() == Reference.EXACT ? 0 : 1);
    // What was noted of the set-up stays as it is, but for a run that is to be a dry one.
    String dry = RunOption.WET.words().get(0);
    if (dry.equals(form.options().get(RunOption.WET))) {
      options.show(RunOption.WET, dry);
    }
    Stream.concat(
            RunOption.CRITERIA.stream(),
            RunOption.CONDITIONS.stream().filter(RunOption::isOfCurtains))
        .filter(RunOption::isOffered)
        .forEach(option -> options.show(option, form.options().getOrDefault(option, "")));
    if (form.shutter().isCurtain()) {
      firings.plan(form.firings());
    }
    way.setSelectedIndex(
        options.isChosen(RunOption.QUICK) ? 1 : options.isChosen(RunOption.STAGES) ? 2 : 0);
  }

  @Override
  JButton first() {
    return begin;
  }

  @Override
  JButton byEnter() {
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
    title.setFont(Look.bold(Look.TITLE));
    title.setForeground(look.ink());
    for (ReadOnlyText each : List.of(caution, trouble)) {
      each.setBorder(null);
      each.setBackground(look.ground());
      each.setForeground(look.attention());
      each.setFont(Look.letters(Look.BODY));
    }
    begin.setFont(Look.bold(Look.LEAD));
    for (JPanel panel : List.of(main, ofSpeeds, conditions, curtains, criteria, shutter)) {
      for (Component each : panel.getComponents()) {
        each.setFont(Look.letters(Look.BODY));
      }
    }
    folds().forEach(fold -> fold.look(look));
  }

  private JRadioButton button(Phase phase) {
    return Objects.requireNonNull(phases.get(phase));
  }

  /**
   * Adjusting is about one speed, unless stages of assembly are compared; the others come back for
   * the run after it. Of curtains each step has its speed, so that all of them are there.
   */
  private void adjustingChosen() {
    if (form().shutter().isCurtain() && button(Phase.ADJUSTING).isSelected()) {
      Dial.ofKey(form().shutter().dial())
          .ifPresent(its -> speeds.setText(RunForm.list(CurtainPlan.adjusting(its))));
      return;
    }
    if (!button(Phase.ADJUSTING).isSelected() || options.isChosen(RunOption.STAGES)) {
      speeds.setText(all);
    } else if (!toAdjust.isEmpty() && !speeds.getText().equals(toAdjust)) {
      all = speeds.getText();
      speeds.setText(toAdjust);
    }
  }

  private void wayChosen() {
    String chosen = WAYS.get(Math.max(0, way.getSelectedIndex()));
    boolean isStages = chosen.equals("stages");
    options.choose(RunOption.QUICK, chosen.equals("quick"));
    options.choose(RunOption.STAGES, isStages);
    String planned = Words.say("desk.run.firings.offered");
    does(firings, chosen.equals("quick") ? Words.say("desk.run.firings.ofQuick") : planned);
    usable(firings, !isStages, Words.say("desk.run.firings.ofStages"));
    usable(options.of(RunOption.UNTIL_DECIDED), !isStages, Words.say("desk.run.firings.ofStages"));
    // Whoever has chosen to adjust one speed has its dial back.
    if (button(Phase.ADJUSTING).isSelected()) {
      adjustingChosen();
    }
    sayFolds();
  }

  private void travelChosen() {
    if (!suggesting && (kind == ShutterKind.UNKNOWN || kind.isCurtain())) {
      kind = TRAVELS.get(Math.max(0, travel.getSelectedIndex()));
    }
  }

  private void dialChosen() {
    int index = dial.getSelectedIndex();
    if (index < 0 || index >= Dial.builtIn().size()) {
      // Its own speeds stay as they are written.
      if (!suggesting) {
        speedsFold.open(true);
      }
      return;
    }
    Dial chosen = Dial.builtIn().get(index);
    speeds.setText(RunForm.list(chosen.speeds()));
    marking.setSelectedIndex(chosen.reference() == Reference.EXACT ? 0 : 1);
  }

  private RunForm form() {
    return new RunForm(
        new ShutterUnderTest(
            camera.getText().strip(),
            kind,
            dial.getSelectedIndex() >= 0 && dial.getSelectedIndex() < Dial.names().size()
                ? Dial.names().get(dial.getSelectedIndex())
                : ownDial,
            marking.getSelectedIndex() == 0 ? Reference.EXACT : Reference.LITERAL,
            new CameraCustoms(beforeCocking.isSelected(), bladesShut.isSelected())),
        phases.entrySet().stream()
            .filter(entry -> entry.getValue().isSelected())
            .map(Map.Entry::getKey)
            .findFirst()
            // Between two choices of the group none is selected.
            .orElse(Phase.AS_FOUND),
        speeds.getText(),
        firings.planned(),
        restSeconds(),
        checks.entrySet().stream()
            .filter(entry -> entry.getValue().isSelected() && entry.getValue().isVisible())
            .map(Map.Entry::getKey)
            .toList(),
        options.texts());
  }

  private void begin(Consumer<RunSetup> onBegin) {
    RunForm form = form();
    wasAdjusting = form.phase() == Phase.ADJUSTING;
    RunSetup setup;
    try {
      setup = form.read();
    } catch (WrongField wrong) {
      sayAt(field(wrong.field()), wrong.getMessage());
      return;
    }
    trouble.setText("");
    trouble.setVisible(false);
    onBegin.accept(setup);
  }

  private JComponent field(String name) {
    return switch (name) {
      case WrongField.SPEEDS -> speeds;
      case WrongField.FIRINGS -> firings;
      case WrongField.PHASE -> button(Phase.AS_FOUND);
      default -> options.named(name).orElse(way);
    };
  }

  /** The sentence stands below the field, the fold around it opens, and it has the focus. */
  private void sayAt(JComponent field, String sentence) {
    trouble.say(sentence);
    trouble.setVisible(true);
    for (Fold fold : folds()) {
      if (SwingUtilities.isDescendingFrom(field, fold)) {
        fold.open(true);
      }
    }
    for (JPanel panel : List.of(ofSpeeds, conditions, curtains, criteria, shutter, main)) {
      if (SwingUtilities.isDescendingFrom(field, panel)) {
        Component row = field;
        while (row.getParent() != panel) {
          row = row.getParent();
        }
        if (trouble.getParent() != null) {
          trouble.getParent().remove(trouble);
        }
        panel.add(trouble, AT_FIELD, List.of(panel.getComponents()).indexOf(row) + 1);
        break;
      }
    }
    main.revalidate();
    field.requestFocusInWindow();
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
      if (!check.isForCurtains()) {
        ofLeaves.add(box);
      }
      panel.add(box);
    }
    return panel;
  }

  private void row(JPanel column, RunOption<?> option) {
    JComponent field = options.of(option);
    JLabel said = row(column, OptionWords.label(option), field);
    if (option.isOfLeaves()) {
      ofLeaves.addAll(List.of(said, field));
    }
  }

  private static JLabel row(JPanel column, String label, JComponent field) {
    JLabel said = new JLabel(label);
    said.setLabelFor(field);
    field.getAccessibleContext().setAccessibleName(label);
    column.add(said);
    column.add(field, "wmin 100");
    return said;
  }

  private static void named(JComponent component, String name) {
    component.setName(name);
  }
}
