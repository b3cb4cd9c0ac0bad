/**
 * A phone, as far as Web Push goes: opens what was encrypted for it, and verifies who sent it.
 *
 * Sources: RFC 8291 section 3 and 4, RFC 8188 section 2, RFC 8292 section 2; node:crypto alone.
 */
import {
  createDecipheriv,
  createECDH,
  createPublicKey,
  type ECDH,
  hkdfSync,
  randomBytes,
  verify,
} from 'node:crypto';

export interface TestPhone {
  readonly p256dh: string;
  readonly auth: string;
  open(body: Buffer): string;
}

export function aPhone(
  privateKey?: string,
  auth = randomBytes(16).toString('base64url'),
): TestPhone {
  const own = createECDH('prime256v1');
  if (privateKey === undefined) own.generateKeys();
  else own.setPrivateKey(Buffer.from(privateKey, 'base64url'));
  const secret = Buffer.from(auth, 'base64url');
  return {
    p256dh: own.getPublicKey().toString('base64url'),
    auth,
    open: (body) => open(body, own, secret),
  };
}

function open(body: Buffer, own: ECDH, auth: Buffer): string {
  const [salt, recordBytes, idBytes] = [body.subarray(0, 16), body.readUInt32BE(16), body[20]!];
  const sender = body.subarray(21, 21 + idBytes);
  const record = body.subarray(21 + idBytes);
  if (record.length > recordBytes) throw new Error('more than one record');
  const hkdf = (key: Buffer, with_: Buffer, info: Buffer | string, bytes: number): Buffer =>
    Buffer.from(hkdfSync('sha256', key, with_, info, bytes));
  const info = Buffer.concat([Buffer.from('WebPush: info\0'), own.getPublicKey(), sender]);
  const ikm = hkdf(own.computeSecret(sender), auth, info, 32);
  const key = hkdf(ikm, salt, 'Content-Encoding: aes128gcm\0', 16);
  const nonce = hkdf(ikm, salt, 'Content-Encoding: nonce\0', 12);
  const cipher = createDecipheriv('aes-128-gcm', key, nonce);
  cipher.setAuthTag(record.subarray(-16));
  const padded = Buffer.concat([cipher.update(record.subarray(0, -16)), cipher.final()]);
  const end = padded.lastIndexOf(2);
  if (end < 0 || padded.subarray(end + 1).some((byte) => byte !== 0)) throw new Error('no end');
  return padded.subarray(0, end).toString();
}

export interface VapidClaims {
  readonly aud: string;
  readonly exp: number;
  readonly sub: string;
}

/** Of `authorization`; throws where the signature is not of the key beside it. */
export function vapidOf(authorization: string): { claims: VapidClaims; key: string } {
  const [, token, key] = /^vapid t=([\w.-]+), ?k=([\w-]+)$/.exec(authorization) ?? [];
  if (token === undefined || key === undefined) throw new Error(`no vapid: ${authorization}`);
  const [head = '', body = '', signature = ''] = token.split('.');
  const parsed = (part: string): unknown => JSON.parse(Buffer.from(part, 'base64url').toString());
  const { alg } = parsed(head) as { alg: string };
  if (alg !== 'ES256') throw new Error(`signed by ${alg}`);
  const point = Buffer.from(key, 'base64url');
  const jwk = {
    kty: 'EC',
    crv: 'P-256',
    x: point.subarray(1, 33).toString('base64url'),
    y: point.subarray(33).toString('base64url'),
  };
  const ok = verify(
    'sha256',
    Buffer.from(`${head}.${body}`),
    { key: createPublicKey({ key: jwk, format: 'jwk' }), dsaEncoding: 'ieee-p1363' },
    Buffer.from(signature, 'base64url'),
  );
  if (!ok) throw new Error('the signature is not of this key');
  return { claims: parsed(body) as VapidClaims, key };
}
