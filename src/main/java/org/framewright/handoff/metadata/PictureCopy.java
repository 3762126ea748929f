package org.framewright.handoff.metadata;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.Text;

/** A copy of a picture that may say something of itself, and may be made to say more. */
public final class PictureCopy {
  private static final Set<String> TAKES = Set.of("jpg", "jpeg", "jpe", "tif", "tiff", "dng");

  private final Container container;
  private final Optional<Packet> packet;

  private PictureCopy(Container container, Optional<Packet> packet) {
    this.container = container;
    this.packet = packet;
  }

  /** What came of putting a block into a copy. */
  public sealed interface Outcome {
    /**
     * Beside the copy lies a new one with the block, flushed, and each of its bytes read again.
     *
     * @param kept what of the block somebody else said otherwise; theirs stays
     */
    record Made(List<String> kept) implements Outcome {
      public Made {
        kept = List.copyOf(kept);
      }
    }

    /** The copy says all of it already. */
    record Same(List<String> kept) implements Outcome {
      public Same {
        kept = List.copyOf(kept);
      }
    }

    /** The copy is to stay as it is. */
    record Left(Text why) implements Outcome {}

    /** What was read again is not what was written. */
    record Damaged() implements Outcome {}
  }

  /** Whether files of that name are made to say something; others get a sidecar only. */
  public static boolean takes(String name) {
    return TAKES.contains(name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
  }

  /** What a copy says of itself; empty where it is not understood. */
  public static Optional<PictureCopy> read(Path file) throws IOException {
    try {
      var container = Container.of(file);
      return Optional.of(new PictureCopy(container, readable(container)));
    } catch (NotUsable e) {
      return Optional.empty();
    }
  }

  private static Optional<Packet> readable(Container container) {
    try {
      return container.packet().isPresent()
          ? Optional.of(Packet.read(container.packet().get()))
          : Optional.empty();
    } catch (NotUsable e) {
      return Optional.empty();
    }
  }

  Optional<Packet> packet() {
    return packet;
  }

  /** Whether it says any of what a block is about. */
  public boolean says(Block block) {
    return packet.filter(said -> Merge.says(said, block)).isPresent();
  }

  /** Of what its older IIM data say something else than a block, as the standard calls it. */
  public List<String> conflicts(Block block) {
    return container.iim().stream()
        .flatMap(iim -> Iim.of(iim).conflicts(block).stream())
        .map(Property::label)
        .toList();
  }

  /**
   * Makes a new file of a copy that says what a block does.
   *
   * @param made the new file, which must not be there yet
   */
  public static Outcome embed(Path copy, Path made, Block block, boolean overwrite)
      throws IOException {
    try {
      var container = Container.of(copy);
      var base =
          container.packet().isPresent() ? Packet.read(container.packet().get()) : Packet.empty();
      var merged = Merge.into(base, block, overwrite);
      var kept = Sidecar.labels(merged);
      if (!merged.changed()) {
        return new Outcome.Same(kept);
      }
      var rewriting = container.with(merged.packet(), copy);
      rewriting.write(copy, made);
      return rewriting.isWhatLiesIn(made, copy) && isFound(made, merged.packet())
          ? new Outcome.Made(kept)
          : new Outcome.Damaged();
    } catch (NotUsable e) {
      return new Outcome.Left(e.why());
    }
  }

  /** Whether whoever reads the file anew finds the packet in it. */
  private static boolean isFound(Path made, Packet packet) throws IOException {
    try {
      var found = Container.of(made).packet();
      return found.isPresent() && packet.isIn(found.get());
    } catch (NotUsable e) {
      return false;
    }
  }
}
