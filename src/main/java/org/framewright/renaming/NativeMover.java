package org.framewright.renaming;

import java.io.IOException;
import java.lang.foreign.Arena;
import java.lang.foreign.Linker;
import java.lang.foreign.MemoryLayout;
import java.lang.foreign.MemorySegment;
import java.lang.invoke.MethodHandle;
import java.lang.invoke.VarHandle;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The system's own rename that never replaces, through the Foreign Function and Memory API, see
 * {@link NativeRename}.
 */
final class NativeMover implements Mover {
  private final NativeRename system;
  private final MethodHandle rename;
  private final VarHandle errorNumber;
  private final Optional<OpenFolders.Calls> inFolders;
  private final MemorySegment error;
  private final NativeText from;
  private final NativeText to;

  /**
   * A mover by the call of a system.
   *
   * @param captured where the call leaves its error number, by {@link NativeRename#errorName}
   */
  NativeMover(
      NativeRename system,
      MethodHandle rename,
      MemoryLayout captured,
      Optional<OpenFolders.Calls> inFolders) {
    this.system = system;
    this.rename = rename;
    this.errorNumber =
        captured.varHandle(MemoryLayout.PathElement.groupElement(system.errorName()));
    this.inFolders = inFolders;
    var arena = Arena.ofAuto();
    this.error = arena.allocate(captured);
    this.from = new NativeText(arena);
    this.to = new NativeText(arena);
  }

  /** The call of this system; empty if it has none or native access is denied. */
  static Optional<Mover> find() {
    try {
      return NativeRename.ofThisSystem().flatMap(NativeMover::by);
    } catch (IllegalCallerException | IllegalArgumentException | UnsupportedOperationException e) {
      return Optional.empty();
    }
  }

  @SuppressWarnings("restricted") // The signature is that of the manual page.
  private static Optional<Mover> by(NativeRename system) {
    return system
        .library()
        .find(system.symbol())
        .map(
            address ->
                new NativeMover(
                    system,
                    Linker.nativeLinker()
                        .downcallHandle(
                            address,
                            system.descriptor(),
                            Linker.Option.captureCallState(system.errorName())),
                    Linker.Option.captureStateLayout(),
                    OpenFolders.Calls.of(system)));
  }

  @Override
  public Guarantee guarantee() {
    return Guarantee.NATIVE;
  }

  @Override
  public synchronized MoveResult move(Path source, Path target) throws IOException {
    boolean moved;
    try {
      moved = system.call(rename, error, system.written(source, from), system.written(target, to));
    } catch (Throwable e) {
      throw impossible(e);
    }
    return moved ? MoveResult.MOVED : system.result(source, (int) errorNumber.get(error, 0L));
  }

  @Override
  public Optional<HeldFolders> hold(Path root, List<Path> folders) throws MoveFailure {
    return inFolders.isPresent()
        ? Optional.of(OpenFolders.open(inFolders.get(), root, folders))
        : Optional.empty();
  }

  /** A call of the system throws nothing of its own. */
  static RuntimeException impossible(Throwable e) {
    return switch (e) {
      case RuntimeException unchecked -> unchecked;
      case Error error -> throw error;
      default -> new IllegalStateException(e);
    };
  }
}
