/** What a new site file changes, setting by setting. */
import { expect, test } from 'vitest';
import { siteChanges } from '#agent/site/changes.ts';
import type { SiteSource } from '#agent/site/revision.ts';
import type { SiteWritten } from '#rules/site/schema.ts';

const source = (rule: object): SiteSource => ({
  site: {
    site: 'works',
    timezone: 'Etc/UTC',
    lines: { l: { r: { kind: 'residue', rules: { 'at-limit': rule } } } },
  } as unknown as SiteWritten,
  materials: {},
});

const path = 'lines.l.r.rules.at-limit';

test('a list that is written empty is a change too', () => {
  const { changes } = siteChanges(
    source({ respond: '1 min' }),
    source({ respond: '1 min', do_not: [] }),
  );
  expect(changes).toEqual([{ path: `${path}.do_not`, before: null, after: '[]' }]);
});

test('and so is one that was emptied', () => {
  const { changes } = siteChanges(source({ do_not: ['run'] }), source({ do_not: [] }));
  expect(changes).toEqual([
    { path: `${path}.do_not`, before: null, after: '[]' },
    { path: `${path}.do_not.0`, before: 'run', after: null },
  ]);
});
