package org.halflight.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the drawings join is what the firmware reads and what the circuit of the claim has. */
class StarterDrawingsTest {
  private static final Set<String> RELEASE =
      Set.of("release signal", "release ground", "release resistor 1", "release resistor 2", "D12");

  private static final StarterBreadboard.Step LAST =
      StarterBreadboard.STEPS.get(StarterBreadboard.STEPS.size() - 1);

  @Test
  void theFilesAreWhatIsDrawn() throws Exception {
    for (Map.Entry<Path, String> each : StarterDrawings.all().entrySet()) {
      assertThat(Files.readString(each.getKey()))
          .as("%s", each.getKey())
          .isEqualTo(each.getValue());
    }
  }

  @Test
  void breadboardAndSchematicJoinWhatTheDeckAndTheFirmwareJoin() throws Exception {
    Set<Set<String>> expected = netsOfDeckAndFirmware();
    assertThat(withoutRelease(StarterBreadboard.netlist(LAST).nets())).isEqualTo(expected);
    assertThat(withoutRelease(StarterSchematic.netlist().nets())).isEqualTo(expected);
    assertThat(withoutRelease(StarterBreadboard.netlist(StarterBreadboard.UNO).nets()))
        .isEqualTo(expected);
  }

  @Test
  void theReleaseIsBetweenItsPinAndGround() throws Exception {
    String pin = "D" + (8 + bit(board(), "BOARD_RELEASE_BIT"));
    for (Netlist drawn : List.of(StarterBreadboard.netlist(LAST), StarterSchematic.netlist())) {
      assertThat(drawn.nets())
          .contains(Set.of(pin, "release resistor 1"))
          .contains(Set.of("release resistor 2", "release signal"))
          .anySatisfy(net -> assertThat(net).contains("GND", "release ground"));
    }
  }

  @Test
  void nothingIsOnThePinsThatTheFirmwareHoldsHigh() throws Exception {
    int unused = Integer.decode(value(board(), "BOARD_UNUSED_D"));
    for (int pin = 0; pin < 8; pin++) {
      String name = "D" + pin;
      boolean isJoined =
          StarterBreadboard.netlist(LAST).nets().stream().anyMatch(net -> net.contains(name));
      assertThat(isJoined && (unused & 1 << pin) != 0).as(name).isFalse();
    }
    assertThat(unused & (1 << 2 | 1 << 6)).isEqualTo(1 << 2 | 1 << 6);
  }

  @Test
  void noTwoLegsShareAHoleAndNoneIsUnderTheBoard() {
    for (StarterBreadboard.Step step : StarterBreadboard.STEPS) {
      assertThat(StarterBreadboard.holes(step)).as(step.title()).doesNotHaveDuplicates();
    }
  }

  /** A drawing with the diode's lead one column further on would be another circuit. */
  @Test
  void aLegInTheNextColumnIsFound() throws Exception {
    Netlist wrong = new Netlist().leg("A0", "a-e 22").leg("photodiode anode", "a-e 23");
    assertThat(wrong.nets()).isEmpty();
    assertThat(wrong.wire("a-e 22", "a-e 23").nets())
        .containsExactly(Set.of("A0", "photodiode anode"));
  }

  @Test
  void everyPictureSaysWhatMustNotBeDone() {
    StarterDrawings.all()
        .values()
        .forEach(
            picture ->
                assertThat(picture)
                    .contains("USB port only")
                    .containsIgnoringCase("flash unit")
                    .contains("D2, D3, D4, D5"));
  }

  @Test
  void theOtherDrawingsHaveTheirCautionsToo() throws Exception {
    String full = Files.readString(Path.of("docs/wiring.svg"));
    String small = Files.readString(Path.of("docs/wiring-small.svg"));
    assertThat(List.of(full, small))
        .allSatisfy(
            drawing ->
                assertThat(drawing)
                    .contains("USB port only", "flash unit off the camera", "low-voltage input")
                    .contains("qualified person", "rules of your country"));
    assertThat(full)
        .contains("isolated (build this)", "2 W, 350 V each", "the 22 k between TVS and D7")
        .contains("anti-", "only for a bench without flash units", "trimmer of 10 k");
    assertThat(small).contains("never wire one");
  }

  /** Without the optional parts, and with board pins of the same name once. */
  private static Set<Set<String>> withoutRelease(Set<Set<String>> nets) {
    return nets.stream()
        .map(
            net ->
                net.stream()
                    .filter(leg -> !RELEASE.contains(leg) && !leg.equals("RST"))
                    .collect(Collectors.toCollection(TreeSet::new)))
        .filter(net -> net.size() > 1)
        .collect(Collectors.toSet());
  }

  /**
   * Nodes of the ngspice deck; converter and comparator are the pins that the firmware gives them.
   */
  private static Set<Set<String>> netsOfDeckAndFirmware() throws Exception {
    String deck = Files.readString(Path.of("fixtures/rig/starter/front_end.cir"));
    String board = board();
    // The chip's data sheet: ADCn is An, AIN1 is D7.
    String converter = "A" + value(board, "BOARD_ADC_CENTRE");
    assertThat(board).contains("ACSR = 1 << ACBG | 1 << ACIC; /* the bandgap against AIN1 */");
    assertThat(value(board, "BOARD_CONTACT_BIT")).isEqualTo("7");
    Netlist netlist = new Netlist();
    leg(netlist, deck, "Vcc (\\S+) (\\S+) DC", "5V", "GND");
    leg(netlist, deck, "Dpd (\\S+) (\\S+) dpin", "photodiode anode", "photodiode cathode");
    leg(netlist, deck, "Rl (\\S+) (\\S+) \\{r\\}", "resistor 1", "resistor 2");
    leg(netlist, deck, "Cl (\\S+) (\\S+) \\{c\\}", "capacitor 1", "capacitor 2");
    leg(netlist, deck, "S1 (\\S+) m s", converter);
    leg(netlist, deck, "Bc .*V\\((\\w+)\\)-\\{vbg", "D7");
    return new HashSet<>(netlist.nets());
  }

  private static void leg(Netlist netlist, String deck, String line, String... legs) {
    Matcher found = Pattern.compile("(?m)^" + line).matcher(deck);
    assertThat(found.find()).as(line).isTrue();
    for (int i = 0; i < legs.length; i++) {
      netlist.leg(legs[i], found.group(i + 1));
    }
  }

  private static String board() throws Exception {
    return Files.readString(Path.of("firmware/src/board.h"));
  }

  private static int bit(String board, String name) {
    return Integer.parseInt(value(board, name));
  }

  private static String value(String board, String name) {
    Matcher found = Pattern.compile("#define " + name + " (\\w+)").matcher(board);
    assertThat(found.find()).as(name).isTrue();
    return found.group(1);
  }
}
