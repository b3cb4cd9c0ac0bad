/** Like rules of like stations hold their settings in one object, and none holds another's. */
import { expect, test } from 'vitest';
import { sharingSettings } from '#rules/plan/shared-settings.ts';
import { compiled, signalLine } from './site.ts';

const store = (topic: string, high: string): string =>
  `{ kind: custom, signals: { air: ${signalLine(topic, 'Cel')} },
     rules: { warm: { kind: band, signal: air, high: ${high}, priority: low,
       consequence: None., actions: [None.] } } }`;

test('equal ones are one object, others are not', () => {
  const { plan, problems } = compiled(
    `l: { a: ${store('a', '30 Cel')}, b: ${store('b', '303.15 K')}, c: ${store('c', '31 Cel')} }`,
  );
  expect(problems).toEqual([]);
  const [a, b, c] = ['a', 'b', 'c'].map(
    (station) => plan.rules.find(({ id }) => id === `l/${station}/warm`)!.settings,
  );
  expect(b).toBe(a);
  expect(c).not.toBe(a);
  expect(c).not.toEqual(a);
});

test('what differs only in a limit that is free, or in its kind, is not shared; nor is anything of a kind of the site', () => {
  const { plan } = compiled(`l: { a: ${store('a', '30 Cel')} }`);
  const rule = plan.rules.find(({ id }) => id === 'l/a/warm')!;
  const other = { ...rule.kind, name: 'other' };
  const own = { ...rule.kind, name: 'own', extension: 'own.ts 1' };
  const all = [
    { ...rule, settings: { low: null } },
    { ...rule, settings: { low: Number.NEGATIVE_INFINITY } },
    { ...rule, kind: other, settings: { low: null } },
    { ...rule, kind: own, settings: { low: 1 } },
    { ...rule, kind: own, settings: { low: 1 } },
    { ...rule, settings: { low: null } },
  ];
  const shared = sharingSettings(all);
  expect(shared.map(({ settings }) => settings)).toEqual(all.map(({ settings }) => settings));
  expect(new Set(shared.map(({ settings }) => settings)).size).toBe(all.length - 1);
});
