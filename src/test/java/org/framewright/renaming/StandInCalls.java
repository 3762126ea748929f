package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.JAVA_CHAR_UNALIGNED;
import static java.lang.foreign.ValueLayout.JAVA_INT;
import static java.lang.invoke.MethodType.methodType;

import java.io.IOException;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemoryLayout;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.StructLayout;
import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.OperatingSystem;

/**
 * The calls of macOS and Windows, played by those of Linux: what they are given (numbers, flags,
 * the form of paths) is checked against the systems' own headers, and what they answer has the
 * numbers of those systems.
 */
final class StandInCalls {
  /** macOS: sys/errno.h. */
  private static final int ENOENT = 2;

  private static final int EIO = 5;
  private static final int EEXIST = 17;
  private static final int ENOTSUP = 45;
  private static final int MAC_ELOOP = 62;
  private static final int LINUX_ELOOP = 40;

  private static final StructLayout LAST_ERROR =
      MemoryLayout.structLayout(JAVA_INT.withName("GetLastError"));

  private final SystemVolume volume;
  private final Mover linux = NativeMover.find().orElseThrow();
  private final OpenFolders.Calls folders = OpenFolders.Calls.of(new LinuxRename()).orElseThrow();
  private final List<Integer> violations = new ArrayList<>();

  StandInCalls(SystemVolume volume) {
    this.volume = volume;
  }

  /** Answers so many renames to come with these numbers of Windows before one is done. */
  StandInCalls violating(Integer... errors) {
    violations.addAll(List.of(errors));
    return this;
  }

  /** The mover of the system by these calls. */
  Mover mover() {
    return volume.system == OperatingSystem.MACOS ? mac() : windows();
  }

  private Mover mac() {
    var system = new MacRename();
    return new NativeMover(
        system,
        handle("renamex", system.descriptor()),
        Linker.Option.captureStateLayout(),
        Optional.of(
            new OpenFolders.Calls(
                system,
                MacRename.HERE,
                MacRename.OPEN_FOLDER,
                MacRename.EXCLUSIVE,
                handle("openat", int.class, int.class, MemorySegment.class, int.class),
                handle(
                    "renameatx",
                    int.class,
                    int.class,
                    MemorySegment.class,
                    int.class,
                    MemorySegment.class,
                    int.class),
                List.of(
                    MethodHandles.insertArguments(
                        handle("fcntl", int.class, int.class, int.class), 2, MacRename.FULL_SYNC),
                    handle("fsync", int.class, int.class)),
                handle("close", int.class, int.class))));
  }

  private Mover windows() {
    var system = new WindowsRename();
    return new NativeMover(
        system, handle("moveFileEx", system.descriptor()), LAST_ERROR, Optional.empty());
  }

  private MethodHandle handle(String name, FunctionDescriptor shape) {
    var type = shape.toMethodType();
    return handle(name, type.returnType(), type.parameterArray());
  }

  private MethodHandle handle(String name, Class<?> result, Class<?>... arguments) {
    try {
      return MethodHandles.lookup()
          .bind(
              this,
              name,
              methodType(result, arguments).insertParameterTypes(0, MemorySegment.class));
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(e.getMessage(), e);
    }
  }

  // ---- macOS; the names are those of the manual pages without their endings

  int renamex(MemorySegment error, MemorySegment from, MemorySegment to, int flags) {
    require(flags == 4, "RENAME_EXCL is 4, bsd/sys/stdio.h:36");
    return volume.renames
        ? status(error, text(from), text(to))
        : failed(error, ENOTSUP); // vn_default_error in bsd/vfs/vfs_init.c
  }

  int openat(MemorySegment error, int above, MemorySegment path, int flags) throws Throwable {
    require(
        flags == (0x100000 | 0x100 | 0x1000000), "O_DIRECTORY, O_NOFOLLOW, O_CLOEXEC of fcntl.h");
    int here = above == -2 ? LinuxRename.HERE : above; // AT_FDCWD of fcntl.h
    require(above == -2 || above >= 0, "AT_FDCWD is -2");
    int descriptor = (int) folders.open().invokeExact(error, here, path, LinuxRename.OPEN_FOLDER);
    return descriptor >= 0 ? descriptor : translated(error);
  }

  int renameatx(
      MemorySegment error, int in, MemorySegment from, int into, MemorySegment to, int flags)
      throws Throwable {
    require(flags == 4, "RENAME_EXCL is 4, bsd/sys/stdio.h:36");
    int status =
        (int) folders.rename().invokeExact(error, in, from, into, to, LinuxRename.NO_REPLACE);
    return status == 0 ? 0 : translated(error);
  }

