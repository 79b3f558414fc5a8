package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.stream.Collectors;
import org.halflight.link.FakeClock;
import org.halflight.link.FakePorts;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.LinkRefusedException.Reason;
import org.halflight.link.PortCandidate;
import org.halflight.link.ScriptedLink;
import org.halflight.rig.PortOutcome.Finding;
import org.junit.jupiter.api.Test;

class RigFinderTest {
  private final FakeClock clock = new FakeClock();
  private final FakePorts ports = new FakePorts();
  private final RigFinder finder = new RigFinder(ports, clock);

  @Test
  void findsARigThatAnswersAtOnce() {
    ScriptedLink link = link("a").expects("h 0000").says(new RigLines().greeting(99));
    ports.plug("a", link);

    RigSearch search = finder.search(RigSelector.any(), () -> true);

    OpenRig rig = search.rig().orElseThrow();
    assertThat(rig.greeting().serial()).isEqualTo("R-0001");
    assertThat(rig.baudRate()).isEqualTo(250_000);
    assertThat(rig.nextSequence()).isEqualTo(1);
    assertThat(rig.lines()).extracting(WireLine::toRig).containsExactly(true, false);
    assertThat(search.sentence()).isEqualTo("Found the rig R-0001 on a.");
    assertThat(link.isClosed()).isFalse();
    link.assertDone();
  }

  @Test
  void waitsForABoardThatOpeningRestarts() {
    RigLines lines = new RigLines();
    ScriptedLink link =
        link("a")
            .expects("h 0000")
            .sends("\u0000\u00ffgarbage of the bootlo")
            .passes(500)
            .expects("h 0001")
            .passes(500)
            .expects("h 0002")
            .passes(500)
            .expects("h 0003")
            .passes(500)
            .expects("h 0004")
            .passes(400)
            .sends("ader\r\n")
            .says(lines.start());
    ports.plug("a", link);

    OpenRig rig = finder.search(RigSelector.any(), () -> true).rig().orElseThrow();

    assertThat(rig.greeting().sequence()).isZero();
    assertThat(rig.lines())
        .extracting(WireLine::line)
        .contains("??garbage of the bootloader")
        .hasSize(7);
    link.assertDone();
  }

  @Test
  void triesTheOtherSpeedsAndForgetsTheirNoise() {
    RigLines lines = new RigLines();
    ScriptedLink link = link("a");
    asked(link, 0).changesTo(500_000).expects("h 0005").sends("\u00f3\u0081\n").passes(500);
    link.expects("h 0006").passes(100).changesTo(115_200).expects("h 0007");
    link.says(lines.greeting(5));
    ports.plug("a", link);

    OpenRig rig = finder.search(RigSelector.any(), () -> true).rig().orElseThrow();

    assertThat(rig.baudRate()).isEqualTo(115_200);
    assertThat(rig.lines()).extracting(WireLine::toRig).containsExactly(true, false);
    link.assertDone();
  }

  @Test
  void keepsLinesThatComeTogetherWithTheGreeting() {
    RigLines lines = new RigLines();
    String beat = lines.beat(50);
    String greeting = lines.greeting(60);
    String next = lines.beat(70);
    ScriptedLink link =
        link("a").expects("h 0000").sends(beat + "\n" + greeting + "\n" + next + "\nB 00");
    ports.plug("a", link);

    OpenRig rig = finder.search(RigSelector.any(), () -> true).rig().orElseThrow();

    assertThat(rig.lines()).extracting(WireLine::line).endsWith(beat, greeting, next).hasSize(4);
    assertThat(rig.reader().accept("11\n")).containsExactly("B 0011");
  }

  @Test
  void tellsASilentPortFromOneThatSpeaksOtherwise() {
    ports.plug("silent", nothing("silent"));
    ScriptedLink modem = link("modem");
    modem.expects("h 0000").sends("ERROR\r\n").passes(500);
    for (int i = 1; i < 5; i++) {
      modem.expects("h 000" + i).passes(500);
    }
    ports.plug("modem", otherSpeeds(modem, 5));

    RigSearch search = finder.search(RigSelector.any(), () -> true);

    assertThat(search.rig()).isEmpty();
    assertThat(findings(search))
        .isEqualTo(Map.of("silent", Finding.SILENT, "modem", Finding.NO_RIG));
    assertThat(search.sentence())
        .contains("Nothing answers on silent")
        .contains("What is on modem speaks, but not as a rig does");
    assertThat(modem.isClosed()).isTrue();
    modem.assertDone();
  }

  @Test
  void doesNotChangeTheSpeedOfARigThatBeatsButDoesNotGreet() {
    RigLines lines = new RigLines();
    ScriptedLink link = link("a").expects("h 0000").says(lines.beat(5)).passes(500);
    for (int i = 1; i < 5; i++) {
      link.expects("h 000" + i).passes(500);
    }
    ports.plug("a", link);

    RigSearch search = finder.search(RigSelector.any(), () -> true);

    assertThat(findings(search)).containsEntry("a", Finding.NO_RIG);
    assertThat(search.sentence()).contains("never greets");
    link.assertDone();
  }

  @Test
  void asksForASerialNumberWhenThereAreTwoRigs() {
    ScriptedLink one = greeting("a", "R-0001");
    ScriptedLink two = greeting("b", "R-0002");
    ports.plug("a", one).plug("b", two);

    RigSearch search = finder.search(RigSelector.any(), () -> true);

    assertThat(search.rig()).isEmpty();
    assertThat(search.sentence())
        .isEqualTo(
            "2 rigs are connected: rig R-0001 on a, rig R-0002 on b. Choose one by its serial"
                + " number, or leave only one plugged in.");
    assertThat(one.isClosed()).isTrue();
    assertThat(two.isClosed()).isTrue();
  }

