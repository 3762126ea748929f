package org.framewright.share;

import java.io.IOException;
import java.net.DatagramSocket;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.Comparator;
import java.util.Optional;

/** Finds the address by which other devices of the network reach this computer. */
final class Addresses {
  /** Of a network that only stands in documents (RFC 5737); nothing is sent there. */
  private static final String ELSEWHERE = "192.0.2.1";

  private static final int ANY_PORT = 9;

  private Addresses() {}

  /** The address of the way out, else that of a network that is up; nothing without a network. */
  static Optional<InetAddress> ofThisComputer() {
    return wayOut().or(Addresses::firstOfNetworks);
  }

  /** Connecting a datagram socket sends nothing, but chooses the address that would be used. */
  private static Optional<InetAddress> wayOut() {
    try (var socket = new DatagramSocket()) {
      socket.connect(new InetSocketAddress(InetAddress.ofLiteral(ELSEWHERE), ANY_PORT));
      return Optional.of(socket.getLocalAddress()).filter(Addresses::isSeen);
    } catch (IOException | RuntimeException e) {
      return Optional.empty(); // There is no way out of the studio's network; it may do without.
    }
  }

  private static Optional<InetAddress> firstOfNetworks() {
    try {
      return NetworkInterface.networkInterfaces()
          .filter(Addresses::isUp)
          .flatMap(NetworkInterface::inetAddresses)
          .filter(Addresses::isSeen)
          .min(
              Comparator.comparing((InetAddress one) -> !(one instanceof Inet4Address))
                  .thenComparing(one -> !one.isSiteLocalAddress()));
    } catch (SocketException e) {
      return Optional.empty();
    }
  }

  private static boolean isUp(NetworkInterface network) {
    try {
      return network.isUp() && !network.isLoopback() && !network.isPointToPoint();
    } catch (SocketException e) {
      return false;
    }
  }

  private static boolean isSeen(InetAddress address) {
    return !address.isAnyLocalAddress()
        && !address.isLoopbackAddress()
        && !address.isLinkLocalAddress()
        && !address.isMulticastAddress();
  }
}
