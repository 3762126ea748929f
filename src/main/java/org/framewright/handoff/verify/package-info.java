/**
 * Whether a package is whole, by the lists of checksums that came with it: our own and anybody
 * else's, bags (RFC 8493), lists as {@code sha256sum} writes them, media hash lists (ASC MHL).
 *
 * <p>The way through: {@link org.framewright.handoff.verify.OpenPackage} finds which lists lie at
 * the top of a folder. {@code Listing} names all that lies in it; no link is followed, and nothing
 * that is not in it is ever opened, so no list leads out of its folder. {@code BagPlan}, {@code
 * ListPlan} or {@code MhlPlan} makes a {@code Plan} of the texts of the lists and of these names
 * alone: which file has to come to which sums, what is missing, what no list names, and what is
 * wrong with the lists. So most of what can be wrong is known before a file is read. {@code
 * FileReading} then reads each file once and makes a {@link
 * org.framewright.handoff.verify.PackageCheck} of it. Nothing is written, and nothing fetched.
 *
 * <p>A package may be hostile: texts, entries, names, folders and what is said of them are bounded,
 * and each step is linear in what it reads.
 */
package org.framewright.handoff.verify;
