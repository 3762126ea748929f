package org.framewright.sample;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * Where the sample's lists and the conventions to start from lie.
 *
 * @param samples the folder with the shot lists
 * @param templates the folder with the conventions
 */
public record SampleFiles(Path samples, Path templates) {

  /**
   * Below a folder that holds both, as the project and the installed program do.
   *
   * @throws NoSuchFileException where they are not there
   */
  public static SampleFiles below(Path home) throws IOException {
    var files = new SampleFiles(home.resolve("samples"), home.resolve("templates"));
    for (var folder : new Path[] {files.samples, files.templates}) {
      if (!Files.isDirectory(folder)) {
        throw new NoSuchFileException(folder.toString());
      }
    }
    return files;
  }

  /** Below the program's own folder, which its launcher names, else below the working folder. */
  public static SampleFiles find() throws IOException {
    return below(Path.of(System.getProperty("framewright.home", "")).toAbsolutePath().normalize());
  }
}
