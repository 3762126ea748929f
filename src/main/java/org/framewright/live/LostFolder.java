package org.framewright.live;

import java.io.IOException;
import java.nio.file.Path;

/** The job's folder is not there: its drive was unplugged, or somebody moved it. */
public final class LostFolder extends IOException {
  private static final long serialVersionUID = 1L;

  private final transient Path folder;

  public LostFolder(Path folder) {
    super("no folder " + folder);
    this.folder = folder;
  }

  /** Where it was. */
  public Path folder() {
    return folder;
  }
}
