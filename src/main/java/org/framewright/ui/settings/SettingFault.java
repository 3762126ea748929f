package org.framewright.ui.settings;

import java.util.List;
import org.framewright.base.Problem;
import org.framewright.ui.look.Texts;

/**
 * Why a text does not hold as a setting.
 *
 * @param word the last part of its text's key
 * @param values of that text and of its remedy's
 * @param setting the setting of the settings' file that it stands in; empty where somebody types it
 */
public record SettingFault(String word, List<Object> values, String setting) {
  public SettingFault {
    values = List.copyOf(values);
  }

  SettingFault(String word, Object... values) {
    this(word, List.of(values), "");
  }

  /** The same as what is wrong with what the settings' file says. */
  SettingFault inTheFile(String its) {
    return new SettingFault(word, values, its);
  }

  /** What is wrong, and its remedy. */
  public Problem in(Texts texts) {
    var key = "settings.kept." + word;
    var what = texts.get(key, values.toArray());
    return new Problem(
        setting.isEmpty() ? what : texts.get("settings.kept.inFile", setting, what),
        texts.get(key + ".remedy", values.toArray()));
  }
}
