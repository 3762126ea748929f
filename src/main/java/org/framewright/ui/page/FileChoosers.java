package org.framewright.ui.page;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Asks for files and folders; the platform's own windows in the app, prepared answers in tests. */
public interface FileChoosers {
  /** An existing folder. */
  Optional<Path> folder(String title, Optional<Path> startIn);

  /**
   * An existing file.
   *
   * @param endings file name endings without dot; empty for any
   */
  Optional<Path> file(String title, Optional<Path> startIn, List<String> endings);

  /** A file to write; the platform asks before an existing one is taken. */
  Optional<Path> save(String title, Optional<Path> startIn, String suggestedName);
}
