package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_BYTE;
import static java.lang.foreign.ValueLayout.JAVA_CHAR_UNALIGNED;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.io.IOException;
import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemoryLayout;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.SymbolLookup;
import java.lang.invoke.MethodHandle;
import java.lang.invoke.VarHandle;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/**
 * The system's own rename that never replaces, through the Foreign Function and Memory API:
 * renameat2(2) with RENAME_NOREPLACE on Linux, renamex_np(2) with RENAME_EXCL on macOS, MoveFileExW
 * without MOVEFILE_REPLACE_EXISTING and MOVEFILE_COPY_ALLOWED on Windows.
 */
final class NativeMover implements Mover {
  /** The systems that have such a call: how it is called and what its error numbers mean. */
  private enum Os {
    LINUX("renameat2", "errno") {
      @Override
      FunctionDescriptor descriptor() {
        return FunctionDescriptor.of(JAVA_INT, JAVA_INT, ADDRESS, JAVA_INT, ADDRESS, JAVA_INT);
      }

      @Override
      boolean call(MethodHandle rename, MemorySegment error, MemorySegment from, MemorySegment to)
          throws Throwable {
        int here = -100; // AT_FDCWD
        int noReplace = 1; // RENAME_NOREPLACE
        return (int) rename.invokeExact(error, here, from, here, to, noReplace) == 0;
      }

      @Override
      MoveResult result(int error) {
        return switch (error) {
          case 17 -> MoveResult.TAKEN; // EEXIST
          case 2 -> MoveResult.GONE; // ENOENT
          case 22, 38, 95 -> MoveResult.UNSUPPORTED; // EINVAL, ENOSYS, EOPNOTSUPP
          default -> null;
        };
      }
    },
    MACOS("renamex_np", "errno") {
      @Override
      FunctionDescriptor descriptor() {
        return FunctionDescriptor.of(JAVA_INT, ADDRESS, ADDRESS, JAVA_INT);
      }

      @Override
      boolean call(MethodHandle rename, MemorySegment error, MemorySegment from, MemorySegment to)
          throws Throwable {
        int exclusive = 4; // RENAME_EXCL
        return (int) rename.invokeExact(error, from, to, exclusive) == 0;
      }

      @Override
      MoveResult result(int error) {
        return switch (error) {
          case 17 -> MoveResult.TAKEN; // EEXIST
          case 2 -> MoveResult.GONE; // ENOENT
          case 22, 45, 78, 102 -> MoveResult.UNSUPPORTED; // EINVAL, ENOTSUP, ENOSYS, EOPNOTSUPP
          default -> null;
        };
      }
    },
    WINDOWS("MoveFileExW", "GetLastError") {
      @Override
      FunctionDescriptor descriptor() {
        return FunctionDescriptor.of(JAVA_INT, ADDRESS, ADDRESS, JAVA_INT);
      }

      @Override
      boolean call(MethodHandle rename, MemorySegment error, MemorySegment from, MemorySegment to)
          throws Throwable {
        int flags = 0; // neither replace nor copy
        return (int) rename.invokeExact(error, from, to, flags) != 0;
      }

      @Override
      MoveResult result(int error) {
        return switch (error) {
          case 80, 183 -> MoveResult.TAKEN; // ERROR_FILE_EXISTS, ERROR_ALREADY_EXISTS
          case 2, 3 -> MoveResult.GONE; // ERROR_FILE_NOT_FOUND, ERROR_PATH_NOT_FOUND
          case 1, 50 -> MoveResult.UNSUPPORTED; // ERROR_INVALID_FUNCTION, ERROR_NOT_SUPPORTED
          default -> null;
        };
      }
    };

    final String symbol;
    final String errorName;

    Os(String symbol, String errorName) {
      this.symbol = symbol;
      this.errorName = errorName;
    }

    abstract FunctionDescriptor descriptor();

    abstract boolean call(
        MethodHandle rename, MemorySegment error, MemorySegment from, MemorySegment to)
        throws Throwable;

    /** Null for a failure. */
    abstract MoveResult result(int error);

    static Optional<Os> current() {
      var name = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
      if (name.startsWith("linux")) {
        return Optional.of(LINUX);
      }
      if (name.startsWith("mac")) {
        return Optional.of(MACOS);
      }
      return name.startsWith("windows") ? Optional.of(WINDOWS) : Optional.empty();
    }
  }

  private final Os os;
  private final MethodHandle rename;
  private final VarHandle errorNumber;
  private final Arena arena = Arena.ofAuto();
  private final MemorySegment error;
  private MemorySegment from;
  private MemorySegment to;

