package org.framewright.frames;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** The part of a file's name that the files of one frame share. */
final class Stems {
  /**
   * Video bodies keep what they say of clip {@code C0001} in {@code C0001M01.XML} beside it; common
   * practice, no source.
   */
  private static final Pattern OF_CLIP = Pattern.compile("(.{2,})m\\d{2}");

  /** No file of a frame has more endings behind each other. */
  private static final int MOST_ENDINGS = 8;

  private Stems() {}

  /**
   * The stem of a name: of a picture or a clip, what stands before its ending; of another file,
   * that of the picture whose whole name it begins with ({@code A.CR3.xmp}), else its own.
   */
  static String of(String name, FileRole role) {
    if (!role.isExposure()) {
      for (int dot = name.indexOf('.', 1); dot > 0; dot = name.indexOf('.', dot + 1)) {
        var before = name.substring(0, dot);
        if (FileRole.of(before).filter(FileRole::isExposure).isPresent()) {
          return withoutEnding(before);
        }
      }
    }
    return withoutEnding(name);
  }

  private static String withoutEnding(String name) {
    int dot = name.lastIndexOf('.');
    return dot <= 0 ? name : name.substring(0, dot);
  }

  /** What is left of a stem as ending after ending is taken away, the longest first. */
  static List<String> shorter(String stem) {
    var all = new ArrayList<String>(1);
    for (int dot = stem.lastIndexOf('.');
        dot > 0 && all.size() < MOST_ENDINGS;
        dot = stem.lastIndexOf('.', dot - 1)) {
      all.add(stem.substring(0, dot));
    }
    return List.copyOf(all);
  }

  /** The stem of the clip that a file of this stem describes, if it is such a file. */
  static Optional<String> clipOf(String stem) {
    var match = OF_CLIP.matcher(stem);
    return match.matches() ? Optional.of(match.group(1)) : Optional.empty();
  }
}
