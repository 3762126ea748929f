package org.framewright.copies;

/**
 * A disk that holds copies of a card's files.
 *
 * @param folder the folder that was given
 * @param device the disk, as people call it
 * @param remote whether it is a server
 * @param files how many of the card's files that are to be kept it holds, each proven
 */
public record Witness(String folder, String device, boolean remote, int files) {}
