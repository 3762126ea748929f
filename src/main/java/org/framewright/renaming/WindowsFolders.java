package org.framewright.renaming;

import static java.lang.foreign.ValueLayout.ADDRESS;
import static java.lang.foreign.ValueLayout.JAVA_INT;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.SymbolLookup;
import java.lang.invoke.MethodHandle;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Flushes the names in a folder on Windows, whose runtime opens no folders: CreateFileW with
 * FILE_FLAG_BACKUP_SEMANTICS, FlushFileBuffers, CloseHandle. NTFS keeps the order of renames by
 * itself; FAT does not, does nothing where a folder is flushed, and flushes all of the volume where
 * its root is (Microsoft, Windows-driver-samples, filesys/fastfat/flush.c); exFAT, whose source is
 * not public, is taken to do the same. Where the system refuses, nothing more can be done, and
 * nothing is said.
 */
record WindowsFolders(MethodHandle open, MethodHandle flush, MethodHandle close) {
  private static final int WRITE = 0x40000000; // GENERIC_WRITE
  private static final int SHARED = 7; // FILE_SHARE_READ, _WRITE and _DELETE
  private static final int EXISTING = 3; // OPEN_EXISTING
  private static final int FOLDER = 0x02000000; // FILE_FLAG_BACKUP_SEMANTICS
  private static final long INVALID = -1; // INVALID_HANDLE_VALUE

  static final FunctionDescriptor OPEN =
      FunctionDescriptor.of(
          ADDRESS, ADDRESS, JAVA_INT, JAVA_INT, ADDRESS, JAVA_INT, JAVA_INT, ADDRESS);
  static final FunctionDescriptor OF_HANDLE = FunctionDescriptor.of(JAVA_INT, ADDRESS);

  /** The system's calls; empty where native access is denied. */
  @SuppressWarnings("restricted") // A library of the system itself.
  static Optional<WindowsFolders> find() {
    try {
      var kernel = SymbolLookup.libraryLookup("kernel32", Arena.global());
      return Optional.of(
          new WindowsFolders(
              call(kernel, "CreateFileW", OPEN),
              call(kernel, "FlushFileBuffers", OF_HANDLE),
              call(kernel, "CloseHandle", OF_HANDLE)));
    } catch (IllegalCallerException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  @SuppressWarnings("restricted") // The signatures are those of Microsoft's pages.
  private static MethodHandle call(SymbolLookup library, String name, FunctionDescriptor shape) {
    return Linker.nativeLinker().downcallHandle(library.findOrThrow(name), shape);
  }

  /** Flushes the names in a folder; says whether the system did it, as far as it tells. */
  boolean flush(Path folder, Traits volume) {
    var top = folder.toAbsolutePath().getRoot();
    return flush(volume.atomicRename() ? folder : top);
  }

  private boolean flush(Path folder) {
    try (var arena = Arena.ofConfined()) {
      var path = WindowsRename.wide(folder, new NativeText(arena));
      var handle =
          (MemorySegment)
              open.invokeExact(
                  path, WRITE, SHARED, MemorySegment.NULL, EXISTING, FOLDER, MemorySegment.NULL);
      if (handle.address() == INVALID) {
        return false;
      }
      try {
        return (int) flush.invokeExact(handle) != 0;
      } finally {
        int _ = (int) close.invokeExact(handle);
      }
    } catch (Throwable e) {
      throw NativeMover.impossible(e);
    }
  }
}
