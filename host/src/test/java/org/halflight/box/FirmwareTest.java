package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * The firmware's own tests: its pure parts compiled for this computer, a look into the ELF, and the
 * ELF run cycle by cycle in the simulator. All timing figures are simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class FirmwareTest {
  private static final Pattern TAP = Pattern.compile("(not )?ok \\d+ - (.*)");

  @TestFactory
  Stream<DynamicNode> firmwareTests() throws Exception {
    String printed = AvrTools.makeKeepingResult("firmware", "all", "test");
    List<DynamicNode> tests = new ArrayList<>();
    printed
        .lines()
        .filter(line -> line.startsWith("#") || line.startsWith("flash"))
        .forEach(System.out::println);
    Matcher tap = TAP.matcher("");
    printed
        .lines()
        .filter(line -> tap.reset(line).matches())
        .forEach(
            line -> {
              Matcher each = TAP.matcher(line);
              boolean good = each.matches() && each.group(1) == null;
              tests.add(dynamicTest(each.group(2), () -> assertThat(good).as(line).isTrue()));
            });
    tests.add(
        dynamicTest(
            "make ran to its end",
            () -> assertThat(printed).as("what make printed").endsWith(AvrTools.RAN_WELL)));
    return tests.stream();
  }
}
