package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Everything in the window can be read, reached and told apart, on small and on dense screens. */
@ExtendWith(Display.class)
@Tag("window")
class DeskFitTest {
  @Test
  void everyPlaceFitsAndTheMainScreensAreAsTheyWereKept() throws Exception {
    Path folder = KeptScreens.cleared("usual");
    String printed = KeptScreens.run(folder);
    assertFit(printed);
    ShippedLetters.areOthers()
        .ifPresent(
            why -> {
              throw new AssertionError(why);
            });
    assertThat(KeptScreens.compare(folder)).isEmpty();
  }

  @Test
  void everyPlaceFitsALaptopAtHundredAndTwentyFivePerCent() throws Exception {
    Path folder = KeptScreens.cleared("laptop");
    try (Display display = new Display()) {
      assertFit(display.run(scale("1.25"), DeskFit.class, folder.toString(), "main", "1093x614"));
    }
  }

  @Test
  void everyPlaceFitsADenseScreenAtTwoHundredPerCent() throws Exception {
    Path folder = KeptScreens.cleared("dense");
    try (Display display = new Display("3840x2160")) {
      assertFit(display.run(scale("2"), DeskFit.class, folder.toString(), "main", "1920x1080"));
    }
  }

  private static List<String> scale(String factor) {
    return Stream.concat(KeptScreens.QUICK.stream(), Stream.of("-Dsun.java2d.uiScale=" + factor))
        .toList();
  }

  private static void assertFit(String printed) {
    assertThat(printed.lines().filter(line -> line.startsWith("FAULT"))).isEmpty();
    assertThat(printed).containsPattern("FIT: \\d{2,} screens, 0 faults").endsWith("exit code 0");
  }
}
