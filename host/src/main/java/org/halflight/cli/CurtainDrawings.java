package org.halflight.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.chart.CurtainPictures;
import org.halflight.chart.Picture;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainRunFigures;
import org.jspecify.annotations.Nullable;

/** The pictures of curtains that firings give, by the name of their file. */
final class CurtainDrawings {
  private CurtainDrawings() {}

  /**
   * As found and as left in one; another phase only where it is asked for, or there is no other.
   *
   * @param setups what the runs were set up for, in order
   * @param phase as it was typed; null for as found and as left
   * @param speed as it was typed; null for the top speed
   */
  static Map<String, Picture> of(
      List<FiringResult> firings,
      List<RunSetup> setups,
      @Nullable String phase,
      @Nullable String speed,
      String note) {
    List<CurtainPictures.Run> all =
        Stream.of(Phase.values())
            .filter(each -> phase == null || Phase.WORDS.word(each).equals(phase))
            .flatMap(each -> run(firings, each).stream())
            .toList();
    List<CurtainPictures.Run> ofWork =
        all.stream().filter(run -> run.phase() != Phase.ADJUSTING).toList();
    List<CurtainPictures.Run> runs = ofWork.isEmpty() ? all : ofWork;
    Map<String, Picture> drawn = new LinkedHashMap<>();
    if (runs.isEmpty()) {
      return drawn;
    }
    CurtainPictures.Run last = runs.get(runs.size() - 1);
    Optional<RunSetup> setup =
        setups.stream().filter(s -> s.phase() == last.phase()).reduce((one, other) -> other);
    MarkedSpeed at =
        Optional.ofNullable(speed)
            .flatMap(MarkedSpeed::find)
            .orElseGet(() -> last.figures().top().speed());
    setup
        .flatMap(its -> CurtainPictures.of(its.shutter().kind(), runs, note))
        .ifPresent(
            pictures -> {
              pictures
                  .gate(at, setup.get().tolerance(at))
                  .ifPresent(its -> drawn.put("gate.png", its));
              pictures.wedge(at).ifPresent(its -> drawn.put("open-time.png", its));
              pictures
                  .band(setup.get().criteria().get(RunOption.X_SPEED).orElse(at))
                  .ifPresent(its -> drawn.put("window.png", its));
              pictures.offsets().ifPresent(its -> drawn.put("offset.png", its));
            });
    return drawn;
  }

  private static Optional<CurtainPictures.Run> run(List<FiringResult> firings, Phase phase) {
    return CurtainRunFigures.of(
            firings.stream().filter(f -> f.phase().equals(Optional.of(phase))).toList())
        .map(figures -> new CurtainPictures.Run(phase, figures));
  }
}