  private NativeMover(Os os, MethodHandle rename) {
    this.os = os;
    this.rename = rename;
    var captured = Linker.Option.captureStateLayout();
    this.errorNumber = captured.varHandle(MemoryLayout.PathElement.groupElement(os.errorName));
    this.error = arena.allocate(captured);
    this.from = arena.allocate(4096);
    this.to = arena.allocate(4096);
  }

  /** The call of this system; empty if it has none or native access is denied. */
  @SuppressWarnings("restricted") // The signature is that of the manual page.
  static Optional<Mover> find() {
    try {
      return Os.current()
          .flatMap(
              os ->
                  lookup(os)
                      .find(os.symbol)
                      .map(
                          address ->
                              new NativeMover(
                                  os,
                                  Linker.nativeLinker()
                                      .downcallHandle(
                                          address,
                                          os.descriptor(),
                                          Linker.Option.captureCallState(os.errorName)))));
    } catch (IllegalCallerException | IllegalArgumentException | UnsupportedOperationException e) {
      return Optional.empty();
    }
  }

  @SuppressWarnings("restricted") // A library of the system itself.
  private static SymbolLookup lookup(Os os) {
    return os == Os.WINDOWS
        ? SymbolLookup.libraryLookup("kernel32", Arena.global())
        : Linker.nativeLinker().defaultLookup();
  }

  @Override
  public Guarantee guarantee() {
    return Guarantee.NATIVE;
  }

  @Override
  public synchronized MoveResult move(Path source, Path target) throws IOException {
    from = written(source, from);
    to = written(target, to);
    if (called()) {
      return MoveResult.MOVED;
    }
    int number = (int) errorNumber.get(error, 0L);
    var result = os.result(number);
    if (result != null) {
      return result;
    }
    throw failure(source, number);
  }

  private boolean called() {
    try {
      return os.call(rename, error, from, to);
    } catch (RuntimeException | Error e) {
      throw e;
    } catch (Throwable e) {
      throw new IllegalStateException(e);
    }
  }

  /** The path as the system wants it, in the buffer or in a larger one. */
  private MemorySegment written(Path path, MemorySegment buffer) throws IOException {
    if (os == Os.WINDOWS) {
      var text = "\\\\?\\" + path.toAbsolutePath();
      var room = roomFor(2L * text.length() + 2, buffer);
      for (int i = 0; i < text.length(); i++) {
        room.set(JAVA_CHAR_UNALIGNED, 2L * i, text.charAt(i));
      }
      room.set(JAVA_CHAR_UNALIGNED, 2L * text.length(), '\0');
      return room;
    }
    var bytes = PathBytes.of(path);
    var room = roomFor(bytes.length + 1L, buffer);
    MemorySegment.copy(bytes, 0, room, JAVA_BYTE, 0, bytes.length);
    room.set(JAVA_BYTE, bytes.length, (byte) 0);
    return room;
  }

  private MemorySegment roomFor(long bytes, MemorySegment buffer) {
    return bytes <= buffer.byteSize() ? buffer : arena.allocate(2 * bytes);
  }

  private MoveFailure failure(Path file, int number) {
    if (os == Os.WINDOWS) {
      return switch (number) {
        case 5 -> denied(file);
        case 17 -> otherVolume(file);
        case 19 -> readOnly(file);
        case 32, 33 ->
            new MoveFailure(file, "another program holds it open", "Close that program.");
        case 39, 112 -> full(file);
        default -> unknown(file, "error " + number);
      };
    }
    return switch (number) {
      case 1, 13 -> denied(file); // EPERM, EACCES
      case 5 -> // EIO
          new MoveFailure(
              file,
              "the disk failed (input/output error)",
              "Check the cable and the disk; copy what matters before going on.");
      case 18 -> otherVolume(file); // EXDEV
      case 28, 69, 122 -> full(file); // ENOSPC, EDQUOT on macOS and on Linux
      case 30 -> readOnly(file); // EROFS
      case 36, 63 -> // ENAMETOOLONG on Linux and on macOS
          new MoveFailure(file, "the new name or path is too long here", "Use shorter names.");
      default -> unknown(file, "error " + number);
    };
  }

  private static MoveFailure denied(Path file) {
    return new MoveFailure(
        file, "no permission to rename it", "Ask for the right to change its folder.");
  }

  private static MoveFailure otherVolume(Path file) {
    return new MoveFailure(
        file,
        "the new name lies on another volume",
        "Rename within one volume; copy between volumes.");
  }

  private static MoveFailure readOnly(Path file) {
    return new MoveFailure(
        file, "the volume is read-only", "Unlock the card or mount the volume for writing.");
  }

  private static MoveFailure full(Path file) {
    return new MoveFailure(file, "no space is left on the volume", "Free some space.");
  }

  private static MoveFailure unknown(Path file, String what) {
    return new MoveFailure(file, "the system refused the rename (" + what + ")", "Try again.");
  }
}
