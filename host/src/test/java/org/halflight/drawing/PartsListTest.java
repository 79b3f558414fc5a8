package org.halflight.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.drawing.PartsList.Part;
import org.halflight.drawing.PartsList.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PartsListTest {
  @ParameterizedTest
  @EnumSource(Step.class)
  void thePageHasTheList(Step step) throws Exception {
    assertThat(PartsList.onThePage(step)).isEqualTo(PartsList.table(step));
  }

  /** A part that the breadboard shows and nobody buys would stop a builder. */
  @Test
  void whatTheBreadboardShowsIsOnTheList() throws Exception {
    List<Part> starter =
        PartsList.read().stream().filter(part -> part.step() == Step.STARTER).toList();
    assertThat(starter).allMatch(part -> part.quantity() > 0 && !part.substitute().isBlank());
    assertThat(starter)
        .extracting(Part::name)
        .anyMatch(name -> name.contains("22 k, 47 k, 100 k"))
        .anyMatch(name -> name.startsWith("capacitor 1 nF"))
        .anyMatch(name -> name.startsWith("PIN photodiode"))
        .anyMatch(name -> name.startsWith("Nano class board"))
        .anyMatch(name -> name.startsWith("resistor 1 k"));
    int wires = StarterBreadboard.wires();
    assertThat(starter)
        .filteredOn(part -> part.name().contains("male to male"))
        .extracting(Part::quantity)
        .first()
        .isEqualTo(wires + 2);
  }
}
