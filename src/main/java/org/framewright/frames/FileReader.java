package org.framewright.frames;

import java.nio.file.Path;
import java.util.Optional;

/** Reads what one file says; nothing where there is no such file any more. */
@FunctionalInterface
interface FileReader {
  Optional<FileReading> read(Path path, FileRole role, Bytes.Room room);
}
