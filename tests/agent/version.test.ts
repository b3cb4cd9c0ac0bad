import { expect, test } from 'vitest';
import { version } from '#agent/version.ts';
import packageFile from '../../package.json' with { type: 'json' };

test('the version is the one package.json tells', () => {
  expect(version).toBe(packageFile.version);
});
