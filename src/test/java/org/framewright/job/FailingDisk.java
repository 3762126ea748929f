package org.framewright.job;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.function.Function;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Fault;

/** The ways in which a disk refuses its n-th change. */
final class FailingDisk {
  record Mode(String name, Fault fault) {}

  private FailingDisk() {}

  static List<Mode> modes(int n) {
    var reasons = new LinkedHashMap<String, Function<DiskOp, IOException>>();
    reasons.put("ENOSPC", Fault::noSpace);
    reasons.put("EIO", Fault::inputOutput);
    reasons.put("EROFS", Fault::readOnly);
    var modes = new ArrayList<Mode>();
    reasons.forEach(
        (name, reason) -> {
          modes.add(new Mode(name + " once", Fault.onceAt(n, reason)));
          modes.add(new Mode(name + " half written", Fault.onceAt(n, reason).afterHalfTheBytes()));
          modes.add(new Mode(name + " from then on", Fault.fromOn(n, reason)));
        });
    return modes;
  }
}
