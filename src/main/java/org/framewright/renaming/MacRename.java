package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.MemorySegment;
import java.lang.invoke.MethodHandle;
import java.nio.file.Path;

/** renamex_np(2) with RENAME_EXCL; the error numbers are those of macOS. */
record MacRename() implements NativeRename {
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
    int exclusive = 4; // RENAME_EXCL
    return (int) rename.invokeExact(error, from, to, exclusive) == 0;
  }

  @Override
  public MoveResult result(Path file, int error) throws MoveFailure {
    return switch (error) {
      case 17 -> MoveResult.TAKEN; // EEXIST
      case 2 -> MoveResult.GONE; // ENOENT
      case 22, 45, 78, 102 -> MoveResult.UNSUPPORTED; // EINVAL, ENOTSUP, ENOSYS, EOPNOTSUPP
      case 1, 13 -> throw MoveFailure.denied(file); // EPERM, EACCES
      case 5 -> throw MoveFailure.failing(file); // EIO
      case 18 -> throw MoveFailure.otherVolume(file); // EXDEV
      case 28, 69 -> throw MoveFailure.full(file); // ENOSPC, EDQUOT
      case 30 -> throw MoveFailure.readOnly(file); // EROFS
      case 63 -> throw MoveFailure.tooLong(file); // ENAMETOOLONG
      case 20, 62 -> throw MoveFailure.otherFolder(file); // ENOTDIR, ELOOP
      case 16 -> throw MoveFailure.heldOpen(file); // EBUSY
      case 60, 64, 65 -> throw MoveFailure.shareGone(file); // ETIMEDOUT, EHOSTDOWN, EHOSTUNREACH
      case 92 -> throw MoveFailure.badName(file); // EILSEQ
      default -> throw MoveFailure.unknown(file, error);
    };
  }
}
