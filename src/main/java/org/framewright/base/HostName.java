package org.framewright.base;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Map;
import java.util.Optional;

/** What this computer is called. */
public final class HostName {
  private HostName() {}

  /**
   * Its name, as the system or the network has it. The environment is asked first: a server of
   * names may let a question wait for seconds.
   */
  public static Optional<String> get() {
    return in(System.getenv()).or(HostName::ofNetwork);
  }

  static Optional<String> in(Map<String, String> environment) {
    return Optional.ofNullable(environment.get("COMPUTERNAME"))
        .filter(name -> !name.isBlank())
        .or(() -> Optional.ofNullable(environment.get("HOSTNAME")))
        .map(String::strip)
        .filter(name -> !name.isEmpty());
  }

  private static Optional<String> ofNetwork() {
    try {
      return Optional.of(InetAddress.getLocalHost().getHostName());
    } catch (UnknownHostException e) {
      return Optional.empty();
    }
  }
}
