import { expect, test } from 'vitest';
import { makeSecret, secretBytes, signatures } from '#agent/notify/channels/signature.ts';

// Source: Standard Webhooks, example of its reference libraries' tests.
const vector = {
  secret: 'whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw',
  id: 'msg_p5jXN8AQM9LWM0D4loKWxJek',
  timestampS: 1_614_265_330,
  body: '{"test": 2432232314}',
  signature: 'v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=',
};

test('the vector of Standard Webhooks', () => {
  expect(signatures([secretBytes(vector.secret)!], vector)).toBe(vector.signature);
});

test('while a secret is changed, both sign, the newer first', () => {
  const [newer, older] = [secretBytes(makeSecret())!, secretBytes(vector.secret)!];
  const both = signatures([newer, older], vector).split(' ');
  expect(both).toEqual([signatures([newer], vector), vector.signature]);
});

test('a body of bytes signs as its text', () => {
  const secrets = [secretBytes(vector.secret)!];
  expect(signatures(secrets, { ...vector, body: Buffer.from(vector.body) })).toBe(vector.signature);
});

test('secrets are whsec_ and 24 to 64 bytes', () => {
  expect(secretBytes(makeSecret())).toHaveLength(32);
  const written = (bytes: number) => `whsec_${Buffer.alloc(bytes, 1).toString('base64')}`;
  expect([23, 24, 64, 65].map((bytes) => secretBytes(written(bytes))?.length ?? null)).toEqual([
    null,
    24,
    64,
    null,
  ]);
  for (const none of ['', 'secret', 'whsec_', 'whsec_###', `x${makeSecret()}`])
    expect(secretBytes(none)).toBeNull();
});
