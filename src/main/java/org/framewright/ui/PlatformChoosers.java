package org.framewright.ui;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Stage;
import org.framewright.ui.page.FileChoosers;

/** The platform's own windows for choosing. */
final class PlatformChoosers implements FileChoosers {
  private final Stage owner;

  PlatformChoosers(Stage owner) {
    this.owner = owner;
  }

  @Override
  public Optional<Path> folder(String title, Optional<Path> startIn) {
    var chooser = new DirectoryChooser();
    chooser.setTitle(title);
    existing(startIn).ifPresent(chooser::setInitialDirectory);
    return Optional.ofNullable(chooser.showDialog(owner)).map(File::toPath);
  }

  @Override
  public Optional<Path> file(String title, Optional<Path> startIn, List<String> endings) {
    var chooser = chooser(title, startIn);
    if (!endings.isEmpty()) {
      var patterns = endings.stream().map(ending -> "*." + ending).toList();
      chooser
          .getExtensionFilters()
          .add(new FileChooser.ExtensionFilter(String.join(", ", endings), patterns));
    }
    return Optional.ofNullable(chooser.showOpenDialog(owner)).map(File::toPath);
  }

  @Override
  public Optional<Path> save(String title, Optional<Path> startIn, String suggestedName) {
    var chooser = chooser(title, startIn);
    chooser.setInitialFileName(suggestedName);
    return Optional.ofNullable(chooser.showSaveDialog(owner)).map(File::toPath);
  }

  private static FileChooser chooser(String title, Optional<Path> startIn) {
    var chooser = new FileChooser();
    chooser.setTitle(title);
    existing(startIn).ifPresent(chooser::setInitialDirectory);
    return chooser;
  }

  private static Optional<File> existing(Optional<Path> folder) {
    return folder.filter(Files::isDirectory).map(Path::toFile);
  }
}
