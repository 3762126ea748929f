/**
 * How it looks and reads: every text comes from one resource bundle by way of {@link
 * org.framewright.ui.look.Texts}, every colour from one stylesheet whose names say what a colour is
 * for ({@code -ink}, {@code -sheet}, {@code -needs}), set twice: once for each {@link
 * org.framewright.ui.look.Theme}. A state is known by its word and by its mark.
 */
package org.framewright.ui.look;
