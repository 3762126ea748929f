package org.framewright.frames;

import java.time.Duration;
import org.framewright.frames.slate.SlateReader;
import org.framewright.frames.slate.SlateReading;

/**
 * Looks for slates in frames. Takes 20 to 40 ms a frame where there are previews, some 200 ms where
 * a large JPEG is all that there is; keep it off an interface's thread. For one thread at a time,
 * since it reuses its memory.
 */
public final class SlateSearch {
  /** The most time that is spent on a picture once it is decoded. */
  static final Duration MOST = Duration.ofMillis(250);

  private final SlatePictures pictures = new SlatePictures();
  private final SlateReader reader;

  public SlateSearch() {
    this(new SlateReader(MOST));
  }

  SlateSearch(SlateReader reader) {
    this.reader = reader;
  }

  /** Looks for a slate in a frame, whatever its files are. */
  public SlateReading read(Frame frame) {
    return switch (pictures.of(frame)) {
      case SlatePictures.Chosen.Nothing(var why) -> new SlateReading.NoPicture(why);
      case SlatePictures.Chosen.Picture(var grey) -> reader.read(grey);
    };
  }
}
