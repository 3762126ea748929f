/**
 * The hand-off: what goes to the retoucher, whether a package is whole, and what came back.
 *
 * <p>The way through: the page has four parts, of which one is seen. In the first a person says
 * what goes; each answer is planned in the background, the newest last, into a {@link
 * org.framewright.ui.handoff.Looked}, the lines of what would go and what would not, and nothing is
 * written before somebody says so. What was written before is read from the job's records. A
 * package of anybody is checked by its own lists. What came back is read against the records: one
 * line a select or a file that answers none, with both pictures side by side. {@code HandOffScreen}
 * lays the page out and has its commands, {@code HandOffDeeds} is what they do, and {@code
 * HandOffModels} outlive the page.
 *
 * <p>A client's list is read in the background, the newest text last, into a {@link
 * org.framewright.ui.handoff.ListReading}: each part with what it was taken for, and for what is
 * unclear the frames among which a person chooses. Once nothing is unclear, its frames are planned
 * as selects are.
 *
 * <p>A folder that goes meanwhile, or that a stranger made, is a sentence on the page and no
 * failure of it.
 */
package org.framewright.ui.handoff;
