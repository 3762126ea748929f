package org.framewright.frames;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One exposure: all files of one stem in one folder. Stems are one where they differ in letter case
 * or Unicode normalisation only, as on the file systems of cards. A sidecar alone is no frame.
 *
 * @param id the identity of its first picture; of no lasting meaning while the frame is incomplete
 * @param knownAs the identities of all its whole pictures, first the frame's own: a frame that
 *     first came as a JPEG is known by that after its raw has come too
 * @param folder where its files lie
 * @param stem their common name without the ending, as the first picture spells it
 * @param files the pictures, raw first, then the sidecars
 * @param capture what it says of its making
 * @param complete whether each of its pictures is whole and has stopped changing
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
}
