package org.framewright.frames;

import java.nio.file.Path;

/**
 * Something that was found on a scan and that a person should know; it did not stop the scan.
 *
 * @param path the file or folder
 * @param message what is the matter, in plain words
 */
public record Trouble(Path path, String message) {}
