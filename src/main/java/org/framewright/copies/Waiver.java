package org.framewright.copies;

/**
 * A person's word that one file of a card need not be kept.
 *
 * @param path the file, below the card
 * @param sha256 its content; a file that changed is not waived
 * @param by who said so
 */
public record Waiver(String path, String sha256, String by) {}
