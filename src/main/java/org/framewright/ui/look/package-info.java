/**
 * How it looks and reads: every text comes from the bundle of the language by way of {@link
 * org.framewright.ui.look.Texts}, dates, times, numbers and lists are written by its {@link
 * org.framewright.ui.look.Formats}, every colour from one stylesheet whose names say what a colour
 * is for ({@code -ink}, {@code -ground}, {@code -needs}). They have values on two grounds, the
 * table of the pictures and the sheet of lists and forms, and others in the second {@link
 * org.framewright.ui.look.Theme}. A state is known by its word and by its mark.
 */
package org.framewright.ui.look;
