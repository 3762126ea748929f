package org.framewright.renaming;

import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.SymbolLookup;
import java.lang.invoke.MethodHandle;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.OperatingSystem;

/** The call of one system that renames and never replaces, and what its error numbers mean. */
sealed interface NativeRename permits LinuxRename, MacRename, WindowsRename {
  /** That of this system; empty if it is none of these. */
  static Optional<NativeRename> ofThisSystem() {
    return switch (OperatingSystem.current()) {
      case LINUX -> Optional.of(new LinuxRename());
      case MACOS -> Optional.of(new MacRename());
      case WINDOWS -> Optional.of(new WindowsRename());
      case OTHER -> Optional.empty();
    };
  }

  /** The name of the call. */
  String symbol();

  /** Where the system leaves its error number. */
  String errorName();

  FunctionDescriptor descriptor();

  /** The library that holds the call. */
  default SymbolLookup library() {
    return Linker.nativeLinker().defaultLookup();
  }

  /** Calls it; says whether the file was renamed. */
  boolean call(MethodHandle rename, MemorySegment error, MemorySegment from, MemorySegment to)
      throws Throwable;

  /** A path as the call wants it. */
  default MemorySegment written(Path path, NativeText text) {
    return text.of(PathBytes.of(path));
  }

  /**
   * What an error number means.
   *
   * @throws MoveFailure if it is a failure of the system
   */
  MoveResult result(Path file, int error) throws MoveFailure;

  /** What an error number that is no {@link MoveResult} means. */
  MoveFailure failure(Path file, int error);
}
