/**
 * How the day stands: what is done, how fast, when it will be finished and whether the disk holds
 * it.
 *
 * <p>The way through: the job's setups with their states, the counted frames and the time of day go
 * in; one summary comes out, with the pace as a moving average, a forecast that gives a range only
 * where enough setups were shot to have one, and the space that the planned frames still need.
 * Nothing is reckoned over more than a year, whatever times the log holds.
 *
 * <p>Beside it, of the same job: how long disks and the computer's battery last, by the bytes of
 * the last hour's frames; and an order of what is left in which less has to be changed. The frames
 * tell how long changes take, the order is searched on plain numbers, and a person decides.
 */
package org.framewright.day;
