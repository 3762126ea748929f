package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.ADDRESS;
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
import java.util.List;
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
        int here = LinuxFolders.HERE;
        return (int) rename.invokeExact(error, here, from, here, to, LinuxFolders.NO_REPLACE) == 0;
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
  private final Optional<LinuxFolders.Calls> inFolders;
  private final MemorySegment error;
  private final NativeText from;
  private final NativeText to;

  private NativeMover(Os os, MethodHandle rename) {
    this.os = os;
    this.rename = rename;
    var captured = Linker.Option.captureStateLayout();
    this.errorNumber = captured.varHandle(MemoryLayout.PathElement.groupElement(os.errorName));
    this.inFolders =
        os == Os.LINUX ? Optional.of(LinuxFolders.Calls.beside(rename)) : Optional.empty();
    var arena = Arena.ofAuto();
    this.error = arena.allocate(captured);
    this.from = new NativeText(arena);
    this.to = new NativeText(arena);
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
    boolean moved;
    try {
      moved = os.call(rename, error, written(source, from), written(target, to));
    } catch (Throwable e) {
      throw impossible(e);
    }
    return moved ? MoveResult.MOVED : result(os, source, (int) errorNumber.get(error, 0L));
  }

  @Override
  public Optional<HeldFolders> hold(Path root, List<Path> folders) throws MoveFailure {
    return inFolders.isPresent()
        ? Optional.of(LinuxFolders.open(inFolders.get(), root, folders))
        : Optional.empty();
  }

  /** What a failed call of Linux means. */
  static MoveResult linuxResult(Path file, int number) throws MoveFailure {
    return result(Os.LINUX, file, number);
  }

  private static MoveResult result(Os os, Path file, int number) throws MoveFailure {
    var result = os.result(number);
    if (result == null) {
      throw os == Os.WINDOWS ? failureOnWindows(file, number) : failure(file, number);
    }
    return result;
  }

  /** The path as the system wants it. */
  private MemorySegment written(Path path, NativeText text) {
    if (os != Os.WINDOWS) {
      return text.of(PathBytes.of(path));
    }
    var wide = "\\\\?\\" + path.toAbsolutePath();
    var room = text.room(2L * wide.length() + 2);
    for (int i = 0; i < wide.length(); i++) {
      room.set(JAVA_CHAR_UNALIGNED, 2L * i, wide.charAt(i));
    }
    room.set(JAVA_CHAR_UNALIGNED, 2L * wide.length(), '\0');
    return room;
  }

  private static MoveFailure failureOnWindows(Path file, int number) {
    return switch (number) {
      case 5 -> denied(file);
      case 17 -> otherVolume(file);
      case 19 -> readOnly(file);
      case 32, 33 -> new MoveFailure(file, "another program holds it open", "Close that program.");
      case 39, 112 -> full(file);
      default -> unknown(file, "error " + number);
    };
  }

  /** What an error number of Linux or macOS that is no {@link MoveResult} means. */
  static MoveFailure failure(Path file, int number) {
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

  /** A call of the system throws nothing of its own. */
  static RuntimeException impossible(Throwable e) {
    return switch (e) {
      case RuntimeException unchecked -> unchecked;
      case Error error -> throw error;
      default -> new IllegalStateException(e);
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
