/**
 * What a client asks of the pictures, and where a picture is something else.
 *
 * <p>The way through: {@link org.framewright.handoff.spec.Specification} is read of its YAML by
 * {@code SpecificationFile}, which reports every fault with line and column and what contradicts
 * itself ({@code Contradictions}). {@code Judgement}, a pure function, compares what a file's
 * header says ({@link org.framewright.frames.PictureHeader}) with what is asked, and each {@link
 * org.framewright.handoff.spec.SpecFinding} says of one file what is asked, what it has and what to
 * do about it. Only where a background is asked for are pixels decoded, those of the border ({@link
 * org.framewright.frames.PictureBorder}). Nothing is written.
 */
package org.framewright.handoff.spec;
