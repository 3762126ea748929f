package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.MemorySegment;
import java.lang.invoke.MethodHandle;
import java.nio.file.Path;

/**
 * renamex_np(2) with RENAME_EXCL. Source of the numbers: Apple, xnu 11417, bsd/sys/stdio.h, fcntl.h
 * and errno.h.
 */
record MacRename() implements NativeRename {
  static final int EXCLUSIVE = 4; // RENAME_EXCL
  static final int HERE = -2; // AT_FDCWD

  /** O_DIRECTORY, O_NOFOLLOW and O_CLOEXEC. */
  static final int OPEN_FOLDER = 0x100000 | 0x100 | 0x1000000;

  static final int FULL_SYNC = 51; // F_FULLFSYNC

  @Override
  public String symbol() {
    return "renamex_np";
  }

  @Override
  public String errorName() {
    return "errno";
  }

  @Override
  public FunctionDescriptor descriptor() {
    return FunctionDescriptor.of(JAVA_INT, ADDRESS, ADDRESS, JAVA_INT);
  }

  @Override
  public boolean call(
      MethodHandle rename, MemorySegment error, MemorySegment from, MemorySegment to)
      throws Throwable {
    return (int) rename.invokeExact(error, from, to, EXCLUSIVE) == 0;
  }

  @Override
  public MoveResult result(Path file, int error) throws MoveFailure {
    return switch (error) {
      case 17 -> MoveResult.TAKEN; // EEXIST
      case 2 -> MoveResult.GONE; // ENOENT
      case 22, 45, 78, 102 -> MoveResult.UNSUPPORTED; // EINVAL, ENOTSUP, ENOSYS, EOPNOTSUPP
      default -> throw failure(file, error);
    };
  }

  @Override
  public MoveFailure failure(Path file, int error) {
    return switch (error) {
      case 1, 13 -> MoveFailure.denied(file); // EPERM, EACCES
      case 5 -> MoveFailure.failing(file); // EIO
      case 18 -> MoveFailure.otherVolume(file); // EXDEV
      case 28, 69 -> MoveFailure.full(file); // ENOSPC, EDQUOT
      case 30 -> MoveFailure.readOnly(file); // EROFS
      case 63 -> MoveFailure.tooLong(file); // ENAMETOOLONG
      case 20, 62 -> MoveFailure.otherFolder(file); // ENOTDIR, ELOOP
      case 16 -> MoveFailure.heldOpen(file); // EBUSY
      case 60, 64, 65 -> MoveFailure.shareGone(file); // ETIMEDOUT, EHOSTDOWN, EHOSTUNREACH
      case 92 -> MoveFailure.badName(file); // EILSEQ
      default -> MoveFailure.unknown(file, error);
    };
  }
}
