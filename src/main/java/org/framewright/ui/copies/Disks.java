package org.framewright.ui.copies;

import org.framewright.copies.device.MountedVolumes;
import org.framewright.copies.device.Volumes;

/**
 * The disks of a computer.
 *
 * @param volumes what lies below folders
 * @param mounted which volumes there are now
 */
public record Disks(Volumes volumes, MountedVolumes mounted) {
  /** Those of this computer. */
  public static Disks ofThisComputer() {
    return new Disks(Volumes.ofThisSystem(), MountedVolumes.ofThisSystem());
  }
}
