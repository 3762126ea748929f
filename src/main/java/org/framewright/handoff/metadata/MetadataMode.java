package org.framewright.handoff.metadata;

import java.util.Locale;

/** Where a package says what the job knows of its selects. */
public enum MetadataMode {
  /** In a sidecar beside each select. */
  SIDECAR,
  /** In a sidecar, and in the copies of JPEG, TIFF and DNG. */
  EMBED,
  /** Nowhere. */
  NONE;

  /** The word for it in options and records. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
