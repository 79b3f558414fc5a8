package org.halflight.report;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.chart.Picture;
import org.halflight.exposure.ByLaw;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.StopTable;
import org.halflight.extratest.Bounce;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.LightLeak;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.record.CurtainTravels;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Source;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.validation.ModelRuns;
import org.halflight.verdict.CalibrationStatus;
import org.halflight.verdict.Fired;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.ExtraTestWords;

/** Pages of every kind, for tests and for looking at. All figures are invented. */
final class SamplePages {
  static final List<MarkedSpeed> FIVE = Dial.custom("1/15,1/30,1/60,1/125,1/250").get().speeds();
  static final List<MarkedSpeed> TEN = Dial.find("leaf").orElseThrow().speeds();
  static final List<MarkedSpeed> FOURTEEN =
      Dial.custom("8,4,2,1,1/2,1/4,1/8,1/15,1/30,1/60,1/125,1/250,1/500,1/1000").get().speeds();
  static final String LONG_NAME =
      "Invented folding camera of the late thirties, nickel front, with the second owner's initials"
          + " K\u00f6ln-\u0141\u00f3d\u017a No. 2 and a Donaudampfschifffahrtsgesellschaftskapit\u00e4nsm\u00fctzenabzeichen";

  private static final Map<String, PageInput> ALL = make();

  private SamplePages() {}

  static Map<String, PageInput> all() {
    return ALL;
  }

  private static Map<String, PageInput> make() {
    Map<String, PageInput> pages = new LinkedHashMap<>();
    pages.put("ten", cleaned(TEN, "Invented camera", Source.PRACTICE));
    pages.put("five", cleaned(FIVE, "Invented camera", Source.RIG));
    pages.put("fourteen", cleaned(FOURTEEN, "Invented camera", Source.PRACTICE));
    pages.put("long-names", longNames());
    pages.put("no-as-found", noAsFound());
    pages.put("hung", hung());
    pages.put("few-speeds", fewSpeeds());
    return pages;
  }

  static PageInput cleaned(List<MarkedSpeed> dial, String camera, Source source) {
    RunSummary found =
        new ModelRuns(InventedShutters.dirtySlowTrain(dial, 20)).next(Phase.AS_FOUND, 5);
    RunSummary left =
        new ModelRuns(InventedShutters.cleanedSlowTrain(dial, 21)).next(Phase.AS_LEFT, 5);
    return page(
        camera,
        dial,
        Optional.of(new RunPart(found, "3 March, rested for 40 days", Map.of())),
        Optional.of(new RunPart(left, "6 March", Map.of())),
        lists(),
        List.of(
            "Slow-speed train taken out, rinsed, dried, a trace of oil at the bearings.",
            "Blades wiped dry."),
        source,
        false);
  }

  private static PageInput longNames() {
    RunSummary found =
        new ModelRuns(InventedShutters.dirtySlowTrain(TEN, 20)).next(Phase.AS_FOUND, 5);
    RunSummary left =
        new ModelRuns(InventedShutters.cleanedSlowTrain(TEN, 21)).next(Phase.AS_LEFT, 5);
    List<CheckLine> lists = new ArrayList<>(lists());
    lists.add(
        line(
            CheckItem.RANGEFINDER,
            "Rangefinder, vertical and horizontal, at infinity and at one metre",
            Optional.of(CheckState.FAULT),
            Optional.of(CheckState.OK),
            "The lower prism had slipped; it was set and fixed with shellac. " + LONG_NAME));
    return page(
        LONG_NAME,
        TEN,
        Optional.of(
            new RunPart(
                found,
                "before any work, after an unknown rest of at least some years",
                Map.of("shutter", "in the camera", "cells", "on", "attitude", "lens level"))),
        Optional.of(
            new RunPart(
                left, "the same evening", Map.of("shutter", "in the camera", "cells", "off"))),
        lists,
        List.of(
            "Everything that could be taken apart without heat was taken apart, and "
                + "x".repeat(120)
                + " was put together again. \u0378\u0379",
            "Ground."),
        Source.RIG,
        true);
  }

