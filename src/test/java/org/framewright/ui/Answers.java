package org.framewright.ui;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import org.framewright.ui.page.FileChoosers;

/** Answers in place of the system's own windows, as if somebody had typed a path into them. */
final class Answers implements FileChoosers {
  private final Path folder;
  private final Queue<Path> files;

  /**
   * @param folder the answer to every question for a folder, and where things are saved
   * @param files the answers to questions for a file, one after the other
   */
  Answers(Path folder, Path... files) {
    this.folder = folder;
    this.files = new ArrayDeque<>(List.of(files));
  }

  @Override
  public Optional<Path> folder(String title, Optional<Path> startIn) {
    return Optional.of(folder);
  }

  @Override
  public Optional<Path> file(String title, Optional<Path> startIn, List<String> endings) {
    return Optional.of(files.remove());
  }

  @Override
  public Optional<Path> save(String title, Optional<Path> startIn, String suggestedName) {
    return Optional.of(folder.resolve(suggestedName));
  }
}
