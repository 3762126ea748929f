/**
 * A whole job over days, with people, cameras, cards, computers and faults all at work together.
 *
 * <p>{@link org.framewright.world.Script} makes of one seed what happens, as a list of {@link
 * org.framewright.world.Step}s. {@link org.framewright.world.World} does each step with the program
 * itself, on a folder in memory, by a clock of its own, and lets the disk fail or the program be
 * killed where the step says so. After each step it asks {@link org.framewright.world.Model}, which
 * was written from the README and the formats, what the job must say now. A script that fails is
 * made as short as it can be by {@link org.framewright.world.Shrinking}, and told as a story.
 * {@link org.framewright.world.Simulator} plays as many days as one likes.
 */
package org.framewright.world;
