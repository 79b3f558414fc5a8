package org.halflight.desk;

import java.util.Optional;
import org.halflight.desk.view.Message;
import org.halflight.session.Source;

/**
 * The bench is to change from the practice rig to the rig or back.
 *
 * @param to which bench comes
 * @param byPerson whether the person asked for it
 * @param keepsVisit whether the camera on the bench stays there: nothing of it was measured yet
 * @param said what the person hears of it, where no run goes on
 */
record BenchChange(Source to, boolean byPerson, boolean keepsVisit, Optional<Message> said) {}
