/**
 * All sets of the studio, those that need a person first.
 *
 * <p>The way through: while the page is in front, an {@link
 * org.framewright.studio.OverviewFollower} asks the store. What it hears becomes a {@code
 * SetsKnown} on its own thread, in which what was known stays where the store is away; the newest
 * goes to the {@code SetsModel}, which words each set as a {@code SetLine} and keeps those that
 * have what was typed. Nothing here changes a set.
 */
package org.framewright.ui.sets;
