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
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * Folders held open on Linux and macOS: renames and flushes go to these very folders, even if
 * somebody puts a link in the place of one meanwhile. They are opened step by step from the root,
 * and no link is followed on the way: openat(2) with O_NOFOLLOW, then the rename that takes
 * descriptors, the flush, and close(2).
 */
final class OpenFolders implements HeldFolders {
  private static final String ERROR = "errno";
  private static final VarHandle ERROR_NUMBER =
      Linker.Option.captureStateLayout().varHandle(MemoryLayout.PathElement.groupElement(ERROR));

  /**
   * The system's calls; each returns less than zero if it failed.
   *
   * @param system whose numbers are meant
   * @param openFlags opens a folder, follows no link, and is not inherited by other programs
   * @param open openat(2)
   * @param rename renameat2(2), renameatx_np(2)
   * @param syncs ways to flush the folder of a descriptor, the surest first
   */
  record Calls(
      NativeRename system,
      int here,
      int openFlags,
      int noReplace,
      MethodHandle open,
      MethodHandle rename,
      List<MethodHandle> syncs,
      MethodHandle close) {
    Calls {
      syncs = List.copyOf(syncs);
    }

    /**
     * Looks up what belongs to a rename on this system; empty where folders cannot be held so.
     *
     * @throws IllegalCallerException if native access is denied
     */
    static Optional<Calls> of(NativeRename system) {
      return switch (system) {
        case LinuxRename linux -> Optional.of(linux(linux));
        case MacRename mac -> Optional.of(mac(mac));
        case WindowsRename _ -> Optional.empty();
      };
    }

    private static Calls linux(LinuxRename system) {
      return new Calls(
          system,
          LinuxRename.HERE,
          LinuxRename.OPEN_FOLDER,
          LinuxRename.NO_REPLACE,
          call("openat", 3, JAVA_INT, ADDRESS, JAVA_INT),
          call("renameat2", 5, JAVA_INT, ADDRESS, JAVA_INT, ADDRESS, JAVA_INT),
          List.of(call("fsync", 1, JAVA_INT)),
          call("close", 1, JAVA_INT));
    }

    private static Calls mac(MacRename system) {
      return new Calls(
          system,
          MacRename.HERE,
          MacRename.OPEN_FOLDER,
          MacRename.EXCLUSIVE,
          call("openat", 3, JAVA_INT, ADDRESS, JAVA_INT),
          call("renameatx_np", 5, JAVA_INT, ADDRESS, JAVA_INT, ADDRESS, JAVA_INT),
          // fsync(2) there leaves the bytes in the memory of the drive; servers know nothing else.
          List.of(
              MethodHandles.insertArguments(
                  call("fcntl", 2, JAVA_INT, JAVA_INT), 2, MacRename.FULL_SYNC),
              call("fsync", 1, JAVA_INT)),
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

  private OpenFolders(Calls calls, List<Path> paths) {
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
  static OpenFolders open(Calls calls, Path root, List<Path> folders) throws MoveFailure {
    var held = new OpenFolders(calls, folders);
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
    int at = opened(calls.here(), PathBytes.of(root), root);
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
      descriptor = (int) calls.open.invokeExact(error, above, from.of(name), calls.openFlags());
    } catch (Throwable e) {
      throw NativeMover.impossible(e);
    }
    if (descriptor < 0) {
      throw notOpened(folder, errorNumber());
    }
    return descriptor;
  }

  private MoveFailure notOpened(Path folder, int number) {
    return switch (number) {
      case 20, 40, 62 -> // ENOTDIR, ELOOP on Linux, ELOOP on macOS
          new MoveFailure(
              folder,
              Text.of("it is no folder any more, or a link leads to it"),
              Text.of("Close the program that works on these folders; then try again."));
      case 2 -> // ENOENT
          new MoveFailure(
              folder, Text.of("the folder has vanished"), Text.of("Look for it; then try again."));
      case 23, 24 -> // ENFILE, EMFILE
          new MoveFailure(
              folder,
              Text.of("the system does not let a program open so many folders"),
              Text.of("Rename fewer folders at once."));
      default -> calls.system().failure(folder, number);
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
                  calls.noReplace());
    } catch (Throwable e) {
      throw NativeMover.impossible(e);
    }
    return status == 0
        ? MoveResult.MOVED
        : calls.system().result(paths.get(in).resolve(source), errorNumber());
  }

  @Override
  public void sync(int folder) throws IOException {
    for (var sync : calls.syncs()) {
      int status;
      try {
        status = (int) sync.invokeExact(error, open[folder]);
      } catch (Throwable e) {
        throw NativeMover.impossible(e);
      }
      // Some servers flush no folders; that fails no batch.
      if (status >= 0
          || calls.system().result(paths.get(folder), errorNumber()) != MoveResult.UNSUPPORTED) {
        return;
      }
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
