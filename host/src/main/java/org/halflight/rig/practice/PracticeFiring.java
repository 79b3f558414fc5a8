package org.halflight.rig.practice;

import org.halflight.shuttermodel.FiringTurn;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.speeds.MarkedSpeed;

/**
 * The truth about a firing of the practice rig, which nothing that measures may see.
 *
 * @param speed the setting
 * @param turn its place among the firings
 * @param model what the model shutter did
 * @param pressTicks when the release was pressed, in ticks of the board since its last start
 * @param firstLightTicks first light, in ticks of the board since its last start
 */
public record PracticeFiring(
    MarkedSpeed speed, FiringTurn turn, ModelFiring model, long pressTicks, long firstLightTicks) {}