  int fcntl(MemorySegment error, int descriptor, int command) throws Throwable {
    require(command == 51, "F_FULLFSYNC is 51, bsd/sys/fcntl.h");
    return volume.flush == SystemVolume.Flush.FOLDER
        ? fsync(error, descriptor)
        : failed(error, ENOTSUP);
  }

  int fsync(MemorySegment error, int descriptor) throws Throwable {
    return (int) folders.syncs().getFirst().invokeExact(error, descriptor);
  }

  int close(MemorySegment error, int descriptor) throws Throwable {
    return (int) folders.close().invokeExact(error, descriptor);
  }

  private static int translated(MemorySegment error) {
    int number = error.get(JAVA_INT, 0);
    return failed(
        error,
        switch (number) {
          case LINUX_ELOOP -> MAC_ELOOP;
          case 22, 38, 95 -> ENOTSUP;
          default -> number; // Those below 35 are the same, errno.h.
        });
  }

  private int status(MemorySegment error, String from, String to) {
    return switch (moved(from, to)) {
      case MOVED -> 0;
      case TAKEN -> failed(error, EEXIST);
      case GONE -> failed(error, ENOENT);
      case UNSUPPORTED -> failed(error, EIO);
    };
  }

  private static int failed(MemorySegment error, int number) {
    error.set(JAVA_INT, 0, number);
    return -1;
  }

  private static String text(MemorySegment path) {
    return path.getString(0);
  }

  // ---- Windows

  int moveFileEx(MemorySegment error, MemorySegment from, MemorySegment to, int flags) {
    require((flags & 3) == 0, "neither MOVEFILE_REPLACE_EXISTING nor MOVEFILE_COPY_ALLOWED");
    if (!violations.isEmpty()) {
      error.set(JAVA_INT, 0, violations.removeFirst());
      return 0;
    }
    var source = wide(from);
    var target = wide(to);
    // By a program in C under Wine: no source 2, no folder 3, taken 183.
    int number =
        switch (moved(source, target)) {
          case MOVED -> 0;
          case TAKEN -> 183;
          case GONE -> Files.isDirectory(Path.of(target).getParent()) ? 2 : 3;
          case UNSUPPORTED -> 50;
        };
    error.set(JAVA_INT, 0, number);
    return number == 0 ? 1 : 0;
  }

  private static String wide(MemorySegment path) {
    var text = new StringBuilder();
    for (long at = 0; path.get(JAVA_CHAR_UNALIGNED, at) != '\0'; at += 2) {
      text.append(path.get(JAVA_CHAR_UNALIGNED, at));
    }
    require(text.toString().startsWith("\\\\?\\"), "a path that may be longer than 260 units");
    return text.substring(4);
  }

  private MoveResult moved(String from, String to) {
    try {
      return linux.move(Path.of(from), Path.of(to));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static void require(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError(what);
    }
  }

  // ---- the flush of a folder on Windows

  /** What CreateFileW, FlushFileBuffers and CloseHandle were asked. */
  static final class FolderCalls {
    final List<String> asked = new ArrayList<>();
    private final long handle;

    /**
     * Plays the three calls.
     *
     * @param handle what is opened: -1 if the system refuses
     */
    FolderCalls(long handle) {
      this.handle = handle;
    }

    WindowsFolders calls() {
      return new WindowsFolders(
          bound("open", WindowsFolders.OPEN),
          bound("flush", WindowsFolders.OF_HANDLE),
          bound("close", WindowsFolders.OF_HANDLE));
    }

    private MethodHandle bound(String name, FunctionDescriptor shape) {
      try {
        return MethodHandles.lookup().bind(this, name, shape.toMethodType());
      } catch (ReflectiveOperationException e) {
        throw new LinkageError(e.getMessage(), e);
      }
    }

    MemorySegment open(
        MemorySegment path,
        int access,
        int share,
        MemorySegment security,
        int disposition,
        int flags,
        MemorySegment template) {
      asked.add("open %s %x %d %d %x".formatted(wide(path), access, share, disposition, flags));
      require(security.address() == 0 && template.address() == 0, "no security, no template");
      return MemorySegment.ofAddress(handle);
    }

    int flush(MemorySegment open) {
      asked.add("flush " + open.address());
      return 1;
    }

    int close(MemorySegment open) {
      asked.add("close " + open.address());
      return 1;
    }
  }
}
