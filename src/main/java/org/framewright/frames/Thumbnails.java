package org.framewright.frames;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Optional;

/** The small previews that frames carry in their files, turned upright. */
public final class Thumbnails {
  /** A store of thumbnails. */
  public Thumbnails() {}

  /** The preview of a frame, at most {@code maxEdge} pixels wide and high; none if it has none. */
  public Optional<BufferedImage> of(Frame frame, int maxEdge) {
    return Optional.empty();
  }

  /** The preview of one file. */
  public Optional<BufferedImage> of(Path file, int maxEdge) {
    return Optional.empty();
  }
}
