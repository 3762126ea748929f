package org.framewright.mhl;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What one list says.
 *
 * @param process {@code in-place}, {@code transfer} or {@code flatten}
 * @param ignored patterns of what it does not cover
 * @param root the hashes of the whole folder, empty where it has none
 * @param files in the order of the list
 * @param folders in the order of the list
 * @param references lists of histories further in, and their C4
 */
record Generation(
    String process,
    List<String> ignored,
    Optional<FolderHashes> root,
    List<FileEntry> files,
    List<FolderEntry> folders,
    List<Reference> references) {

  /** What was found of a file when the list was made. */
  enum Action {
    ORIGINAL,
    VERIFIED,
    FAILED
  }

  /** A hash of a file. */
  record Hash(String value, Action action) {}

  /** A file, its path with {@code /} below the top of the history. */
  record FileEntry(
      String path, OptionalLong size, Optional<String> previousPath, Map<HashKind, Hash> hashes) {}

  /** A folder. */
  record FolderEntry(String path, FolderHashes hashes) {}

  /** What a folder holds, and what it holds under which names. */
  record FolderHashes(Map<HashKind, String> content, Map<HashKind, String> structure) {}

  /** A list of another history, by its path and its C4. */
  record Reference(String path, String c4) {}
}
