/**
 * What a client asks of the pictures, and where a picture is something else.
 *
 * <p>The way through: {@link org.framewright.handoff.spec.SpecFinding} says of one file what is
 * asked, what it has and what to do about it.
 */
package org.framewright.handoff.spec;
