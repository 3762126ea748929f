package org.framewright.copies.device;

/**
 * Which volume, and since when it is there. Each part is empty where the system does not say.
 *
 * @param volume the volume, such as its UUID; it stays the same wherever it is plugged in
 * @param mount this appearance of it: which insertion of the disk, and which mount
 * @param boot this run of the system
 */
public record MountIdentity(String volume, String mount, String boot) {
  /** That of a volume of which the system says nothing. */
  public static final MountIdentity UNKNOWN = new MountIdentity("", "", "");

  static final String PARTS = " ";

  /**
   * Whether the volume was certainly away between an earlier time and this one, so that nothing
   * that memory held of it then can answer now: the system was started anew, or the disk was taken
   * out and put in again. That it was only unmounted is not enough: another mount of it, or an open
   * file, may have kept its memory alive. False wherever something is not known.
   */
  public boolean wasAwaySince(MountIdentity earlier) {
    if (volume.isEmpty() || !volume.equals(earlier.volume) || boot.isEmpty()) {
      return false;
    }
    if (earlier.boot.isEmpty()) {
      return false;
    }
    if (!boot.equals(earlier.boot)) {
      return true;
    }
    var now = mount.split(PARTS, -1);
    var then = earlier.mount.split(PARTS, -1);
    boolean comparable = !mount.isEmpty() && !earlier.mount.isEmpty() && now.length == then.length;
    for (int i = 0; comparable && i < now.length; i++) {
      comparable = !now[i].equals(then[i]);
    }
    return comparable;
  }
}
