package org.framewright.disk;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.util.Optional;
import java.util.function.Function;

/** Decides which changes fail, and how. */
@FunctionalInterface
public interface Fault {
  /**
   * The failure of a change, or empty if it shall pass.
   *
   * @param index how many changes came before it, since the start or the last {@link
   *     Recording#clear}
   */
  Optional<IOException> at(DiskOp op, int index);

  /** Whether the first half of the bytes of a failing write reaches the file. */
  default boolean writesHalf() {
    return false;
  }

  /** The same failures, but of a failing write the first half of its bytes reaches the file. */
  default Fault afterHalfTheBytes() {
    var whole = this;
    return new Fault() {
      @Override
      public Optional<IOException> at(DiskOp op, int index) {
        return whole.at(op, index);
      }

      @Override
      public boolean writesHalf() {
        return true;
      }
    };
  }

  static Fault never() {
    return (op, index) -> Optional.empty();
  }

  static Fault onceAt(int n, Function<DiskOp, IOException> failure) {
    return (op, index) -> index == n ? Optional.of(failure.apply(op)) : Optional.empty();
  }

  static Fault fromOn(int n, Function<DiskOp, IOException> failure) {
    return (op, index) -> index >= n ? Optional.of(failure.apply(op)) : Optional.empty();
  }

  /** Every change of a kind fails. */
  static Fault ofEach(Class<? extends DiskOp> kind, Function<DiskOp, IOException> failure) {
    return (op, index) -> kind.isInstance(op) ? Optional.of(failure.apply(op)) : Optional.empty();
  }

  static IOException noSpace(DiskOp op) {
    return as(op, "No space left on device");
  }

  static IOException inputOutput(DiskOp op) {
    return as(op, "Input/output error");
  }

  static IOException readOnly(DiskOp op) {
    return as(op, "Read-only file system");
  }

  /** A failure as Java's own file system tells it: a channel does not know its file's name. */
  private static IOException as(DiskOp op, String reason) {
    return switch (op) {
      case DiskOp.Write _, DiskOp.Truncate _, DiskOp.Force _, DiskOp.Lock _ ->
          new IOException(reason);
      case DiskOp.Move move -> new FileSystemException(move.from(), move.to(), reason);
      case DiskOp.Link link -> new FileSystemException(link.path(), link.existing(), reason);
      case DiskOp.Create _,
          DiskOp.CreateFolder _,
          DiskOp.SymbolicLink _,
          DiskOp.Delete _,
          DiskOp.SetTimes _,
          DiskOp.SetPermissions _,
          DiskOp.SetAttribute _ ->
          new FileSystemException(op.path(), null, reason);
    };
  }
}
