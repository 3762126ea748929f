package org.framewright.share;

import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;

/**
 * What a page calls a picture by: nobody without the job's key can make one, and it tells nothing
 * of the frame. The same frame has the same one in every run. Safe from any thread.
 */
final class PictureTokens {
  private static final int LENGTH = 32;

  private final byte[] key;
  private final Map<FrameId, String> byFrame = new ConcurrentHashMap<>();
  private final Map<String, FrameId> byToken = new ConcurrentHashMap<>();

  PictureTokens(byte[] key) {
    this.key = key.clone();
  }

  static boolean isLegal(String token) {
    return token.length() == LENGTH && token.matches("[0-9a-f]+");
  }

  String of(FrameId frame) {
    return byFrame.computeIfAbsent(
        frame,
        _ -> {
          var mac = Hmac.of(key, ("frame " + frame.value()).getBytes(StandardCharsets.UTF_8));
          var token = HexFormat.of().formatHex(mac).substring(0, LENGTH);
          byToken.put(token, frame);
          return token;
        });
  }

  /** The frame of a token, also of one that an earlier run gave out. */
  Optional<Frame> find(String token, Collection<Frame> frames) {
    if (!byToken.containsKey(token)) {
      frames.forEach(frame -> of(frame.id()));
    }
    var id = byToken.get(token);
    return id == null
        ? Optional.empty()
        : frames.stream().filter(frame -> frame.knownAs().contains(id)).findFirst();
  }
}
