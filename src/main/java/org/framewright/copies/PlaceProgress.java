package org.framewright.copies;

import java.nio.file.Path;

/**
 * How far a comparison or a copy is in one place.
 *
 * @param folder of a comparison as it was given; of a copy without links, as its report has it
 * @param files how many of its files are done
 * @param ofFiles of so many
 * @param bytes how much is done, the file in hand too
 * @param ofBytes of so much
 * @param bytesPerSecond how fast this place is; 0 as long as nobody can say
 */
public record PlaceProgress(
    Path folder, int files, int ofFiles, long bytes, long ofBytes, double bytesPerSecond) {}
