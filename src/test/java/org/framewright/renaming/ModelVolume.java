package org.framewright.renaming;

import java.util.function.UnaryOperator;
import org.framewright.base.NameKey;

/**
 * What kind of volume a {@link ModelDisk} plays.
 *
 * @param guarantee by which way names are changed there
 * @param flush what a flush of a folder does
 * @param numbers whether it numbers its files
 * @param timeStepNanos in what steps it keeps times
 * @param listed a path as it lists it
 * @param key what is one for two paths that it takes for one
 */
record ModelVolume(
    Traits traits,
    Guarantee guarantee,
    SystemVolume.Flush flush,
    boolean numbers,
    long timeStepNanos,
    UnaryOperator<String> listed,
    UnaryOperator<String> key) {
  /**
   * A volume of Linux.
   *
   * @param folds whether names that collide are one name
   */
  static ModelVolume linux(boolean folds, boolean numbers) {
    return new ModelVolume(
        Traits.of(numbers ? "ext4" : "model", false),
        Guarantee.NATIVE,
        SystemVolume.Flush.FOLDER,
        numbers,
        1,
        UnaryOperator.identity(),
        folds ? NameKey::of : UnaryOperator.identity());
  }

  static ModelVolume of(SystemVolume volume) {
    return new ModelVolume(
        volume.traits(),
        volume.guarantee(),
        volume.flush,
        volume.traits().stableKeys(),
        volume.timeStepNanos,
        volume::listed,
        volume.key());
  }
}
