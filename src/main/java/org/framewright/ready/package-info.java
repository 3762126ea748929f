/**
 * Ready before the first frame, and done after the last: what can be measured is measured, what
 * people look after is ticked, and both come to one answer.
 *
 * <p>The way through: {@code Gathering} asks the job, its disk and the {@link
 * org.framewright.ready.Surroundings} once and writes down what it finds as {@link
 * org.framewright.ready.Facts}; {@code Checks} makes of them, and of nothing else, an {@link
 * org.framewright.ready.Outcome} for each {@link org.framewright.ready.Topic}, so that every fault
 * can be given to it. In the evening {@code WrapFacts} and {@code WrapChecks} do the same. A {@link
 * org.framewright.ready.Checklist} is a file that a person may change, and a tick of it an event of
 * the job. An {@link org.framewright.ready.Answer} puts all together; the job's log keeps it with
 * what it rests on, and {@link org.framewright.ready.Lapse} says what of that is no longer so.
 */
package org.framewright.ready;
