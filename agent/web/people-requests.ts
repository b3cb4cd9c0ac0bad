/** What may be sent about people. Passwords are taken as they are typed: never trimmed, never cut. */
import { z } from 'zod';
import { limits } from '../limits.ts';
import { emailPattern } from '../people/contract.ts';
import { roleWords } from './people-contract.ts';
import { line } from './requests.ts';

/** Longer than any that is taken, so that the words of the refusal are those of the password rules. */
const password = z
  .string()
  .min(1)
  .max(4 * limits.passwordCharsMax);
const secret = z.string().regex(/^[\w-]{20,100}$/, 'this is no link of an invitation');
const language = z.enum(['en', 'de']);
const email = z
  .string()
  .max(254)
  .regex(emailPattern, 'write one address, as name@works.example')
  .nullable();
const personName = line(1, 100);
const id = z.string().min(1).max(limits.idCharsMax);

export const signInBody = z.strictObject({ name: z.string().min(1).max(200), password });
export const againBody = z.strictObject({ password });
export const changePasswordBody = z.strictObject({ current: password, next: password });
export const changeMeBody = z.strictObject({
  language: language.optional(),
  email: email.optional(),
  push: z.boolean().optional().describe('Messages to the phone, where it is set up for them.'),
});
export const invitationBody = z.strictObject({ secret });
export const acceptBody = z.strictObject({
  secret,
  password,
  name: personName.optional().describe('Of the first administrator; others have one already.'),
  language: language.optional(),
});
export const inviteBody = z.strictObject({
  name: personName,
  role: roleWords,
  language: language.optional(),
  email: email.optional(),
});
export const emailBody = z.strictObject({
  email: email.describe('Where messages go by e-mail; null for nowhere.'),
});
export const roleBody = z.strictObject({ role: roleWords });
export const addTokenBody = z.strictObject({
  label: line(1, 100).describe('What it is for.'),
  role: roleWords,
  days: z
    .int()
    .min(1)
    .max(Math.floor(limits.tokenMsMax / 86_400_000)),
});
export const personPath = z.strictObject({ id: id.describe('A person’s id.') });
export const sessionPath = z.strictObject({ id: id.describe('As the list of them has it.') });
export const tokenPath = z.strictObject({ id: id.describe('A token’s id.') });