  private static PageInput noAsFound() {
    RunSummary left = new ModelRuns(InventedShutters.soundLeaf(TEN, 3)).next(Phase.AS_LEFT, 5);
    return page(
        "Invented camera",
        TEN,
        Optional.empty(),
        Optional.of(new RunPart(left, "", Map.of())),
        List.of(),
        List.of(),
        Source.RIG,
        false);
  }

  private static PageInput hung() {
    Fired found = Fired.asFound();
    Fired left = Fired.asLeft();
    for (MarkedSpeed speed : TEN) {
      boolean slow = speed.literalSeconds() > 0.2;
      if (speed.label().equals("1")) {
        found.hanging("1", 5);
      } else if (slow) {
        found.hanging(speed.label(), 2, 0.9, 1.4, 0.7);
      } else {
        found.at(speed.label(), Fired.errors(speed.label().hashCode(), 5, 0.05, 0.03));
      }
      if (speed.label().equals("1")) {
        left.hanging("1", 1, 0.35, 0.1, 0.4, 0.02, 0.5);
      } else {
        left.at(speed.label(), Fired.errors(speed.label().hashCode() + 1, 5, 0.04, 0.03));
      }
    }
    return page(
        "Invented camera",
        TEN,
        Optional.of(new RunPart(found.run(), "", Map.of())),
        Optional.of(new RunPart(left.run(), "", Map.of())),
        lists(),
        List.of("Flushed."),
        Source.SIMULATOR,
        true);
  }

  /** Curtains whose travels are made up: even at 1/60, darker at the end at the top. */
  static PageInput curtains() {
    CurtainTravel even = CurtainTravels.open(CurtainTravels.of(14, 14, 0.05, 36), 0.0026);
    CurtainTravel darker = CurtainTravels.of(14, 13.4, -0.32, 2.1);
    List<FiringResult> firings = new ArrayList<>();
    firings.addAll(CurtainTravels.firings(Phase.AS_LEFT, "1/60", even, even));
    firings.addAll(CurtainTravels.firings(Phase.AS_LEFT, "1/500", darker, darker));
    firings.addAll(
        CurtainTravels.firings(
            Phase.AS_LEFT, "1/1000", CurtainTravels.capped(), CurtainTravels.capped()));
    RunSummary left = RunSummary.of(firings, speed -> Tolerance.THIRD).get(0);
    return page(
            "Invented 35 mm",
            left.speeds().stream().map(SpeedSummary::speed).toList(),
            Optional.empty(),
            Optional.of(new RunPart(left, "", Map.of(), gate(left, firings))),
            List.of(),
            List.of("Curtains adjusted"),
            Source.RIG,
            false)
        .with(List.of("Slit eccentric: clockwise by 0.1 turn"));
  }

  private static Optional<Picture> gate(RunSummary run, List<FiringResult> firings) {
    RunSetup setup =
        new RunSetup("", Phase.AS_LEFT, "curtain", List.of(), Reference.EXACT, 2, UntimedTest.B);
    return OwnersGate.of(Optional.empty(), new PageRun(setup, Optional.empty(), run, firings));
  }

  private static PageInput fewSpeeds() {
    RunSummary found = Fired.asFound().at("1/60", 0.1, 0.12).at("1/125", 0.3).run();
    return page(
        "",
        FIVE,
        Optional.of(new RunPart(found, "", Map.of())),
        Optional.empty(),
        List.of(),
        List.of(),
        Source.RIG,
        false);
  }

  /** Bounce as found and none as left, invented. */
  static List<ExtraTest> tried() {
    return List.of(bounce(Phase.AS_FOUND, 0.09), bounce(Phase.AS_LEFT, 0), leak(true));
  }

  /** A leak test as left that found nothing; of one state of the shutter, or of both. */
  static LightLeak leak(boolean both) {
    Optional<LightLeak.Reading> nothing =
        Optional.of(new LightLeak.Reading(0.2, 0.4, OptionalDouble.of(812), 1000));
    return new LightLeak(2, Optional.of(Phase.AS_LEFT), nothing, both ? nothing : Optional.empty());
  }

  static Bounce bounce(Phase phase, double share) {
    return new Bounce(
        phase == Phase.AS_FOUND ? 1 : 2,
        Optional.of(phase),
        List.of(
            new Bounce.AtSpeed(
                MarkedSpeed.parse("1/500"), Sample.of(share, share), Sample.of(0, 0), 2)),
        0,
        0);
  }

