package org.framewright.share;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What became of the devices of a job between two looks at them. */
public sealed interface DeviceNews {
  /** The device that it is about, as it is now; as it was where it is gone. */
  PairedDevice device();

  /** A device was paired. */
  record Paired(PairedDevice device) implements DeviceNews {}

  /** A device that is known is connected again. */
  record Came(PairedDevice device) implements DeviceNews {}

  /** A device has no connection any more: it sleeps, or is out of reach. */
  record Left(PairedDevice device) implements DeviceNews {}

  /** A device was unpaired. */
  record Unpaired(PairedDevice device) implements DeviceNews {}

  /** What happened between, those that were unpaired first. */
  static List<DeviceNews> between(List<PairedDevice> before, List<PairedDevice> now) {
    var news = new ArrayList<DeviceNews>();
    before.stream()
        .filter(device -> of(device, now).isEmpty())
        .forEach(device -> news.add(new Unpaired(device)));
    for (var device : now) {
      var was = of(device, before);
      if (was.isEmpty()) {
        news.add(new Paired(device));
      } else if (device.connected() != was.get().connected()) {
        news.add(device.connected() ? new Came(device) : new Left(device));
      }
    }
    return List.copyOf(news);
  }

  private static Optional<PairedDevice> of(PairedDevice device, List<PairedDevice> among) {
    return among.stream().filter(one -> one.id().equals(device.id())).findFirst();
  }
}
