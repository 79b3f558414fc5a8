package org.halflight.desk;

import java.util.Optional;
import org.halflight.desk.view.BenchView;
import org.halflight.speeds.MarkedSpeed;

/**
 * What is looked at: a speed of a view.
 *
 * @param view what the window shows
 * @param speed empty where there is none yet
 * @param turns how often another picture was asked for in the large place
 */
record LookedAt(BenchView view, Optional<MarkedSpeed> speed, int turns) {}
