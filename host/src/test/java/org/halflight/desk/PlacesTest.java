package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.halflight.desk.view.UserAction;
import org.junit.jupiter.api.Test;

class PlacesTest {
  private final List<String> happened = new ArrayList<>();
  private final Places places =
      new Places(
          List.of(
              new Told(UserAction.TO_BENCH),
              new Told(UserAction.TO_RUN),
              new Told(UserAction.KEYS)),
          key -> happened.add("at " + key));

  @Test
  void eachPlaceLearnsWhenItComesUpAndWhenItIsLeft() {
    places.goTo(UserAction.TO_RUN);
    places.goTo(UserAction.TO_RUN);
    places.turn(UserAction.KEYS);
    places.turn(UserAction.KEYS);
    assertThat(happened)
        .containsExactly(
            "TO_BENCH is left",
            "at TO_RUN",
            "TO_RUN comes up",
            "at TO_RUN",
            "TO_RUN comes up",
            "TO_RUN is left",
            "at KEYS",
            "KEYS comes up",
            "KEYS is left",
            "at TO_BENCH",
            "TO_BENCH comes up");
    assertThat(places.here().key()).isEqualTo(UserAction.TO_BENCH);
  }

  @Test
  void allPlacesShowWhatIsNewWhereverThePersonIs() {
    places.show(null);
    places.asTables(true);
    places.look(null);
    for (UserAction key : List.of(UserAction.TO_BENCH, UserAction.TO_RUN, UserAction.KEYS)) {
      assertThat(happened).contains(key + " shows", key + " as tables", key + " looks");
    }
  }

  private final class Told extends Place {
    private static final long serialVersionUID = 1L;

    Told(UserAction key) {
      super(key);
    }

    @Override
    void comesUp() {
      happened.add(key() + " comes up");
    }

    @Override
    void isLeft() {
      happened.add(key() + " is left");
    }

    @Override
    void show(org.halflight.desk.view.BenchView view) {
      happened.add(key() + " shows");
    }

    @Override
    void asTables(boolean on) {
      happened.add(key() + " as tables");
    }

    @Override
    public void look(Look look) {
      happened.add(key() + " looks");
    }
  }
}