  @Test
  void takesTheRigOfASerialNumberAndAsksNoFurtherPort() {
    ScriptedLink one = greeting("a", "R-0001");
    ScriptedLink two = greeting("b", "R-0002");
    ports.plug("a", one).plug("b", two).plug("c");

    RigSearch search = finder.search(RigSelector.of("R-0002"), () -> true);

    assertThat(search.rig().orElseThrow().candidate().path()).isEqualTo("b");
    assertThat(one.isClosed()).isTrue();
    assertThat(two.isClosed()).isFalse();
    assertThat(ports.opened()).containsExactly("a", "b");
  }

  @Test
  void saysWhichRigIsThereInsteadOfTheOneThatWasNamed() {
    ports.plug("a", greeting("a", "R-0001"));

    assertThat(finder.search(RigSelector.of("R-0009"), () -> true).sentence())
        .isEqualTo("The rig R-0009 is not connected, but rig R-0001 on a. Plug it in.");
  }

  @Test
  void opensOtherPortsOnlyWhenAsked() {
    ScriptedLink link = greeting("modem", "R-0001");
    ports.plug(new PortCandidate("modem", "something", false), link);

    RigSearch unasked = finder.search(RigSelector.any(), () -> true);
    assertThat(unasked.rig()).isEmpty();
    assertThat(unasked.sentence())
        .contains("None of the ports here looks like a rig, and none was opened: modem.");
    assertThat(ports.opened()).isEmpty();

    assertThat(finder.search(RigSelector.any().onEveryPort(), () -> true).rig()).isPresent();
  }

  @Test
  void passesOnWhyPortsCannotBeOpened() {
    ports.plugRefusing("a", new LinkRefusedException(Reason.NO_PERMISSION, "Join a group."));
    ports.plugRefusing("b", new LinkRefusedException(Reason.BUSY, "Close the other program."));
    ports.plugRefusing("c", new LinkRefusedException(Reason.FAILED, "It is broken."));

    RigSearch search = finder.search(RigSelector.any(), () -> true);

    assertThat(findings(search))
        .isEqualTo(Map.of("a", Finding.NO_PERMISSION, "b", Finding.BUSY, "c", Finding.UNUSABLE));
    assertThat(search.sentence())
        .isEqualTo("No rig was found. Join a group. Close the other program. It is broken.");
  }

  @Test
  void goesOnToTheNextPortWhenOneGoesAway() {
    ScriptedLink going = link("a").expects("h 0000").passes(200).breaks();
    ports.plug("a", going).plug("b", greeting("b", "R-0001"));

    RigSearch search = finder.search(RigSelector.any(), () -> true);

    assertThat(findings(search)).isEqualTo(Map.of("a", Finding.UNUSABLE, "b", Finding.RIG));
    assertThat(search.rig()).isPresent();
    assertThat(going.isClosed()).isTrue();
  }

  @Test
  void refusesARigOfAnotherProtocol() {
    ScriptedLink link = link("a").expects("h 0000").says(new RigLines().greetingOfProtocol(2));
    ports.plug("a", link);

    RigSearch search = finder.search(RigSelector.any(), () -> true);

    assertThat(search.rig()).isEmpty();
    assertThat(findings(search)).containsEntry("a", Finding.OTHER_PROTOCOL);
    assertThat(search.sentence()).contains("speaks version 2 of the line protocol");
    assertThat(link.isClosed()).isTrue();
  }

  @Test
  void saysWhatToDoWhenThereIsNoPort() {
    assertThat(finder.search(RigSelector.any(), () -> true).sentence())
        .isEqualTo(
            "No rig was found. No board is connected. Plug the rig in. If it is in, try another"
                + " cable, since some only charge, and a socket of the computer itself.");
  }

  @Test
  void endsAndClosesWhenItIsToldTo() {
    ScriptedLink link = link("a").expects("h 0000").passes(200);
    ports.plug("a", link).plug("b");
    long start = clock.getAsLong();

    RigSearch search =
        finder.search(RigSelector.any(), () -> clock.getAsLong() - start < 200_000_000L);

    assertThat(search.rig()).isEmpty();
    assertThat(link.isClosed()).isTrue();
    assertThat(ports.opened()).containsExactly("a");
  }

  private ScriptedLink link(String name) {
    return new ScriptedLink(name, clock);
  }

  private ScriptedLink greeting(String name, String serial) {
    return link(name).expects("h 0000").says(new RigLines(serial).greeting(7));
  }

  /** Something that is asked for a greeting over 2.5 s and says nothing. */
  private static ScriptedLink asked(ScriptedLink link, int firstSequence) {
    for (int i = 0; i < 5; i++) {
      link.expects(String.format("h %04X", firstSequence + i)).passes(500);
    }
    return link;
  }

  private ScriptedLink nothing(String name) {
    return otherSpeeds(asked(link(name), 0), 5);
  }

  private static ScriptedLink otherSpeeds(ScriptedLink link, int firstSequence) {
    int sequence = firstSequence;
    for (int baudRate : new int[] {500_000, 115_200}) {
      link.changesTo(baudRate).expects(String.format("h %04X", sequence)).passes(500);
      link.expects(String.format("h %04X", sequence + 1)).passes(100);
      sequence += 2;
    }
    return link;
  }

  private static Map<String, Finding> findings(RigSearch search) {
    return search.outcomes().stream()
        .collect(Collectors.toMap(o -> o.candidate().path(), PortOutcome::finding));
  }
}
