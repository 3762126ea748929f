package org.framewright.share;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.util.Optional;

/**
 * By which names the page is called. A name that somebody else gave to this computer's address, as
 * in DNS rebinding, is none of them; an address is safe, since it cannot lead to another place.
 *
 * @param given the name in the links, where it was given as one
 */
record Hosts(Optional<String> given) {
  private static final String LOCAL = "localhost";

  /**
   * Whether a header {@code Host} names this server.
   *
   * @param here the address at which the connection was accepted
   */
  boolean isOurs(String header, InetAddress here, int port, int schemePort) {
    if (header == null) {
      return false;
    }
    int end = header.startsWith("[") ? header.indexOf(']') + 1 : header.indexOf(':');
    var host = end > 0 ? header.substring(0, end) : header;
    var rest = header.substring(host.length());
    boolean ourPort = rest.equals(":" + port) || (rest.isEmpty() && port == schemePort);
    return ourPort && isOurs(host, here);
  }

  private boolean isOurs(String host, InetAddress here) {
    if (given.filter(host::equalsIgnoreCase).isPresent()) {
      return true;
    }
    if (here.isLoopbackAddress() && host.equalsIgnoreCase(LOCAL)) {
      return true;
    }
    return here instanceof Inet6Address
        ? host.startsWith("[") && host.endsWith("]") && isSame(host, here)
        : host.equals(here.getHostAddress());
  }

  /** An IPv6 address can be written in several ways. */
  private static boolean isSame(String bracketed, InetAddress here) {
    try {
      return InetAddress.ofLiteral(bracketed.substring(1, bracketed.length() - 1)).equals(here);
    } catch (IllegalArgumentException e) {
      return false;
    }
  }
}