  private static List<CheckLine> lists() {
    Optional<CheckState> ok = Optional.of(CheckState.OK);
    Optional<CheckState> fault = Optional.of(CheckState.FAULT);
    Optional<CheckState> not = Optional.of(CheckState.NOT_TESTED);
    return List.of(
        line(CheckItem.BLADES, "Blades", ok, ok, ""),
        line(CheckItem.OIL_ON_BLADES, "Oil on blades", fault, ok, "a film near the pivots"),
        line(CheckItem.B_AND_T, "B and T", ok, ok, "T not on this shutter"),
        line(
            CheckItem.SELF_TIMER,
            "Self-timer",
            not,
            not,
            "never wound: the gears are known to be weak"),
        line(CheckItem.FLASH_CONTACT, "Flash contact", not, not, ""),
        line(
            CheckItem.LIGHT_SEALS,
            "Light seals",
            fault,
            fault,
            "owner does not want them replaced"));
  }

  /** A page with these lists. */
  static PageInput withLists(List<CheckLine> lists) {
    RunSummary left = new ModelRuns(InventedShutters.soundLeaf(TEN, 3)).next(Phase.AS_LEFT, 5);
    return page(
        "Invented camera",
        TEN,
        Optional.empty(),
        Optional.of(new RunPart(left, "", Map.of())),
        lists,
        List.of(),
        Source.RIG,
        false);
  }

  private static CheckLine line(
      CheckItem item,
      String words,
      Optional<CheckState> intake,
      Optional<CheckState> handBack,
      String remark) {
    return new CheckLine(Optional.of(item), words, intake, handBack, remark);
  }

  private static PageInput page(
      String camera,
      List<MarkedSpeed> dial,
      Optional<RunPart> found,
      Optional<RunPart> left,
      List<CheckLine> lists,
      List<String> work,
      Source source,
      boolean wet) {
    Map<MarkedSpeed, StopTable> tables = new LinkedHashMap<>();
    left.or(() -> found)
        .orElseThrow()
        .run()
        .speeds()
        .forEach(
            speed -> {
              if (speed.meanSeconds().isPresent()) {
                // Blades that take 1.6 ms to open and close together, by one law and the other.
                ByLaw travel = new ByLaw(1.6e-3, 2.0e-3);
                double effective = speed.meanSeconds().getAsDouble();
                tables.put(
                    speed.speed(),
                    new StopTable(
                        ByLaw.of(law -> effective + law.lostPart() * travel.under(law)), travel));
              }
            });
    List<ExtraTest> tried = lists.isEmpty() ? List.of() : tried();
    return new PageInput(
        camera,
        camera.isEmpty() ? "" : "INV 20 114",
        camera.isEmpty() ? "" : "J-0420",
        Details.NONE,
        "leaf shutter",
        dial,
        found,
        left,
        CheckLines.filled(lists, tried),
        tried.stream().map(ExtraTestWords::inShort).toList(),
        work,
        "",
        List.of(),
        CalibrationStatus.NOT_CALIBRATED,
        wet,
        tables,
        camera.equals(LONG_NAME) ? OptionalDouble.of(3.5) : OptionalDouble.empty(),
        source,
        switch (source) {
          case RIG -> "measured on rig R-0001";
          case PRACTICE -> "practice rig: invented shutter, simulated figures";
          case SIMULATOR -> "simulated board: real firmware, simulated shutter and light";
        },
        Instant.parse("2026-03-07T10:00:00Z"),
        "7 March 2026",
        "test");
  }

  /** The same page with what is noted of camera and visit; all names are invented. */
  static PageInput noted(PageInput page, String camera, Map<Detail, String> noted) {
    return new PageInput(
        camera,
        page.serialNumber(),
        page.jobNumber(),
        new Details(noted),
        page.shutterKind(),
        page.dial(),
        page.asFound(),
        page.asLeft(),
        page.lists(),
        page.alsoTried(),
        page.workDone(),
        page.moved(),
        page.notTested(),
        page.standing(),
        page.stillWet(),
        page.stopTables(),
        page.measuredFNumber(),
        page.source(),
        page.sourceWords(),
        page.writtenAt(),
        page.date(),
        page.version());
  }
}
