package org.framewright.share;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.job.Device;

/**
 * By whom a request says to be, and the proof: a MAC with a key that only that device and this
 * computer have.
 *
 * @param device the device's name, which is legal
 * @param time when it was sent, by this computer's clock as the page reckons it, in milliseconds
 */
record Signature(String device, long time, String nonce, String mac) {
  /** How far off a request's time may be: what was heard on the network is of no use later. */
  static final Duration LATEST = Duration.ofMinutes(5);

  /** The scheme's name, as RFC 9110, section 11.1 has it. */
  static final String SCHEME = "Fw";

  private static final Pattern HEADER =
      Pattern.compile(
          SCHEME
              + " device=([a-z0-9-]{1,40}), *time=([0-9]{1,15}), *nonce=([0-9a-f]{16}),"
              + " *mac=([0-9a-f]{64})");

  /** What a header {@code Authorization} says; nothing where it is missing or anything else. */
  static Optional<Signature> of(String header) {
    var match = HEADER.matcher(header == null ? "" : header);
    return match.matches() && Device.isLegal(match.group(1))
        ? Optional.of(
            new Signature(
                match.group(1), Long.parseLong(match.group(2)), match.group(3), match.group(4)))
        : Optional.empty();
  }

  boolean isTimely(Instant now) {
    return Math.abs(now.toEpochMilli() - time) <= LATEST.toMillis();
  }

  /** Whether it was made with this key, for this request and no other. */
  boolean isBy(byte[] key, String method, String target, byte[] body) {
    var head = method + "\n" + target + "\n" + time + "\n" + nonce + "\n";
    var made = Hmac.of(key, head.getBytes(StandardCharsets.UTF_8), body);
    return MessageDigest.isEqual(made, HexFormat.of().parseHex(mac));
  }
}
