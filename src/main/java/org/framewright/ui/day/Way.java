package org.framewright.ui.day;

/** Where one goes about something. */
sealed interface Way {
  /** To a setup on the list. */
  record OnTheList(String setup) implements Way {}

  /** To the frames of a setup. */
  record ItsFrames(String setup) implements Way {}

  /** To the frames that no setup has. */
  record Loose() implements Way {}

  /** To all frames. */
  record AllFrames() implements Way {}

  /** To the slates among the frames. */
  record Slates() implements Way {}

  /** To the page of copies. */
  record Copies() implements Way {}

  /** To the job's folder, in the file manager. */
  record Folder() implements Way {}

  /** Which word stands on its button. */
  default String word() {
    return switch (this) {
      case OnTheList _ -> "list";
      case ItsFrames _ -> "frames";
      case Loose _, AllFrames _, Slates _ -> "show";
      case Copies _ -> "copies";
      case Folder _ -> "folder";
    };
  }
}
