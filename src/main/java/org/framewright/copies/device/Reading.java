package org.framewright.copies.device;

import java.nio.file.attribute.FileTime;

/**
 * A file that was read from its beginning to its end.
 *
 * @param sha256 the digest of all its bytes (FIPS 180-4), 64 lower-case hexadecimal digits
 * @param bytes its size
 * @param medium where the bytes came from
 * @param modified its time, the same before and after
 */
public record Reading(String sha256, long bytes, Medium medium, FileTime modified) {}
