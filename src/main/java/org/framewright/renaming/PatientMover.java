package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Patience;

/** A mover that tries again while another program hinders it for a moment. */
record PatientMover(Mover mover, Patience patience) implements Mover {
  @Override
  public MoveResult move(Path from, Path to) throws IOException {
    return patience.with(
        failure -> failure instanceof MoveFailure refused && refused.mayPass(),
        () -> mover.move(from, to));
  }

  @Override
  public Guarantee guarantee() {
    return mover.guarantee();
  }

  @Override
  public Optional<HeldFolders> hold(Path root, List<Path> folders) throws MoveFailure {
    return mover.hold(root, folders);
  }
}
