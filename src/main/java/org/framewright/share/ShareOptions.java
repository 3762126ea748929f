package org.framewright.share;

import java.net.InetAddress;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.day.DayHours;

/**
 * Where and how the page is served.
 *
 * @param host the address to serve at, and the name in the links where it was given as a name;
 *     nothing for all addresses of this computer, with the one that the studio's network sees in
 *     the links
 * @param port 0 for any that is free; {@link #USUAL_PORT} for the one that this job had last, else
 *     that or one of the nine behind it; any other for that one only
 * @param tls the certificate to serve with; nothing for plain HTTP
 * @param settings the folder of the user's settings, where the paired devices are kept
 * @param hours the hours that the forecast reckons with; nothing for the usual ones
 */
public record ShareOptions(
    Optional<InetAddress> host,
    int port,
    Optional<Tls> tls,
    Path settings,
    Optional<DayHours> hours) {
  /** The first port that is tried where nobody names one. Free in IANA's registry. */
  public static final int USUAL_PORT = 8470;

  public ShareOptions {
    if (port < 0 || port > 65_535) {
      throw new IllegalArgumentException("port " + port);
    }
  }

  /** With the usual hours of a day. */
  public ShareOptions(Optional<InetAddress> host, int port, Optional<Tls> tls, Path settings) {
    this(host, port, tls, settings, Optional.empty());
  }

  /** All addresses of this computer and the usual port, plain HTTP. */
  public static ShareOptions usual(Path settings) {
    return new ShareOptions(Optional.empty(), USUAL_PORT, Optional.empty(), settings);
  }
}
