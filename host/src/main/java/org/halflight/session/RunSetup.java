package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.halflight.exposure.CurtainGeometry;
import org.halflight.exposure.ExposureMethod;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.speeds.Tolerance;

/**
 * What a run is asked to do.
 *
 * @param shutter that it is about
 * @param phase where in the work it is
 * @param plan what is to be fired and tried
 * @param conditions what was noted about the set-up
 * @param criteria what its verdicts are about
 */
public record RunSetup(
    ShutterUnderTest shutter,
    Phase phase,
    RunPlan plan,
    RunConditions conditions,
    AcceptanceCriteria criteria) {
  /**
   * A run with nothing noted, whose tries follow its plan and whose verdicts are the usual ones.
   */
  public RunSetup(
      String camera,
      Phase phase,
      String dial,
      List<MarkedSpeed> order,
      Reference reference,
      int firingsPerSpeed,
      UntimedTest... untimedTests) {
    this(
        new ShutterUnderTest(camera, ShutterKind.UNKNOWN, dial, reference, CameraCustoms.NONE),
        phase,
        new RunPlan(order, firingsPerSpeed, List.of(untimedTests)),
        RunConditions.NONE,
        AcceptanceCriteria.USUAL);
  }

  /** The owner's label of the camera; may be empty. */
  public String camera() {
    return shutter.camera();
  }

  /** Key of the dial, see {@link Dial#key}. */
  public String dial() {
    return shutter.dial();
  }

  /** How the markings are read. */
  public Reference reference() {
    return shutter.reference();
  }

  /** What the camera wants. */
  public CameraCustoms customs() {
    return shutter.customs();
  }

  /** The speeds to fire, in order. */
  public List<MarkedSpeed> order() {
    return plan.order();
  }

  /** Good firings wanted of each speed, from 1. */
  public int firingsPerSpeed() {
    return plan.firingsPerSpeed();
  }

  /** What is tried after the speeds. */
  public List<UntimedTest> untimedTests() {
    return plan.untimedTests();
  }

  /** After so many tries a speed is done, whatever they brought. */
  public int mostTries() {
    return plan.mostTries();
  }

  /** Whether it is a quick look: each speed once, then the largest error again. */
  public boolean isQuick() {
    return criteria.isQuick();
  }

  /** What was chosen or noted of an option, as {@link RunOption#find} reads it. */
  public String text(RunOption<?> option) {
    return RunOption.CRITERIA.contains(option)
        ? criteria.text(option)
        : conditions.noted().getOrDefault(option.name(), "");
  }

  /**
   * Where the sensors are behind the curtains of this run. Empty where nothing runs over the frame
   * from edge to edge, nobody said how large the frame is or which way the curtains run, or the
   * places that were noted make no sense together: then only the centre can be measured.
   */
  public Optional<CurtainGeometry> curtainGeometry() {
    OptionalDouble along =
        conditions
            .get(RunOption.FRAME)
            .map(frame -> frame.alongTravelMillimetres(shutter.kind()))
            .orElse(OptionalDouble.empty());
    return along.isPresent() ? geometry(along.getAsDouble()) : Optional.empty();
  }

  /** How its firings are measured. */
  public ExposureMethod exposureMethod() {
    return ExposureMethod.of(shutter.kind(), curtainGeometry());
  }

  private Optional<CurtainGeometry> geometry(double frame) {
    CurtainGeometry usual = CurtainGeometry.usual(frame);
    Optional<Double> gap = conditions.get(RunOption.CURTAIN_GAP);
    Optional<Double> lamp = conditions.get(RunOption.LAMP_DISTANCE);
    double outer = conditions.get(RunOption.OUTER_SENSORS).orElse(usual.outerMillimetres());
    double gapMm = gap.orElse(usual.curtainToSensorMillimetres());
    double lampMm = lamp.orElse(usual.lampToSensorMillimetres());
    return outer > frame / 2 || CurtainGeometry.isLampTooNear(gapMm, lampMm)
        ? Optional.empty()
        : Optional.of(
            new CurtainGeometry(
                frame,
                outer,
                conditions.get(RunOption.SENSOR_SLIT).orElse(usual.sensorSlitMillimetres()),
                gapMm,
                lampMm,
                conditions.get(RunOption.LAMP_SIZE).orElse(usual.lampMillimetres()),
                gap.isPresent() && lamp.isPresent()));
  }

  /** The same run of a shutter of another kind. */
  public RunSetup withShutterKind(ShutterKind kind) {
    ShutterUnderTest its = new ShutterUnderTest(camera(), kind, dial(), reference(), customs());
    return new RunSetup(its, phase, plan, conditions, criteria);
  }

  /** The same run of a camera that wants something else. */
  public RunSetup withCustoms(CameraCustoms customs) {
    ShutterUnderTest its =
        new ShutterUnderTest(camera(), shutter.kind(), dial(), reference(), customs);
    return new RunSetup(its, phase, plan, conditions, criteria);
  }

  /** The same run, given up after another number of tries. */
  public RunSetup withMostTries(int tries) {
    return new RunSetup(shutter, phase, plan.withMostTries(tries), conditions, criteria);
  }

  /** The same run under other conditions. */
  public RunSetup withConditions(RunConditions conditions) {
    return new RunSetup(shutter, phase, plan, conditions, criteria);
  }

  /** The same run with verdicts about something else. */
  public RunSetup withCriteria(AcceptanceCriteria criteria) {
    return new RunSetup(shutter, phase, plan, conditions, criteria);
  }

  /** Whether another set-up asks for the same, however many tries each allows. */
  public boolean asksTheSameAs(RunSetup other) {
    return withMostTries(other.mostTries()).equals(other);
  }

  /**
   * What a speed of this run is held against: what was chosen for it, else trade custom on the dial
   * of the run, however few of its speeds were fired. The one rule for all that shows a verdict.
   */
  public Tolerance tolerance(MarkedSpeed speed) {
    return criteria.tolerances().of(speed, markings());
  }

  /**
   * The dial that the speeds are on: the one that it was set up for, or one of just these speeds
   * where that is not known.
   */
  public Dial markings() {
    Optional<Dial> known = Dial.ofKey(dial()).filter(each -> each.speeds().containsAll(order()));
    if (known.isPresent() || order().isEmpty()) {
      return known.orElseGet(() -> Dial.builtIn().get(0));
    }
    String labels = order().stream().map(MarkedSpeed::label).collect(Collectors.joining(","));
    return new Dial(Dial.CUSTOM, Dial.custom(labels).orElseThrow().speeds(), reference());
  }

  /** All settings in the order in which they are shown, each once; B first in a stage. */
  public List<DialSetting> settings() {
    return isStage() ? plan.settingsTestsFirst() : plan.settings();
  }

  /** Whether it is a stage of assembly. */
  public boolean isStage() {
    return criteria.stages();
  }

  /** How far the shutter is put together in a stage of assembly. */
  public Assembly assembly() {
    return Assembly.of(conditions).of(shutter.isCurtain());
  }

  /** The same stage with the shutter put together otherwise. */
  public RunSetup with(Assembly assembly) {
    return withConditions(assembly.of(shutter.isCurtain()).in(conditions));
  }

  /** Whether another set-up is a stage of the same assembly, be the parts on or off. */
  public boolean isStageOf(RunSetup other) {
    return isStage()
        && other.isStage()
        && with(Assembly.BARE).asksTheSameAs(other.with(Assembly.BARE));
  }

  /** Good firings wanted of a speed; in a stage the top speed wants one. */
  public int firingsWanted(MarkedSpeed speed) {
    boolean isTop =
        isStage()
            && order().size() > 1
            && order().stream().allMatch(s -> s.exactSeconds() >= speed.exactSeconds());
    return isTop ? 1 : firingsPerSpeed();
  }
}
