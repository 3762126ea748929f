package org.framewright.disk;

/**
 * One change of the disk. Paths are relative to the recorded folder, with {@code /} between names;
 * the folder itself is {@code "."}, and a path outside it stays absolute.
 *
 * <p>What is done through an open channel tells the name that its file has at that time. A file
 * without a name tells its last one and {@code " (deleted)"}.
 */
public sealed interface DiskOp {
  String path();

  /** An empty file that was not there before. */
  record Create(String path) implements DiskOp {}

  record CreateFolder(String path) implements DiskOp {}

  /** A new name for a file that is there. */
  record Link(String path, String existing) implements DiskOp {}

  /**
   * A symbolic link.
   *
   * @param target as it was given, relative or absolute
   */
  record SymbolicLink(String path, String target) implements DiskOp {}

  record Write(String path, long offset, long bytes) implements DiskOp {}

  /** A cut to a size, also by opening a file that is there to write it anew. */
  record Truncate(String path, long size) implements DiskOp {}

  record Force(String path, boolean isFolder) implements DiskOp {}

  /**
   * A rename.
   *
   * @param replacing whether the call would have replaced a file of that name, there or not
   */
  record Move(String from, String to, boolean replacing) implements DiskOp {
    @Override
    public String path() {
      return from;
    }
  }

  record Delete(String path) implements DiskOp {}

  record SetTimes(String path) implements DiskOp {}

  record SetPermissions(String path) implements DiskOp {}

  /** An owner, a group, an attribute of the user's own, a flag of Windows. */
  record SetAttribute(String path, String name) implements DiskOp {}

  /** A lock that was got; one that another program holds is no change. */
  record Lock(String path, boolean shared) implements DiskOp {}
}
