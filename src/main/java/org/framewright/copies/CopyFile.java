package org.framewright.copies;

import java.nio.file.Path;

/**
 * A file that is to be copied.
 *
 * @param path below the folder that it is copied from
 * @param size in bytes, when it was listed
 */
public record CopyFile(Path path, long size) {}
