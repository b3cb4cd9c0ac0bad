/** A moment on the wire. */
import { z } from 'zod';

/** Milliseconds since 1970-01-01T00:00:00Z, up to the end of the year 9999. */
export const epochMs = z.int().min(0).max(253_402_300_799_999);
