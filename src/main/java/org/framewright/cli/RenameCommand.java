package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.framewright.renaming.Renamer;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code rename}: plans new names and applies them. */
@Command(
    name = "rename",
    description = "Renames files by a map of names; every batch can be undone.",
    mixinStandardHelpOptions = true)
final class RenameCommand implements Callable<Integer> {
  @Mixin private Output output;

  @ArgGroup(exclusive = false, multiplicity = "1")
  private ByMap byMap;

  @Option(names = "--preview", description = "Show what would be done; change nothing.")
  private boolean preview;

  /** The form {@code --map FILE --in DIR}. */
  static final class ByMap {
    @Option(
        names = "--map",
        required = true,
        paramLabel = "FILE",
        description = "CSV with the columns from and to, and group if files belong together.")
    private Path map;

    @Option(
        names = "--in",
        required = true,
        paramLabel = "DIR",
        description = "The folder that the paths of the map are relative to.")
    private Path folder;
  }

  @Override
  public Integer call() throws IOException, CommandFailure {
    var requests = RenameMap.read(byMap.map);
    var run = new RenameRun(Renamer.in(byMap.folder), output);
    return (preview ? run.preview(requests) : run.apply(requests)).code();
  }
}
