package org.framewright.share;

import java.net.URI;
import java.time.Instant;

/**
 * A link that pairs one device. Its secret stands in the fragment, which no browser sends, so that
 * it reaches a device through its camera and never over the network.
 *
 * @param link the address of the page, with the secret
 * @param role what the device becomes
 * @param until when it no longer holds
 */
public record Invitation(URI link, Role role, Instant until) {
  /** Without the link, which is a secret until it is used. */
  @Override
  public String toString() {
    return "Invitation[" + role + ", until " + until + "]";
  }
}
