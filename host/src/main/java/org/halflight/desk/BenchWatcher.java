package org.halflight.desk;

import java.util.List;
import org.halflight.bench.Workbench;
import org.halflight.session.SessionNews;

/** Keeps what happened at the bench. Called on the bench thread, which it must not hold up. */
interface BenchWatcher {
  /** Keeps nothing; the session file has all. */
  BenchWatcher NONE = (workbench, news) -> {};

  /** There are news. */
  void happened(Workbench workbench, List<SessionNews> news);
}
