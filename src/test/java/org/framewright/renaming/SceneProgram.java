package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import org.framewright.base.Progress;

/**
 * One step of the {@link Scene} in a process of its own, to be killed: {@code apply|undo|recover
 * DIR}.
 */
final class SceneProgram {
  private SceneProgram() {}

  public static void main(String[] args) throws IOException {
    var root = Path.of(args[1]);
    var renamer = Renamer.in(root);
    var outcome =
        switch (args[0]) {
          case "apply" ->
              renamer.apply(renamer.plan(Scene.at(renamer.root()).requests()), Progress.NONE);
          case "undo" -> renamer.undo(renamer.nextUndo().orElseThrow().id(), Progress.NONE);
          case "recover" -> renamer.recover();
          default -> throw new IllegalArgumentException(args[0]);
        };
    System.out.println(outcome);
  }
}
