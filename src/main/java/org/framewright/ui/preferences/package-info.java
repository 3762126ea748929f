/**
 * The settings of this computer: who works here, where things go, the hours of work, how the app
 * looks.
 *
 * <p>The way through: the {@link org.framewright.ui.preferences.SettingsModel} makes an {@link
 * org.framewright.ui.preferences.Entry} of each setting as it is kept. Once somebody leaves a
 * field, what it says is looked at: what holds is kept at once and answered with its undo, what
 * does not stands on with the reason below it, and what was kept before goes on. Rooms read their
 * settings from {@code ui.settings} whenever they need them.
 */
package org.framewright.ui.preferences;
