/** Whoever is at the box reads there the fingerprint of the certificate that a phone is asked to trust. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fingerprint } from '#agent/people/authority.ts';
import { scratchFolder, startAgentProcess } from '#tests/agent-process.ts';
import { prepSite } from './prep-site.ts';

test('an agent with a certificate of its own prints its fingerprint, one without TLS prints none', {
  timeout: 120_000,
}, async () => {
  const site = prepSite(3_600_000);
  const folder = join(scratchFolder(), 'data');
  const words = ['--people', '--http', '0.0.0.0:0'];
  const own = await startAgentProcess({ site, folder, words });
  const root = readFileSync(join(folder, 'tls', 'root.pem'), 'utf8');
  const line = `certificate fingerprint (SHA-256)  ${fingerprint(root)}\n`;
  await expect.poll(() => own.stdout(), { timeout: 20_000 }).toContain(line);
  await own.stop();
  const plain = await startAgentProcess({ site, folder: join(scratchFolder(), 'data') });
  await plain.stop();
  expect(plain.stdout()).not.toContain('fingerprint');
});
