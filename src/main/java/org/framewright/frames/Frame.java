package org.framewright.frames;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.NameKey;

/**
 * One exposure: all files of one stem in one folder. Stems are one where they differ in letter case
 * or Unicode normalisation only, as on the file systems of cards. A sidecar alone is no frame. A
 * video clip is a frame of its own kind; one that bears the name of a picture, as bodies write that
 * film the seconds around it, is a part of that picture's frame.
 *
 * @param id the identity of its first picture; of no lasting meaning while the frame is incomplete
 * @param knownAs the identities of all its whole pictures, first the frame's own: a frame that
 *     first came as a JPEG is known by that after its raw has come too
 * @param folder where its files lie
 * @param stem their common name without the ending, as the first picture spells it
 * @param files the pictures, raw first, then clips, sidecars and other companions
 * @param capture what it says of its making
 * @param complete whether each of its pictures and clips is whole and has stopped changing
 */
public record Frame(
    FrameId id,
    List<FrameId> knownAs,
    Path folder,
    String stem,
    List<FrameFile> files,
    Capture capture,
    boolean complete) {

  /** A frame known by one identity. */
  public Frame(
      FrameId id,
      Path folder,
      String stem,
      List<FrameFile> files,
      Capture capture,
      boolean complete) {
    this(id, List.of(id), folder, stem, files, capture, complete);
  }

  /** When it arrived: the earliest arrival of any of the identities it is known by. */
  public Optional<Instant> arrival(Map<FrameId, Instant> arrivals) {
    Instant first = null;
    for (var known : knownAs) {
      var arrival = arrivals.get(known);
      if (arrival != null && (first == null || arrival.isBefore(first))) {
        first = arrival;
      }
    }
    return Optional.ofNullable(first);
  }

  /** The file that stands for the frame: the raw, where there is one. */
  public FrameFile primary() {
    return files.getFirst();
  }

  /** Whether it is a video clip, of which there is no picture. */
  public boolean isClip() {
    return !files.isEmpty() && primary().role() == FileRole.VIDEO;
  }

  /**
   * What stands behind the stem in the name of one of its files: {@code .CR3}, {@code .CR3.xmp},
   * {@code M01.XML}. With it a companion goes where the frame goes.
   */
  public String ending(FrameFile file) {
    var name = file.path().getFileName().toString();
    if (name.regionMatches(true, 0, stem, 0, stem.length())) {
      return name.substring(stem.length());
    }
    // The stem may be spelled in other letters that are the same to a file system.
    var key = NameKey.of(stem);
    for (int dot = name.indexOf('.'); dot >= 0; dot = name.indexOf('.', dot + 1)) {
      if (NameKey.of(name.substring(0, dot)).equals(key)) {
        return name.substring(dot);
      }
    }
    int last = name.lastIndexOf('.');
    return last < 0 || NameKey.of(name).equals(key) ? "" : name.substring(last);
  }
}
