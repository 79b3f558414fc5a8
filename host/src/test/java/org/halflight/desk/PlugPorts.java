package org.halflight.desk;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.halflight.link.Link;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigCommand;
import org.halflight.rig.practice.PracticePorts;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;

/**
 * Ports into which a test plugs rigs, and pulls them out again. A rig is a practice rig that was
 * given another serial number, so the program takes it for one that somebody built.
 */
final class PlugPorts implements Ports {
  /** Whatever is slow: a read waits at most 50 ms, and time goes on in each. */
  private static final int READS_MOST = 1_000;

  private final Map<String, PracticePorts> plugged = new LinkedHashMap<>();
  private final Map<String, Boolean> likely = new LinkedHashMap<>();

  /** A rig of a serial number. */
  static PracticePorts rig(String serial) {
    PracticeRig rig =
        PracticeRig.paced(
            InventedShutters.soundLeaf(InventedShutters.dial(), 3),
            SensorSet.INVENTED,
            3,
            System::nanoTime);
    String line = LineCodec.format(1, new RigCommand.SetSerial(serial));
    rig.write((line + '\n').getBytes(StandardCharsets.US_ASCII));
    byte[] buffer = new byte[4096];
    StringBuilder said = new StringBuilder();
    for (int i = 0; i < READS_MOST && said.indexOf(serial) < 0; i++) {
      said.append(new String(buffer, 0, rig.read(buffer), StandardCharsets.US_ASCII));
    }
    return new PracticePorts(rig);
  }

  synchronized PlugPorts plug(String path, PracticePorts rig) {
    return plug(path, rig, true);
  }

  synchronized PlugPorts plug(String path, PracticePorts rig, boolean looksLikely) {
    rig.plugIn();
    plugged.put(path, rig);
    likely.put(path, looksLikely);
    return this;
  }

  synchronized void pull(String path) {
    PracticePorts rig = plugged.remove(path);
    if (rig != null) {
      rig.pullCable();
    }
  }

  @Override
  public synchronized List<PortCandidate> candidates() {
    return plugged.keySet().stream()
        .map(path -> new PortCandidate(path, "USB board", likely.getOrDefault(path, false)))
        .toList();
  }

  @Override
  public synchronized Link open(PortCandidate candidate, int baudRate) {
    PracticePorts rig = plugged.get(candidate.path());
    if (rig == null) {
      throw new LinkRefusedException(LinkRefusedException.Reason.ABSENT, "It is not there.");
    }
    return rig.open(candidate, baudRate);
  }
}
