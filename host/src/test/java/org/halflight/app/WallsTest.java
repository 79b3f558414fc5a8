package org.halflight.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.List;

/** The walls between the packages; each says why it stands. */
@AnalyzeClasses(packages = "org.halflight", importOptions = ImportOption.DoNotIncludeTests.class)
class WallsTest {
  private static final String ROOT = "org.halflight.";

  /**
   * The way of the data: a package uses only those before it in this list (and itself). The
   * practice model comes after the verdict: a judge must not know the answer. Jobs come after the
   * session: a run of a job is a run of a session and more, and a session knows no camera.
   */
  private static final List<String> WAY =
      List.of(
          "stored",
          "trouble",
          "time",
          "speeds",
          "signal",
          "light",
          "profile",
          "exposure",
          "stats",
          "calibration",
          "uncertainty",
          "session",
          "job",
          "extratest",
          "verdict",
          "words",
          "upload",
          "files",
          "photo",
          "shuttermodel",
          "link",
          "link.serial",
          "rig",
          "rig.practice",
          "firstlight",
          "bench",
          "capture",
          "record",
          "chart",
          "report",
          "export",
          "workflow",
          "cli",
          "desk.view",
          "desk",
          "app");

  @ArchTest
  static final ArchRule dataFlowsOneWay =
      classes()
          .should(useOnlyPackagesBeforeTheirOwn())
          .because(
              "edges become firings, exposures, statistics, verdicts and pages, never the other"
                  + " way");

  @ArchTest
  static final ArchRule oneDoorToThePort =
      noClasses()
          .that()
          .resideOutsideOfPackage(ROOT + "link.serial")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.fazecast..")
          .because("the serial library's habits are known to one package only");

  @ArchTest
  static final ArchRule picturesOnlyWhereTheyBelong =
      noClasses()
          .that()
          .resideOutsideOfPackages(ROOT + "chart..", ROOT + "report..", ROOT + "desk..")
          .and()
          .doNotHaveFullyQualifiedName(ROOT + "app.Main")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.awt..", "javax.swing..")
          .because("everything else must run where there is no display");

  @ArchTest
  static final ArchRule printingOnlyOnTheCommandLine =
      noClasses()
          .that()
          .resideOutsideOfPackages(ROOT + "cli..", ROOT + "app..")
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .because("what a person reads is decided in one place");

  @ArchTest
  static final ArchRule databaseOnlyInRecord =
      noClasses()
          .that()
          .resideOutsideOfPackage(ROOT + "record..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.sql..", "org.sqlite..")
          .because("the record is one package's business");

  @ArchTest
  static final ArchRule clocksAreHandedIn =
      noClasses()
          .that()
          .resideOutsideOfPackage(ROOT + "app..")
          .should()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(java.time.Instant.class, "now")
          .orShould()
          .callMethod(java.time.LocalDate.class, "now")
          .orShould()
          .callMethod(java.time.LocalDateTime.class, "now")
          .orShould()
          .callMethod(java.time.ZonedDateTime.class, "now")
          .because("results must come out the same whenever they are computed");

  @ArchTest
  static final ArchRule pureComputingTouchesNoFile =
      noClasses()
          .that()
          .resideInAnyPackage(
              ROOT + "time",
              ROOT + "speeds",
              ROOT + "signal",
              ROOT + "light",
              ROOT + "profile",
              ROOT + "exposure",
              ROOT + "stats",
              ROOT + "uncertainty",
              ROOT + "calibration",
              ROOT + "job",
              ROOT + "extratest",
              ROOT + "session",
              ROOT + "verdict",
              ROOT + "upload",
              ROOT + "firstlight",
              ROOT + "shuttermodel")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "java.io..",
              "java.nio",
              "java.nio.file..",
              "java.nio.channels..",
              "java.net..",
              "java.util.logging..")
          .because("raw data in, numbers out: that is what can be tested and recomputed");

  @ArchTest
  static final ArchRule noCycles = slices().matching(ROOT + "(**)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule namesSayWhatAThingIs =
      noClasses()
          .should()
          .haveNameMatching(".*(Util|Utils|Helper|Manager)")
          .because("such a name means that nobody knew what the class is for");

  private static ArchCondition<JavaClass> useOnlyPackagesBeforeTheirOwn() {
    return new ArchCondition<>("use only packages before their own on the way of the data") {
      @Override
      public void check(JavaClass item, ConditionEvents events) {
        int own = place(item);
        if (own < 0) {
          events.add(
              SimpleConditionEvent.violated(item, item.getName() + " is in no known package"));
          return;
        }
        item.getDirectDependenciesFromSelf().stream()
            .filter(dependency -> IN_HALFLIGHT.test(dependency.getTargetClass()))
            .filter(
                dependency -> {
                  int other = place(dependency.getTargetClass());
                  return other > own || forbiddenPair(item, dependency.getTargetClass());
                })
            .forEach(
                dependency ->
                    events.add(SimpleConditionEvent.violated(item, dependency.getDescription())));
      }
    };
  }

  private static final DescribedPredicate<JavaClass> IN_HALFLIGHT =
      JavaClass.Predicates.resideInAPackage("org.halflight..");

  private static boolean forbiddenPair(JavaClass from, JavaClass to) {
    return from.getPackageName().startsWith(ROOT + "desk")
        && to.getPackageName().equals(ROOT + "cli");
  }

  private static int place(JavaClass item) {
    String name = item.getPackageName();
    return name.startsWith(ROOT) ? WAY.indexOf(name.substring(ROOT.length())) : -1;
  }
}
