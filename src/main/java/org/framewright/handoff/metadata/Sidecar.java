package org.framewright.handoff.metadata;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/** A sidecar with a block in it. */
public final class Sidecar {
  private Sidecar() {}

  /** What came of it. */
  public sealed interface Outcome {
    /**
     * The sidecar says it now.
     *
     * @param kept what of the block somebody else said otherwise, as the standard calls it; theirs
     *     stays
     */
    @SuppressWarnings("ArrayRecordComponent") // Never compared.
    record Made(byte[] bytes, List<String> kept) implements Outcome {
      public Made {
        kept = List.copyOf(kept);
      }

      /** Whether the sidecar said all of it already. */
      public boolean isSame(byte[] before) {
        return Arrays.equals(bytes, before);
      }
    }

    /** It is to stay as it is. */
    record Left(Text why) implements Outcome {}
  }

  /** The most bytes of a sidecar that is read. */
  public static int largest() {
    return Packet.LARGEST;
  }

  /** A sidecar that is there, with a block; the same bytes where it says all of it already. */
  public static Outcome merged(byte[] sidecar, Block block, boolean overwrite) {
    try {
      var merged = Merge.into(Packet.read(sidecar), block, overwrite);
      return new Outcome.Made(merged.changed() ? merged.packet().bytes() : sidecar, labels(merged));
    } catch (NotUsable e) {
      return new Outcome.Left(e.why());
    }
  }

  /**
   * A sidecar where there was none.
   *
   * @param inside what the picture's own file says; of that the sidecar has what ours would stand
   *     against, as most programs believe a sidecar first
   */
  public static Outcome.Made made(Optional<PictureCopy> inside, Block block, boolean overwrite) {
    var base =
        inside
            .flatMap(PictureCopy::packet)
            .map(packet -> Merge.known(packet, block))
            .orElseGet(Packet::empty);
    var merged = Merge.into(base, block, overwrite);
    return new Outcome.Made(merged.packet().bytes(), labels(merged));
  }

  static List<String> labels(Merge.Merged merged) {
    return merged.kept().stream().map(Property::label).toList();
  }
}
