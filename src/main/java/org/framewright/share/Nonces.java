package org.framewright.share;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The signatures of requests that may come once only: whoever heard one on the network could else
 * send it again as long as its time holds. What appends to a log needs none of this, since its
 * numbers bear repeating; a browser repeats requests by itself. Safe from any thread.
 */
final class Nonces {
  /** More than all devices open streams in the time that a signature holds. */
  private static final int MOST_KEPT = 20_000;

  private final LinkedHashMap<String, Instant> used =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Instant> eldest) {
          return size() > MOST_KEPT;
        }
      };

  /** Whether it was not used before; from now on it is. */
  synchronized boolean use(Signature signature, Instant now) {
    var oldest = now.minus(Signature.LATEST.multipliedBy(2));
    while (!used.isEmpty() && used.firstEntry().getValue().isBefore(oldest)) {
      used.pollFirstEntry();
    }
    return used.put(signature.mac(), now) == null;
  }
}
