/** A throw-away authority and a certificate of it for a local name, for servers that tests start. */
import 'reflect-metadata';
import { randomUUID } from 'node:crypto';
import * as x509 from '@peculiar/x509';

export interface TestCertificate {
  readonly authority: string;
  readonly certificate: string;
  readonly key: string;
}

const algorithm = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' };

/** `name` is a host name or an address; it lasts for an hour. */
export async function makeCertificate(name = 'localhost'): Promise<TestCertificate> {
  x509.cryptoProvider.set(crypto);
  const keys = () => crypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);
  const [ofAuthority, own] = await Promise.all([keys(), keys()]);
  const span = { notBefore: new Date(Date.now() - 60_000), notAfter: new Date(Date.now() + 3.6e6) };
  const root = await x509.X509CertificateGenerator.createSelfSigned({
    name: `CN=test authority ${randomUUID()}`,
    keys: ofAuthority,
    signingAlgorithm: algorithm,
    ...span,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign, true),
    ],
  });
  const leaf = await x509.X509CertificateGenerator.create({
    subject: `CN=${name}`,
    issuer: root.subject,
    publicKey: own.publicKey,
    signingKey: ofAuthority.privateKey,
    signingAlgorithm: algorithm,
    ...span,
    extensions: [
      new x509.SubjectAlternativeNameExtension([
        { type: 'dns', value: name },
        { type: 'ip', value: '127.0.0.1' },
      ]),
    ],
  });
  const der = await crypto.subtle.exportKey('pkcs8', own.privateKey);
  return {
    authority: root.toString('pem'),
    certificate: leaf.toString('pem'),
    key: x509.PemConverter.encode(der, 'PRIVATE KEY'),
  };
}
