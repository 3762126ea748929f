package org.framewright.share;

import org.framewright.live.JobView;

/**
 * What there is to tell at one moment.
 *
 * @param number larger for a later moment
 * @param lost whether the job's folder is not there
 */
record Moment(long number, JobView view, boolean lost, DayNow day) {}
