/** How large a site may be, and what holds where its file says nothing. */

/** Signals of one site, derived ones and those of wildcards included. */
export const signalsMax = 2_000;
/** Rules of one site. */
export const rulesMax = 10_000;
/** Wait for earlier samples, only where the sensor's own time is trusted. */
export const holdMsDefault = 2_000;
/** Older on arrival than this: kept, not judged. */
export const latenessMsDefault = 600_000;
/** The same of a hand reading: a shift's readings are often entered at its end. */
export const handLatenessMsDefault = 86_400_000;
/** A cold junction that said nothing for so long is stale, where nobody said how often it speaks. */
export const coldJunctionStaleMsDefault = 600_000;
/** Webhooks of one site. */
export const webhooksMax = 20;
