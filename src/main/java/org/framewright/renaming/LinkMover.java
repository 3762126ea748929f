package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.framewright.base.Text;

/** A second link under the new name, then the old name removed: link(2) never replaces. */
final class LinkMover implements Mover {
  @Override
  public Guarantee guarantee() {
    return Guarantee.LINKED;
  }

  @Override
  public MoveResult move(Path from, Path to) throws IOException {
    try {
      Files.createLink(to, from);
    } catch (FileAlreadyExistsException e) {
      return MoveResult.TAKEN;
    } catch (NoSuchFileException e) {
      return MoveResult.GONE;
    } catch (UnsupportedOperationException e) {
      return MoveResult.UNSUPPORTED;
    }
    if (!Links.areOneFile(from, to)) {
      throw new MoveFailure(
          from,
          Text.of("another program replaced it during the rename"),
          Text.of("Close the program that works on these files."));
    }
    Files.delete(from);
    return MoveResult.MOVED;
  }
}
