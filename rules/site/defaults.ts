/** What holds where a site file says nothing. */

/** Wait for earlier samples, only where the sensor's own time is trusted. */
export const holdMsDefault = 2_000;
/** Older on arrival than this: kept, not judged. */
export const latenessMsDefault = 600_000;
