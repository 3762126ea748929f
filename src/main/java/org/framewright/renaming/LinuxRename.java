package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.MemorySegment;
import java.lang.invoke.MethodHandle;
import java.nio.file.Path;

/** renameat2(2) with RENAME_NOREPLACE. */
record LinuxRename() implements NativeRename {
  @Override
  public String symbol() {
    return "renameat2";
  }

  @Override
  public String errorName() {
    return "errno";
  }

  @Override
  public FunctionDescriptor descriptor() {
    return FunctionDescriptor.of(JAVA_INT, JAVA_INT, ADDRESS, JAVA_INT, ADDRESS, JAVA_INT);
  }

  @Override
  public boolean call(
      MethodHandle rename, MemorySegment error, MemorySegment from, MemorySegment to)
      throws Throwable {
    int here = LinuxFolders.HERE;
    return (int) rename.invokeExact(error, here, from, here, to, LinuxFolders.NO_REPLACE) == 0;
  }

  @Override
  public MoveResult result(Path file, int error) throws MoveFailure {
    return switch (error) {
      case 17 -> MoveResult.TAKEN; // EEXIST
      case 2 -> MoveResult.GONE; // ENOENT
      case 22, 38, 95 -> MoveResult.UNSUPPORTED; // EINVAL, ENOSYS, EOPNOTSUPP
      default -> throw failure(file, error);
    };
  }

  /** What an error number that is no {@link MoveResult} means. */
  static MoveFailure failure(Path file, int error) {
    return switch (error) {
      case 1, 13 -> MoveFailure.denied(file); // EPERM, EACCES
      case 5 -> MoveFailure.failing(file); // EIO
      case 18 -> MoveFailure.otherVolume(file); // EXDEV
      case 28, 122 -> MoveFailure.full(file); // ENOSPC, EDQUOT
      case 30 -> MoveFailure.readOnly(file); // EROFS
      case 36 -> MoveFailure.tooLong(file); // ENAMETOOLONG
      default -> MoveFailure.unknown(file, error);
    };
  }
}
