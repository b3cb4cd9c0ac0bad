/** The site on the wire: what it is called, and what loading its file changed. */
import { z } from 'zod';
import { epochMs } from './instant.ts';

export const siteSchema = z.object({
  site: z.string(),
  timezone: z.string().describe('Time zone of the site, by its IANA name.'),
  at: epochMs.describe('The engine’s time now.'),
  shifts_min: z
    .array(z.int().min(0).max(1439))
    .describe('When shifts change: minutes after midnight by the clock of the site, ascending.'),
  revision: z
    .string()
    .describe('Hash of all that the rules are made of; another site has another.'),
});
export type SiteView = z.infer<typeof siteSchema>;

const setting = z.union([z.string(), z.number(), z.boolean(), z.null()]);

export const siteLoadedSchema = z.object({
  revision: z.string(),
  changes: z
    .array(z.object({ path: z.string(), before: setting, after: setting }))
    .describe('Setting by setting; null where there was nothing, or is nothing now.'),
  more: z.int().min(0).describe('How many more there are.'),
});
export type SiteLoaded = z.infer<typeof siteLoadedSchema>;
