package org.framewright.day;

import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.OperatingSystem;

/** What the computer runs on. */
@FunctionalInterface
public interface PowerSource {
  /** Its battery; none while it runs on mains, has none, or the system does not tell. */
  Optional<Battery> battery();

  /** That of this computer. On macOS and Windows nothing is asked, and nothing is said. */
  static PowerSource ofThisSystem() {
    return OperatingSystem.current() == OperatingSystem.LINUX
        ? new LinuxPower(Path.of("/sys/class/power_supply"))
        : Optional::empty;
  }
}
