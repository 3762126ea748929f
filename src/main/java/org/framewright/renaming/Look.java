package org.framewright.renaming;

/** What lies under a name. */
record Look(Kind kind, Seen seen) {
  static final Look NONE = new Look(Kind.NONE, Seen.NOTHING);

  enum Kind {
    NONE,
    FILE,
    FOLDER,
    /** A symbolic link; it is never followed. */
    LINK,
    OTHER
  }

  boolean isFile() {
    return kind == Kind.FILE;
  }

  boolean isFolder() {
    return kind == Kind.FOLDER;
  }
}
