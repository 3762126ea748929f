package org.framewright.frames;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What a file is to its frame, by its ending. */
public enum FileRole {
  /** The sensor's data: CR2, CR3, NEF, ARW, RAF, DNG and the like. */
  RAW,
  /** A HEIF picture. */
  HEIF,
  /** A JPEG picture. */
  JPEG,
  /** A picture in another format: TIFF, PNG. */
  OTHER_IMAGE,
  /** An XMP sidecar: says something about the frame, is not a picture of it. */
  SIDECAR;

  private static final Set<String> RAWS =
      Set.of(
          "cr2", "cr3", "nef", "nrw", "arw", "srf", "sr2", "raf", "orf", "rw2", "3fr", "fff", "iiq",
          "dng", "pef", "srw", "rwl");

  private static final Map<String, FileRole> OTHERS =
      Map.of(
          "jpg",
          JPEG,
          "jpeg",
          JPEG,
          "heic",
          HEIF,
          "heif",
          HEIF,
          "hif",
          HEIF,
          "tif",
          OTHER_IMAGE,
          "tiff",
          OTHER_IMAGE,
          "png",
          OTHER_IMAGE,
          "xmp",
          SIDECAR);

  /**
   * The role of a file by its name, or nothing where it is no frame's file: another ending, a name
   * that starts with a dot ({@code ._IMG_1.JPG}, {@code .DS_Store}), a temporary name.
   */
  public static Optional<FileRole> of(Path file) {
    return of(file.getFileName().toString());
  }

  static Optional<FileRole> of(String name) {
    int dot = name.lastIndexOf('.');
    if (dot <= 0 || name.charAt(0) == '.') {
      return Optional.empty();
    }
    var ending = name.substring(dot + 1).toLowerCase(Locale.ROOT);
    return RAWS.contains(ending) ? Optional.of(RAW) : Optional.ofNullable(OTHERS.get(ending));
  }

  boolean isPicture() {
    return this != SIDECAR;
  }
}
