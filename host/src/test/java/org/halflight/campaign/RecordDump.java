package org.halflight.campaign;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.record.CameraLine;
import org.halflight.record.KeptFiring;
import org.halflight.record.WorkshopRecord;

/**
 * All that a record tells.
 *
 * @param edges the raw edges of each firing with what it is known by
 * @param all everything else too
 * @param said sentences on what is damaged
 */
record RecordDump(List<String> edges, List<String> all, List<String> said) {
  static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-30T12:00:00Z"), ZoneOffset.UTC);

  /** Opens a record and reads all of it. */
  static RecordDump of(Path file) {
    try (WorkshopRecord record = WorkshopRecord.open(file, CLOCK)) {
      return of(record);
    }
  }

  static RecordDump of(WorkshopRecord record) {
    List<String> edges = new ArrayList<>();
    List<String> all = new ArrayList<>();
    List<Run> runs = new ArrayList<>(record.runsWithoutCamera());
    for (CameraLine line : record.cameras()) {
      all.add(line.toString());
      for (Visit visit : record.visits(line.camera().id())) {
        all.add(visit.toString());
        all.add(record.workLog(visit.id()).toString());
        runs.addAll(record.runs(visit.id()));
      }
    }
    for (Run run : runs) {
      all.add(run.toString());
      all.add(record.readings(run.id()).toString());
      for (KeptFiring firing : record.firings(run.id())) {
        edges.add(firing.result().key() + " " + firing.result().firing());
        all.add(firing.toString());
      }
    }
    record.profiles().forEach(profile -> all.add(profile.toString()));
    return new RecordDump(edges, all, record.damage());
  }
}
