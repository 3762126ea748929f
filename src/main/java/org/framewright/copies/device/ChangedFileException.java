package org.framewright.copies.device;

import java.nio.file.FileSystemException;

/**
 * A file had another size or time after it was read than before: what was read may be a mixture.
 */
public final class ChangedFileException extends FileSystemException {
  private static final long serialVersionUID = 1L;

  /** Of a file. */
  public ChangedFileException(String file) {
    super(file, null, "it changed while it was read");
  }
}
