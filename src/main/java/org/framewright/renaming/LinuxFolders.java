package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.io.IOException;
import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemoryLayout;
import java.lang.foreign.MemorySegment;
import java.lang.invoke.MethodHandle;
import java.lang.invoke.VarHandle;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;

/**
 * Folders held open on Linux: renames and flushes go to these very folders, even if somebody puts a
 * link in the place of one meanwhile. They are opened step by step from the root, and no link is
 * followed on the way: openat(2) with O_NOFOLLOW, renameat2(2), fsync(2), close(2).
 */
final class LinuxFolders implements HeldFolders {
  private static final String ERROR = "errno";
  private static final VarHandle ERROR_NUMBER =
      Linker.Option.captureStateLayout().varHandle(MemoryLayout.PathElement.groupElement(ERROR));

  static final int HERE = -100; // AT_FDCWD
  static final int NO_REPLACE = 1; // RENAME_NOREPLACE
  private static final int CLOSE_ON_EXEC = 0x80000; // O_CLOEXEC

  /** Kernels for these processors number the next two in their own way, see their fcntl.h. */
  private static final boolean OWN_NUMBERS =
      Set.of("aarch64", "arm", "ppc64", "ppc64le").contains(System.getProperty("os.arch", ""));

  private static final int FOLDER = OWN_NUMBERS ? 0x4000 : 0x10000; // O_DIRECTORY
  private static final int NO_LINK = OWN_NUMBERS ? 0x8000 : 0x20000; // O_NOFOLLOW

  /** The system's calls; each returns less than zero if it failed. */
  record Calls(MethodHandle open, MethodHandle rename, MethodHandle sync, MethodHandle close) {
    /**
     * Looks up what belongs to a rename.
     *
     * @param rename renameat2(2)
     * @throws IllegalCallerException if native access is denied
     */
    static Calls beside(MethodHandle rename) {
      return new Calls(
          call("openat", 3, JAVA_INT, ADDRESS, JAVA_INT),
          rename,
          call("fsync", 1, JAVA_INT),
          call("close", 1, JAVA_INT));
    }

    /**
     * A call.
     *
     * @param fixed how many arguments it has before those that may vary
     */
    @SuppressWarnings("restricted") // The signatures are those of the manual pages.
    private static MethodHandle call(String name, int fixed, MemoryLayout... arguments) {
      var linker = Linker.nativeLinker();
      return linker.downcallHandle(
          linker.defaultLookup().findOrThrow(name),
          FunctionDescriptor.of(JAVA_INT, arguments),
          Linker.Option.captureCallState(ERROR),
          Linker.Option.firstVariadicArg(fixed));
    }
  }

  private final Calls calls;
  private final List<Path> paths;
  private final Arena arena = Arena.ofConfined();
  private final MemorySegment error = arena.allocate(Linker.Option.captureStateLayout());
  private final NativeText from = new NativeText(arena);
  private final NativeText to = new NativeText(arena);

  /** The descriptors of the folders that are open so far. */
  private final int[] open;

  private int opened;

  private LinuxFolders(Calls calls, List<Path> paths) {
    this.calls = calls;
    this.paths = paths;
    this.open = new int[paths.size()];
  }

  /**
   * Opens the folders; the same thread must use and close them.
   *
   * @param root a real path, that of a folder which all lie in or below
   * @throws MoveFailure if one cannot be opened, or a link lies on the way from the root
   */
  static LinuxFolders open(Calls calls, Path root, List<Path> folders) throws MoveFailure {
    var held = new LinuxFolders(calls, folders);
    try {
      for (var folder : folders) {
        held.open[held.opened] = held.below(root, folder);
        held.opened++;
      }
      return held;
    } catch (MoveFailure | RuntimeException | Error e) {
      held.close();
      throw e;
    }
  }

  private int below(Path root, Path folder) throws MoveFailure {
    int at = opened(HERE, PathBytes.of(root), root);
    if (!folder.equals(root)) {
      for (var name : root.relativize(folder)) {
        int above = at;
        try {
          at = opened(above, PathBytes.ofName(name), folder);
        } finally {
          close(above);
        }
      }
    }
    return at;
  }

  private int opened(int above, byte[] name, Path folder) throws MoveFailure {
    int descriptor;
    try {
      descriptor =
          (int)
              calls.open.invokeExact(error, above, from.of(name), FOLDER | NO_LINK | CLOSE_ON_EXEC);
    } catch (Throwable e) {
      throw NativeMover.impossible(e);
    }
    if (descriptor < 0) {
      throw notOpened(folder, errorNumber());
    }
    return descriptor;
  }

  private static MoveFailure notOpened(Path folder, int number) {
    return switch (number) {
      case 20, 40 -> // ENOTDIR, ELOOP
          new MoveFailure(
              folder,
              "it is no folder any more, or a link leads to it",
              "Close the program that works on these folders; then try again.");
      case 2 -> // ENOENT
          new MoveFailure(folder, "the folder has vanished", "Look for it; then try again.");
      case 23, 24 -> // ENFILE, EMFILE
          new MoveFailure(
              folder,
              "the system does not let a program open so many folders",
              "Rename fewer folders at once.");
      default -> LinuxRename.failure(folder, number);
    };
  }

  @Override
  public MoveResult move(int in, Path source, int into, Path target) throws IOException {
    int status;
    try {
      status =
          (int)
              calls.rename.invokeExact(
                  error,
                  open[in],
                  from.of(PathBytes.ofName(source)),
                  open[into],
                  to.of(PathBytes.ofName(target)),
                  NO_REPLACE);
    } catch (Throwable e) {
      throw NativeMover.impossible(e);
    }
    return status == 0
        ? MoveResult.MOVED
        : new LinuxRename().result(paths.get(in).resolve(source), errorNumber());
  }

  @Override
  public void sync(int folder) throws IOException {
    int status;
    try {
      status = (int) calls.sync.invokeExact(error, open[folder]);
    } catch (Throwable e) {
      throw NativeMover.impossible(e);
    }
    if (status != 0) {
      throw LinuxRename.failure(paths.get(folder), errorNumber());
    }
  }

  @Override
  public void close() {
    while (opened > 0) {
      opened--;
      close(open[opened]);
    }
    if (arena.scope().isAlive()) {
      arena.close();
    }
  }

  private void close(int descriptor) {
    try {
      // Nothing is written through it, so nothing can be lost when closing fails.
      int _ = (int) calls.close.invokeExact(error, descriptor);
    } catch (Throwable e) {
      throw NativeMover.impossible(e);
    }
  }

  private int errorNumber() {
    return (int) ERROR_NUMBER.get(error, 0L);
  }
}
