/**
 * Habits: what the app keeps between runs. {@link org.framewright.ui.settings.Preferences} reads
 * one small JSON file when the app starts, answers from memory, and writes the whole file anew (to
 * a temporary file, flushed, then moved) in the background whenever something changed. A file that
 * cannot be read is set aside and told, never fatal. Unforeseen failures go to the {@link
 * org.framewright.ui.settings.LogFile} beside it.
 */
package org.framewright.ui.settings;
