package org.framewright.frames;

import java.nio.file.Path;
import java.util.Optional;

/** What a file is to its frame, by its ending. */
public enum FileRole {
  /** The sensor's data: CR2, CR3, NEF, ARW, RAF, DNG and the like. */
  RAW,
  /** A HEIF or AVIF picture. */
  HEIF,
  /** A JPEG picture. */
  JPEG,
  /** A picture in another format: TIFF, PNG. */
  OTHER_IMAGE,
  /** A video clip: MP4, MOV, MXF and the like. */
  VIDEO,
  /** An XMP sidecar: says something about the frame, is not a picture of it. */
  SIDECAR,
  /** Any other file that bears the frame's name, such as a voice memo; it is never opened. */
  COMPANION;

  /**
   * The role of a file by its name, or nothing where its ending alone makes it no frame's file:
   * another ending, which may still be a {@link #COMPANION}; a name that starts with a dot ({@code
   * ._IMG_1.JPG}, {@code .DS_Store}); a temporary name.
   */
  public static Optional<FileRole> of(Path file) {
    return of(file.getFileName().toString());
  }

  static Optional<FileRole> of(String name) {
    return name.startsWith(".") ? Optional.empty() : Endings.role(name);
  }

  /** Whether it is a still picture. */
  public boolean isPicture() {
    return isExposure() && this != VIDEO;
  }

  /** Whether it can make a frame by itself: a picture or a clip. */
  boolean isExposure() {
    return this != SIDECAR && this != COMPANION;
  }
}
