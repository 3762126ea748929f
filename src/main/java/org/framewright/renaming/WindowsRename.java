package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_CHAR_UNALIGNED;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.SymbolLookup;
import java.lang.invoke.MethodHandle;
import java.nio.file.Path;

/** MoveFileExW without MOVEFILE_REPLACE_EXISTING and MOVEFILE_COPY_ALLOWED. */
record WindowsRename() implements NativeRename {
  @Override
  public String symbol() {
    return "MoveFileExW";
  }

  @Override
  public String errorName() {
    return "GetLastError";
  }

  @Override
  public FunctionDescriptor descriptor() {
    return FunctionDescriptor.of(JAVA_INT, ADDRESS, ADDRESS, JAVA_INT);
  }

  @Override
  @SuppressWarnings("restricted") // A library of the system itself.
  public SymbolLookup library() {
    return SymbolLookup.libraryLookup("kernel32", Arena.global());
  }

  @Override
  public boolean call(
      MethodHandle rename, MemorySegment error, MemorySegment from, MemorySegment to)
      throws Throwable {
    int flags = 0; // neither replace nor copy
    return (int) rename.invokeExact(error, from, to, flags) != 0;
  }

  @Override
  public MemorySegment written(Path path, NativeText text) {
    return wide(path, text);
  }

  /** A path in UTF-16, closed by a zero. */
  static MemorySegment wide(Path path, NativeText text) {
    var wide = extended(path.toAbsolutePath().toString());
    var room = text.room(2L * wide.length() + 2);
    for (int i = 0; i < wide.length(); i++) {
      room.set(JAVA_CHAR_UNALIGNED, 2L * i, wide.charAt(i));
    }
    room.set(JAVA_CHAR_UNALIGNED, 2L * wide.length(), '\0');
    return room;
  }

  /**
   * A whole path as one that may be longer than 260 units. That of a share has a form of its own.
   * Source: Microsoft, "Naming Files, Paths, and Namespaces".
   */
  static String extended(String path) {
    return path.startsWith("\\\\") ? "\\\\?\\UNC\\" + path.substring(2) : "\\\\?\\" + path;
  }

  @Override
  public MoveResult result(Path file, int error) throws MoveFailure {
    return switch (error) {
      case 80, 183 -> MoveResult.TAKEN; // ERROR_FILE_EXISTS, ERROR_ALREADY_EXISTS
      case 2, 3 -> MoveResult.GONE; // ERROR_FILE_NOT_FOUND, ERROR_PATH_NOT_FOUND
      case 1, 50 -> MoveResult.UNSUPPORTED; // ERROR_INVALID_FUNCTION, ERROR_NOT_SUPPORTED
      default -> throw failure(file, error);
    };
  }

  @Override
  public MoveFailure failure(Path file, int error) {
    return switch (error) {
      case 5 -> MoveFailure.deniedForNow(file); // ERROR_ACCESS_DENIED
      case 17 -> MoveFailure.otherVolume(file);
      case 19 -> MoveFailure.readOnly(file);
      case 32, 33 -> MoveFailure.heldOpen(file);
      case 39, 112 -> MoveFailure.full(file);
      // ERROR_NOT_READY, ERROR_CRC, ERROR_SECTOR_NOT_FOUND, ERROR_GEN_FAILURE, ERROR_IO_DEVICE
      case 21, 23, 27, 31, 1117 -> MoveFailure.failing(file);
      case 123 -> MoveFailure.badName(file); // ERROR_INVALID_NAME
      case 206 -> MoveFailure.tooLong(file); // ERROR_FILENAME_EXCED_RANGE
      case 53, 59, 64, 67 -> MoveFailure.shareGone(file); // ERROR_BAD_NETPATH to _NET_NAME
      default -> MoveFailure.unknown(file, error);
    };
  }
}
