package org.framewright.renaming;

import java.nio.file.Path;

/**
 * A file that a person must look at.
 *
 * @param path relative to the root
 * @param why what is wrong
 * @param remedy its remedy
 */
public record StuckFile(Path path, String why, String remedy) {}
