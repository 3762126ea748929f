/**
 * Everything that can be done in the app: a {@link org.framewright.ui.command.Command} has a text,
 * a key and an action, and each lies in the one {@link org.framewright.ui.command.Commands}
 * registry: those of the whole app and those of the screen in front. The registry reads each key
 * press before any control does, leaves typing to text fields, and lists itself in the searchable
 * {@link org.framewright.ui.command.KeySheet}.
 */
package org.framewright.ui.command;
