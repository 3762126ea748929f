/**
 * Habits: what the app keeps between runs. {@link org.framewright.ui.settings.Preferences} reads
 * one small JSON file when the app starts, answers from memory, and replaces the file durably in
 * the background whenever something changed. A file that cannot be read is set aside or left as it
 * is, and reported, never fatal. {@link org.framewright.ui.settings.Troubles} puts failures into
 * words; the unforeseen ones go to the {@link org.framewright.ui.settings.LogFile} beside the
 * preferences. What does not hold as a setting is a {@link
 * org.framewright.ui.settings.SettingFault}, put into words in the language of the app.
 */
package org.framewright.ui.settings;
