/** Own rules on the wire. */
import { z } from 'zod';
import { epochMs } from './instant.ts';

export const ownRulesFileSchema = z.object({
  file: z.string().describe('As the site file names it.'),
  text: z.string().describe('Which text of it runs: the beginning of its SHA-256.'),
  state: z.enum(['on', 'off']),
  why: z.string().nullable().describe('Why it is off; null while it is on.'),
  since: epochMs.nullable(),
  rules: z.array(z.string()).describe('Rules of its kinds; nobody judges them while it is off.'),
  signals: z.array(z.string()).describe('What its kinds work out; nobody does while it is off.'),
});

export const ownRulesSchema = z.object({ files: z.array(ownRulesFileSchema) });
export type OwnRulesView = z.infer<typeof ownRulesSchema>;

export const ownRulesNamed = z.strictObject({
  file: z.string().min(1).max(200).describe('As the site file names it.'),
});
