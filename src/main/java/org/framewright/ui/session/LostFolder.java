package org.framewright.ui.session;

import java.io.IOException;
import java.nio.file.Path;

/** The job's folder is not there: its drive was unplugged, or somebody moved it. */
public final class LostFolder extends IOException {
  private static final long serialVersionUID = 1L;

  private final transient Path folder;

  LostFolder(Path folder) {
    super("no folder " + folder);
    this.folder = folder;
  }

  /** Where it was. */
  public Path folder() {
    return folder;
  }
}
