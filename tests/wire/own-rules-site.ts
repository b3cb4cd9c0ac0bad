/** A site with a rule kind of its own, whose file the test writes, beside a rule that everybody has. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { siteFile } from '#tests/agent-process.ts';

const signal = (name: string): object => ({
  topic: `m/${name}`,
  payload: { kind: 'json', value: '/v' },
  unit: 'Cel',
  resolution: 0.1,
});

const words = { priority: 'low', consequence: 'It is hot.', actions: ['Cool it.'] };

/** `own` judges `a` with the kind the file brings; `plain` judges `a`, and `far` judges `b`. */
export const ownRulesSite = (file = 'rules/own.ts'): object => ({
  site: 'works',
  timezone: 'Etc/UTC',
  extensions: [file],
  lines: {
    m: {
      bench: {
        kind: 'custom',
        signals: { a: signal('a'), b: signal('b') },
        rules: {
          own: { kind: 'own', signal: 'a', high: '30 Cel', ...words },
          plain: { kind: 'band', signal: 'a', high: '40 Cel', on_delay: '0 s', ...words },
          far: { kind: 'band', signal: 'b', high: '40 Cel', on_delay: '0 s', ...words },
        },
      },
    },
  },
});

/** A kind that answers as `sample` says, where `limit`, `memory` and `reading` are at hand. */
export const ownKind = (sample: string, before = ''): string => `
${before}
export default (forebond) => ({
  kinds: [
    {
      name: 'own',
      version: 1,
      summary: 'The value is above its limit.',
      written: forebond.settings({ high: forebond.quantity('Its limit.') }),
      compile: (read) => ({ limit: read.limit('high') }),
      begin: () => ({ value: 0, count: 0 }),
      sample: ({ limit }, memory, reading, timer) => {
        memory.value = reading.value;
        memory.count += 1;
        ${sample}
      },
      gap: () => {},
      shift: () => {},
      evidence: ({ limit }, memory) => ({ value: memory.value, limit, side: 'high' }),
      sentence: () => 'It reads {$value}, over {$limit}.',
    },
  ],
});
`;

export const sound = ownKind('return reading.value > limit ? 1 : 0;');

export function writeOwn(site: string, text: string): void {
  const file = join(dirname(site), 'rules', 'own.ts');
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}

/** The site file, with its rules beside it. */
export function ownSite(folder: string, text: string): string {
  const site = siteFile(folder, ownRulesSite());
  writeOwn(site, text);
  return site;
}
