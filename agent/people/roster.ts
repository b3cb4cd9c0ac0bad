/**
 * What is kept of people: people.json in the data folder. Names stand here and nowhere else, so that
 * taking a row out forgets the person while the ledger stays whole.
 */
import { join } from 'node:path';
import { z } from 'zod';
import type { Person } from './contract.ts';
import { KeptFile } from './kept-file.ts';
import { roles } from './rights.ts';

export const peopleFileName = 'people.json';

const id = z.string().regex(/^[a-z]-[a-z2-7]{10}$/);
const ms = z.int().min(0);
const hashed = z.string().regex(/^[0-9a-f]{64}$/);
const role = z.enum(roles);

const personRow = z.strictObject({
  id,
  name: z.string().min(1).max(100),
  role,
  language: z.enum(['en', 'de']),
  email: z.string().max(254).nullable(),
  push: z.boolean(),
  made: ms,
  /** argon2id in PHC text; null until they have chosen one. */
  password: z.string().nullable(),
  /** Sessions begun before this are over. */
  sessions_after: ms,
  /** Wrong passwords in a row. */
  failures: z.int().min(0),
  invitation: z.strictObject({ hash: hashed, ends: ms }).nullable(),
});
export type PersonRow = z.output<typeof personRow>;

const tokenRow = z.strictObject({
  id,
  label: z.string().min(1).max(100),
  role,
  hash: hashed,
  made: ms,
  ends: ms,
  by: z.string().max(100),
});
export type TokenRow = z.output<typeof tokenRow>;

const noteRow = z.strictObject({
  at: ms,
  what: z.string(),
  person: z.string().nullable(),
  by: z.string().nullable(),
  detail: z.string().optional(),
});
export type NoteRow = z.output<typeof noteRow>;

const roster = z.strictObject({
  format: z.literal(1),
  people: z.array(personRow),
  tokens: z.array(tokenRow),
  /** Changes that the ledger does not have yet. */
  notes: z.array(noteRow),
  /** Where the page was last served. */
  page: z.string().nullable(),
});
export type Roster = z.output<typeof roster>;

const nobody: Roster = { format: 1, people: [], tokens: [], notes: [], page: null };

export const openRoster = (folder: string): KeptFile<Roster> =>
  new KeptFile(join(folder, peopleFileName), roster, nobody);

export const personOf = ({ id, name, role, language, email, push }: PersonRow): Person => ({
  id,
  name,
  role,
  language,
  addresses: { email, push },
});

/** Names that only differ in case or in how they are composed are one name. */
export const folded = (name: string): string =>
  name.normalize('NFKC').trim().toLowerCase().replaceAll(/\s+/g, ' ');
