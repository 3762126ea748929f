package org.framewright.ready;

import java.util.Optional;
import org.framewright.job.ItemTick;

/**
 * An item of the checklist and its tick.
 *
 * @param id its name in the list
 * @param tick the one of today; a tick of another day does not count
 */
public record Ticked(String id, Checklist.Item item, Optional<ItemTick> tick) {}
