package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.MemorySegment;
import java.lang.invoke.MethodHandle;
import java.nio.file.Path;
import java.util.Set;

/** renameat2(2) with RENAME_NOREPLACE. */
record LinuxRename() implements NativeRename {
  static final int HERE = -100; // AT_FDCWD
  static final int NO_REPLACE = 1; // RENAME_NOREPLACE

  /** Kernels for these processors number two of the flags in their own way, see their fcntl.h. */
  private static final boolean OWN_NUMBERS =
      Set.of("aarch64", "arm", "ppc64", "ppc64le").contains(System.getProperty("os.arch", ""));

  private static final int FOLDER = OWN_NUMBERS ? 0x4000 : 0x10000; // O_DIRECTORY
  private static final int NO_LINK = OWN_NUMBERS ? 0x8000 : 0x20000; // O_NOFOLLOW
  private static final int CLOSE_ON_EXEC = 0x80000; // O_CLOEXEC
  static final int OPEN_FOLDER = FOLDER | NO_LINK | CLOSE_ON_EXEC;

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
    return (int) rename.invokeExact(error, HERE, from, HERE, to, NO_REPLACE) == 0;
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

  @Override
  public MoveFailure failure(Path file, int error) {
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
