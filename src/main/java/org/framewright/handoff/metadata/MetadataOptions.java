package org.framewright.handoff.metadata;

/**
 * What of a job's data goes into a package, and where.
 *
 * @param overwrite whether ours prevails over what somebody wrote
 * @param studio what is said of the studio
 */
public record MetadataOptions(MetadataMode mode, boolean overwrite, Studio studio) {
  /** Nothing goes in. */
  public static final MetadataOptions NONE =
      new MetadataOptions(MetadataMode.NONE, false, Studio.NOTHING);

  /** Whether anything goes in. */
  public boolean any() {
    return mode != MetadataMode.NONE;
  }
}
