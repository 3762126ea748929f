/**
 * Slates: cards that are held into the first picture of a setup, with a code that says which setup
 * of which job it is.
 *
 * <p>The way through: a {@link org.framewright.frames.slate.Slate} is the text of such a code, made
 * of a job's {@link org.framewright.frames.slate.JobKey} and a setup's code, with a check behind
 * them. {@link org.framewright.frames.slate.SlateReader} finds it in the grey values of a picture
 * and says what it found as a {@link org.framewright.frames.slate.SlateReading}: {@code MarkFinder}
 * finds marks in the picture at all sizes, {@code TrioFinder} three that belong to one symbol,
 * {@code SymbolReader} what that says. {@link org.framewright.frames.slate.SlateSetups} finds the
 * setup that is meant. Nothing here knows files: which picture of a frame is looked at, and when,
 * is said in {@code frames}.
 *
 * <p>What is not sure is no slate: a text counts only with its mark, a key that can be one, and the
 * right check.
 */
package org.framewright.frames.slate;
