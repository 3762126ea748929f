package org.framewright.ui.page;

import java.nio.file.Path;
import java.time.Clock;
import org.framewright.ui.look.Texts;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.task.Tasks;

/** What a screen may use of its surroundings. */
public interface Desk {
  /** Every text for people. */
  Texts texts();

  /** Work away from the interface thread. */
  Tasks tasks();

  /** What is kept between runs. */
  Preferences preferences();

  /** Asks for files and folders. */
  FileChoosers files();

  /** The time of day. */
  Clock clock();

  /** Questions over the page in front. */
  Dialogs dialogs();

  /** Reports a failure in plain words; what nobody foresaw goes to the log file, which is named. */
  void trouble(Throwable failure);

  /** Says something that needs no answer and passes by. */
  void say(String text);

  /**
   * Says what was done, and offers what can be done about it; it stays until something else is
   * said.
   *
   * @param offered the id of a command of the page in front
   */
  void answer(String text, String offered);

  /** Shows a file or folder in the system's own file manager, and says what came of it. */
  void showInFileManager(Path path);

  /** Opens a job folder in the background and shows its list. */
  void openJob(Path folder);

  /** How one gets to a page of that id, in words; empty if there is none. */
  String wayTo(String screenId);

  /** Brings a page to the front by its id; nothing happens if there is none. */
  void show(String screenId);
}
