/** An e-mail address of a person: given on the box, by an administrator, by themselves. */
import { mkdirSync } from 'node:fs';
import { Command } from 'commander';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { userCommand } from '#agent/cli/user.ts';
import { Book } from '#agent/people/book.ts';
import { freshFolder } from '#tests/agent/store/folders.ts';
import { Staffed } from './staffed.ts';

describe('on the box', () => {
  async function user(folder: string, ...words: string[]): Promise<string[]> {
    const lines: string[] = [];
    const program = new Command().exitOverride().configureOutput({ writeErr: () => undefined });
    userCommand(program, {
      print: (line) => lines.push(line),
      readInput: async () => '',
      nowMs: () => Date.UTC(2026, 10, 25),
    });
    for (const each of [
      program,
      ...program.commands,
      ...program.commands.flatMap((c) => c.commands),
    ])
      each.exitOverride().configureOutput({ writeErr: () => undefined });
    await program.parseAsync(['user', ...words, '--data', folder], { from: 'user' });
    return lines;
  }
  const addressOf = (folder: string): string | null => new Book(folder).now.people[0]!.email;

  test('with user add, changed and taken away with user email, seen in the list', async () => {
    const folder = freshFolder();
    mkdirSync(folder, { recursive: true });
    const ann = 'ann@works.example';
    await user(folder, 'add', 'Ann Byrne', '--role', 'engineer', '--email', ann);
    expect(addressOf(folder)).toBe(ann);
    expect((await user(folder, 'list')).join()).toContain(ann);
    expect(JSON.parse((await user(folder, 'list', '--json'))[0]!)).toMatchObject([{ email: ann }]);
    await user(folder, 'email', 'Ann Byrne', 'byrne@works.example');
    expect(addressOf(folder)).toBe('byrne@works.example');
    await user(folder, 'email', 'Ann Byrne', 'none');
    expect(addressOf(folder)).toBeNull();
    const notes = new Book(folder).now.notes.filter(({ what }) => what === 'address-changed');
    expect(notes).toHaveLength(2);
    // The ledger gets no address.
    expect(JSON.stringify(notes)).not.toContain('@');
    await expect(user(folder, 'email', 'Ann Byrne', 'ann at works')).rejects.toThrow(/address/);
    await expect(user(folder, 'email', 'Nobody', ann)).rejects.toMatchObject({
      code: 'PEOPLE_UNKNOWN',
    });
  });
});

describe('on the page', () => {
  let staffed: Staffed;
  beforeEach(async () => {
    staffed = await Staffed.open();
  });
  afterEach(async () => {
    expect(staffed.faults).toEqual([]);
    await staffed.close();
  });

  test('an administrator enters it for somebody, and takes it away', async () => {
    const { cookie, id: by } = await staffed.person('administrator');
    const { id } = await staffed.person('operator');
    const give = (email: string | null) =>
      staffed.ask(`/api/people/${id}/email`, { cookie }, { email });
    expect((await give('o@works.example')).json).toMatchObject({ id, email: 'o@works.example' });
    expect(staffed.notes.at(-1)).toMatchObject({ what: 'address-changed', person: id, by });
    expect((await give(null)).json).toMatchObject({ email: null });
    expect((await give('no address')).status).toBe(400);
  });

  test('one’s own needs no password again, and is on record without the address', async () => {
    const { cookie, id } = await staffed.person('operator');
    staffed.nowMs += 6 * 60_000;
    const { json } = await staffed.ask('/api/me', { cookie }, { email: 'o@works.example' });
    expect(json).toMatchObject({ person: { email: 'o@works.example' } });
    expect(staffed.notes.at(-1)).toMatchObject({ what: 'address-changed', person: id, by: id });
    expect(JSON.stringify(staffed.notes)).not.toContain('@');
  });

  test('for it the password is asked once more; nobody else may', async () => {
    const { cookie } = await staffed.person('administrator');
    const { id, cookie: own } = await staffed.person('operator');
    const path = `/api/people/${id}/email`;
    expect((await staffed.ask(path, { cookie: own }, { email: null })).code).toBe('PEOPLE_MAY_NOT');
    staffed.nowMs += 6 * 60_000;
    expect((await staffed.ask(path, { cookie }, { email: null })).code).toBe('PEOPLE_AGAIN_NEEDED');
  });
});
