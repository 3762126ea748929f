package org.framewright.ui.settings;

/** What people call this computer, as on the sticker of a cart: for other computers of a job. */
public final class ComputerName {
  /** Under which key it is kept. */
  public static final String KEY = "computer.name";

  /** In characters. */
  public static final int LONGEST = 40;

  private ComputerName() {}

  /** What is kept; empty where nothing is. */
  public static Kept<String> kept(Preferences preferences) {
    return TextSetting.kept(preferences, KEY, LONGEST);
  }
}
