/**
 * Media hash lists as the American Society of Cinematographers defines them (ASC MHL 1.0, 15 March
 * 2022): a folder {@code ascmhl} at the top of what it covers, in it one list a generation, which
 * is never changed, and a chain of their checksums.
 *
 * <p>{@link org.framewright.mhl.MhlHistory} reads such a folder within stated bounds and says what
 * it claims of each file; a claim proves nothing, but a file that contradicts it was changed or has
 * decayed. {@link org.framewright.mhl.MhlFolder} adds a generation: {@code GenerationText} writes
 * it, it is flushed and gets its name by a move that replaces nothing, and then the chain is
 * replaced as a whole. What a kill leaves between the two is a whole list that the chain does not
 * name yet, and the next generation brings it in.
 *
 * <p>The standard knows no SHA-256. Our lists carry XXH128, and whatever kind of hash earlier
 * generations have; {@link org.framewright.mhl.RunningHashes} makes several in one pass.
 */
package org.framewright.mhl;
