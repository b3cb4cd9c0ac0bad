import { describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { Attempts, waitMs } from '#agent/people/attempts.ts';
import { commonPasswords } from '#agent/people/common-passwords.ts';
import { checkPassword } from '#agent/people/password-rules.ts';
import { hashPassword, makeSecret, PasswordChecker } from '#agent/people/secrets.ts';

// Source: NIST SP 800-63B-4 section 3.1.1 and 3.2.2 (from memory of the final text); OWASP ASVS 5.0, 6.1 to 6.3.

const refusal = (password: string, context: string[] = []): string | null => {
  try {
    checkPassword(password, context);
    return null;
  } catch (error) {
    return (error as { code: string }).code;
  }
};

describe('what a password must be', () => {
  test.each([
    ['fourteen chars', 'PEOPLE_PASSWORD_SHORT'],
    ['fifteen quiet k', null],
    ['dürre öfen kühl wägen', null],
    ['鍛冶屋が三人で橋の下に座っている夜', null],
    ['🚜🌉🧲🥨🦉🪵🧊🪨🧵🧶🪡🪢🥁🪗🎻', null],
    ['x'.repeat(257), 'PEOPLE_PASSWORD_LONG'],
  ])('%s', (password, code) => expect(refusal(password)).toBe(code));

  test('64 characters and 256 are taken, and none of them is cut', async () => {
    const long = Array.from({ length: 256 }, (_, i) => String.fromCodePoint(97 + ((i * 7) % 26)));
    expect(refusal(long.slice(0, 64).join(''))).toBe(null);
    expect(refusal(long.join(''))).toBe(null);
    const checker = new PasswordChecker();
    const hash = await hashPassword(long.join(''));
    expect(await checker.check(long.join(''), hash)).toBe(true);
    expect(await checker.check(`${long.slice(0, 255).join('')}A`, hash)).toBe(false);
  });

  test('no composition is asked for, and spaces are characters', () => {
    expect(refusal('quiet brown lathe hums')).toBe(null);
    expect(refusal('7204951836627190')).toBe(null);
  });

  test.each([
    'passwordpassword',
    'Password12345678',
    'p4ssw0rd!p4ssw0rd!',
    'aaaaaaaaaaaaaaaaaaa',
    'abcabcabcabcabcabc',
    'qwertyuiopasdfghjkl',
    '1234567890123456',
    'administrator2026',
    'letmein-letmein-1',
    'forebond forebond',
  ])('%s is tried first', (password) => expect(refusal(password)).toBe('PEOPLE_PASSWORD_KNOWN'));

  // OWASP ASVS 5.0, 6.2.4: at least the 3,000 commonest that the other rules would let pass.
  describe('each of the 3,000 commonest, made long enough', () => {
    const commonest = commonPasswords().slice(0, 3_000);
    const long = (text: string): string =>
      text.repeat(Math.ceil(limits.passwordCharsMin / text.length));
    const made: readonly (readonly [how: string, (text: string) => string])[] = [
      ['repeated', long],
      ['repeated with a mark between', (text) => `${text}-${long(text)}`],
      [
        'with a capital, a year and marks',
        (text) => `${text[0]!.toUpperCase()}${long(text).slice(1)}2026!`,
      ],
      ['before another', (text) => `${text}${'Sunshine'.padEnd(15 - text.length, '1')}`],
      ['filled up with digits', (text) => text.padEnd(15, '1973')],
    ];
    test.each(made)('%s', (_, make) => {
      const taken = commonest.map(make).filter((each) => refusal(each) === null);
      expect(taken).toEqual([]);
    });
    test('there are so many', () => {
      expect(new Set(commonest).size).toBe(3_000);
      expect(commonPasswords().filter((each) => each.length >= 15).length).toBeGreaterThan(30);
    });
  });

  test('whatever stands in the list is, however long it is', () => {
    const long = commonPasswords().filter((each) => [...each].length >= limits.passwordCharsMin);
    expect(long.filter((each) => refusal(each) === null)).toEqual([]);
    expect(refusal(long[0]!.toUpperCase())).toBe('PEOPLE_PASSWORD_KNOWN');
  });

  test('three words of the list are no known password: sentences are what people can remember', () => {
    expect(refusal('purple tractor bridge')).toBe(null);
    expect(refusal('summer dragon football')).toBe('PEOPLE_PASSWORD_KNOWN'); // nothing but the very first
    expect(refusal('orange under seven lamps')).toBe(null);
  });

  test('words of the place and of the person are', () => {
    expect(refusal('harbour-works 12', ['harbour-works'])).toBe('PEOPLE_PASSWORD_KNOWN');
    expect(refusal('MaryO’Sullivan1', ['Mary O’Sullivan'])).toBe('PEOPLE_PASSWORD_KNOWN');
    expect(refusal('harbour-works 12')).toBe(null);
  });

  test('every keyboard writes the same one: NFKC', async () => {
    const checker = new PasswordChecker();
    const hash = await hashPassword('ofen kühl wägen \u212b');
    expect(await checker.check('ofen ku\u0308hl wa\u0308gen \u00c5', hash)).toBe(true);
  });

  test('it is hashed with argon2id, each time with another salt', async () => {
    const [one, two] = await Promise.all([hashPassword('x'), hashPassword('x')]);
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(one).not.toBe(two);
  });

  test('nobody is right, even with the decoy’s hash at hand', async () => {
    expect(await new PasswordChecker().check('anything at all', null)).toBe(false);
  });

  test('so many wait and no more', async () => {
    const checker = new PasswordChecker();
    const asked = limits.passwordVerificationsMax + limits.passwordVerificationsWaitingMax + 3;
    const hash = await hashPassword('x');
    const answers = await Promise.allSettled(
      Array.from({ length: asked }, () => checker.check('y', hash)),
    );
    expect(answers.filter(({ status }) => status === 'rejected')).toHaveLength(3);
  });

  test('a secret has 256 bits and needs no quoting', () => {
    expect(makeSecret()).toMatch(/^[\w-]{43}$/);
    expect(new Set(Array.from({ length: 100 }, makeSecret)).size).toBe(100);
  });
});

describe('guessing is slowed', () => {
  const free = limits.signInFreeFailures;

  test('the wait doubles from a second to a quarter of an hour', () => {
    expect([0, 4, 5, 6, 7, 14, 15, 99].map((tries) => waitMs(tries, free))).toEqual([
      ...[0, 0, 1_000, 2_000, 4_000, 512_000, 900_000, 900_000],
    ]);
  });

  test('a day of guessing at one name, from as many addresses as one likes, is some hundred tries', () => {
    const attempts = new Attempts();
    let tried = 0;
    let shut = false;
    for (let ms = 0; ms < 86_400_000; ms += 500) {
      const answer = attempts.begin('ann', `10.0.${tried}.1`, ms);
      if (answer.kind === 'go') tried += 1;
      shut ||= answer.kind === 'shut';
    }
    expect(tried).toBe(limits.signInFailuresMax);
    expect(shut).toBe(true);
  });

  test('an hour of guessing at many names from one address is few tries', () => {
    const attempts = new Attempts();
    let tried = 0;
    for (let ms = 0; ms < 3_600_000; ms += 100)
      if (attempts.begin(`name-${ms}`, '10.0.0.7', ms).kind === 'go') tried += 1;
    expect(tried).toBeGreaterThan(limits.signInFreeAddressFailures);
    expect(tried).toBeLessThan(40);
  });

  test('many at once gain nothing: an attempt counts before it is verified', () => {
    const attempts = new Attempts();
    const answers = Array.from({ length: 50 }, () => attempts.begin('ann', '10.0.0.7', 0).kind);
    expect(answers.filter((kind) => kind === 'go')).toHaveLength(free);
  });

  test('the right one begins anew for the name, and is not held against the address', () => {
    const attempts = new Attempts();
    for (let i = 0; i < 100; i += 1) {
      expect(attempts.begin('ann', '10.0.0.7', i).kind).toBe('go');
      attempts.succeeded('ann', '10.0.0.7');
    }
  });

  test('what was counted before a restart counts', () => {
    expect(new Attempts().begin('ann', 'a', 1_000, limits.signInFailuresMax).kind).toBe('shut');
  });

  test('what is counted is bounded', () => {
    const attempts = new Attempts();
    for (let i = 0; i <= limits.signInCountedMax; i += 1) attempts.begin(`n${i}`, `a${i}`, i);
    expect(attempts.triesOf('n0')).toBe(0);
    expect(attempts.triesOf('n1')).toBe(1);
  });
});
