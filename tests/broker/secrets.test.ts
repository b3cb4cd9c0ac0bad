import { parseOptions } from '@node-rs/argon2';
import { describe, expect, it } from 'vitest';
import { hashSecret, makeSecret, SecretChecker } from '#broker/secrets.ts';

const limits = { verificationsMax: 1, verificationsWaitingMax: 2, secretBytesMax: 64 };
const secret = Buffer.from('the right secret');
const hash = await hashSecret(secret);
const guess = (text: string) => Buffer.from(text);

it('hashes with argon2id at the cost of the OWASP cheat sheet', () => {
  // Password Storage Cheat Sheet: argon2id, m = 19456 (19 MiB), t = 2, p = 1 (from memory).
  expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  expect(parseOptions(hash)).toMatchObject({ saltLen: 16, outputLen: 32 });
});

it('makes secrets of 32 random bytes', () => {
  const made = Array.from({ length: 100 }, makeSecret);
  expect(new Set(made).size).toBe(100);
  for (const text of made) expect(Buffer.from(text, 'base64url').length).toBe(32);
});

describe('checking', () => {
  it('tells right from wrong, and from unknown', async () => {
    const checker = await SecretChecker.create(limits);
    expect(await checker.check('oven', secret, hash)).toBe('right');
    expect(await checker.check('oven', guess('the wrong secret'), hash)).toBe('wrong');
    expect(await checker.check('oven', guess(''), hash)).toBe('wrong');
    expect(await checker.check('oven', guess('x'.repeat(65)), hash)).toBe('wrong');
    expect(await checker.check('nobody', secret, null)).toBe('wrong');
  });

  it('knows a right secret again without a verification, and only for that user and hash', async () => {
    const checker = await SecretChecker.create(limits);
    await checker.check('oven', secret, hash);
    // With every place taken, only what needs no verification is answered.
    const busy = Array.from({ length: 3 }, () => checker.check('oven', guess('wrong'), hash));
    expect(await checker.check('oven', secret, hash)).toBe('right');
    expect(await checker.check('lamp', secret, hash)).toBe('busy');
    expect(await checker.check('oven', secret, await hashSecret('another'))).not.toBe('right');
    expect(await Promise.all(busy)).toEqual(['wrong', 'wrong', 'wrong']);
  });

  it('forgets who is no longer listed', async () => {
    const checker = await SecretChecker.create(limits);
    await checker.check('oven', secret, hash);
    checker.keepOnly((user) => user !== 'oven');
    const busy = Array.from({ length: 3 }, () => checker.check('oven', guess('wrong'), hash));
    expect(await checker.check('oven', secret, hash)).toBe('busy');
    await Promise.all(busy);
  });

  it('is busy beyond its places, then serves again', async () => {
    const checker = await SecretChecker.create(limits);
    const answers = await Promise.all(
      Array.from({ length: 5 }, () => checker.check('oven', secret, hash)),
    );
    expect(answers.toSorted()).toEqual(['busy', 'busy', 'right', 'right', 'right']);
    expect(await checker.check('oven', guess('wrong'), hash)).toBe('wrong');
  });

  it('a hash that cannot be read gives its place back', async () => {
    const checker = await SecretChecker.create(limits);
    await expect(checker.check('oven', secret, 'not a hash')).rejects.toThrow();
    expect(await checker.check('oven', secret, hash)).toBe('right');
  });

  it('an unknown user costs a verification of the same parameters', async () => {
    const checker = await SecretChecker.create({ ...limits, verificationsWaitingMax: 0 });
    const unknown = checker.check('nobody', secret, null);
    expect(await checker.check('oven', secret, hash)).toBe('busy');
    expect(await unknown).toBe('wrong');
  });
});
