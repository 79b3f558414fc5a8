package org.halflight.shuttermodel;

import java.util.ArrayList;
import java.util.List;
import org.halflight.shuttermodel.CurtainCondition.Escapement;
import org.halflight.shuttermodel.CurtainCondition.Latch;
import org.halflight.speeds.FrameSize;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ShutterKind;
import org.halflight.stored.StoredWords;

/**
 * Ready model curtain shutters for practice. All of them are <b>invented</b>: no camera was
 * measured for them.
 */
public enum InventedCurtains {
  /** Cloth along the long side of 36 mm. */
  CLOTH_36,
  /** Cloth along a side of 56 mm. */
  CLOTH_56,
  /** Metal blades along the short side of 24 mm. */
  METAL_24;

  /** As files and options store them. */
  public static final StoredWords<InventedCurtains> WORDS =
      StoredWords.of(
          InventedCurtains.class,
          curtains ->
              switch (curtains) {
                case CLOTH_36 -> "curtain";
                case CLOTH_56 -> "curtain-56";
                case METAL_24 -> "curtain-metal";
              });

  /** How it is built. */
  public CurtainDesign design() {
    return switch (this) {
      case CLOTH_36 -> CurtainDesign.CLOTH_36;
      case CLOTH_56 -> CurtainDesign.CLOTH_56;
      case METAL_24 -> CurtainDesign.METAL_24;
    };
  }

  /** Which way the curtains run. */
  public ShutterKind kind() {
    return this == METAL_24 ? ShutterKind.CURTAIN_SHORT_SIDE : ShutterKind.CURTAIN_LONG_SIDE;
  }

  /** The size of its picture. */
  public FrameSize frame() {
    return this == CLOTH_56 ? FrameSize.ofMillimetres(56, 56) : FrameSize.ofMillimetres(36, 24);
  }

  /** The fastest marked speed at which its frame is open as a whole. */
  public String xSpeed() {
    return this == METAL_24 ? "1/60" : "1/30";
  }

  /** As it should be. */
  public CurtainShutter sound(List<MarkedSpeed> dial, long seed) {
    return CurtainShutter.of(
        "invented curtains, sound", design(), dial, CurtainCondition.SOUND, seed);
  }

  /**
   * As it is found after years without service, its springs slack by less than a quarter of a turn:
   * gummed, its tensions, slit, second brake and contact off, its escapement dirty; how much is
   * drawn by the seed. Cleaning takes the gum and most of the escapement's error; the rest wants
   * adjusting.
   */
  public CurtainShutter found(List<MarkedSpeed> dial, long seed) {
    SeededDraws draws = new SeededDraws(SeededDraws.seedOf(seed, 7));
    double late = 0.25 + 0.2 * draws.uniform();
    double firstSlack = 0.14 + 0.08 * draws.uniform();
    double secondSlack = firstSlack - 0.08 - 0.04 * draws.uniform();
    double shorter = design().travelMillis() / CurtainDesign.CLOTH_36.travelMillis();
    CurtainCondition condition =
        CurtainCondition.SOUND
            .with(
                CurtainState.SOUND
                    .withTension(1 - firstSlack / design().tensionTurns())
                    .withGum(0.07 + 0.01 * draws.uniform(), 0.5),
                CurtainState.SOUND
                    .withTension(1 - secondSlack / design().tensionTurns())
                    .withGum(0.07 + 0.01 * draws.uniform(), 0.5)
                    .withBrake(0.15))
            .with(new Latch(late * shorter, 0.02, 0.1))
            .with(new Escapement(0.35 + 0.2 * draws.uniform(), 0.1, 0.3, 0.03, true, 0, true))
            .withContact(-1 - draws.uniform());
    return CurtainShutter.of("invented curtains, as found", design(), dial, condition, seed);
  }

  /** Sound but for some faults. */
  public CurtainShutter with(List<CurtainFault> faults, List<MarkedSpeed> dial, long seed) {
    CurtainCondition condition = CurtainCondition.SOUND;
    List<String> names = new ArrayList<>();
    for (CurtainFault fault : faults) {
      condition = fault.on(condition);
      names.add(fault.name());
    }
    return CurtainShutter.of("invented curtains " + names, design(), dial, condition, seed);
  }
}
