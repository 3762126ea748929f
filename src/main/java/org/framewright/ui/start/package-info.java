/**
 * Starts a job.
 *
 * <p>The way through: a convention's fields become a form of {@link
 * org.framewright.ui.start.FieldEntry entries}; each time somebody types, the newest values are
 * made into a {@link org.framewright.ui.start.JobPreview} in the background: the job's name cut
 * into the pieces that each field gives, the folder tree with example names, and what is wrong
 * beside the field that it concerns. The job is then made by the core and its folder handed to the
 * desk.
 */
package org.framewright.ui.start;
