/** Every rule of every station, seen to raise and to clear, latch or hold; each sentence read. */
import { describe, expect, test } from 'vitest';
import { stationKinds } from '#rules/stations/all.ts';
import { Line, type Scenario, toldIn } from './scenario.ts';
import { scenarios } from './scenarios/all.ts';

const played = new Map(
  scenarios.map((scenario) => [
    scenario.kind,
    scenario.stories.map((story) => {
      const { station = scenario.station } = story;
      const line = new Line({ ...scenario, station });
      story.tell(line);
      return { story, line };
    }),
  ]),
);
const bare = (rule: string): string => rule.slice(rule.lastIndexOf('/') + 1);

test('every station kind has its scenarios', () => {
  const kinds = [...stationKinds.keys()].filter((name) => name !== 'custom');
  expect([...played.keys()].toSorted()).toEqual(kinds.toSorted());
});

describe.each(scenarios)('$kind', (scenario: Scenario) => {
  const stories = played.get(scenario.kind)!;
  const effects = stories.flatMap(({ line }) => line.effects);

  test('is told as it was when a person last read it', async () => {
    const text = stories.flatMap(({ story, line }) => [story.title, ...toldIn(line), '']);
    const head = [
      `Scenarios of the station ${scenario.kind}: what happens, and what people are told. To be read;`,
      'written by `npx vitest run tests/rules/stations/scenarios.test.ts -u`.',
      '',
    ];
    await expect([...head, ...text].join('\n')).toMatchFileSnapshot(
      `./scenarios/${scenario.kind}.txt`,
    );
  });

  test('raises every rule', () => {
    const raised = new Set(
      effects.flatMap((e) =>
        e.kind === 'transition' && e.transition === 'raised' ? [bare(e.rule)] : [],
      ),
    );
    const rules = stationKinds.get(scenario.kind)!.rules.map(({ name }) => name);
    expect(rules.filter((rule) => !raised.has(rule))).toEqual([]);
  });

  test('sees each of them clear, latch or hold', () => {
    const ended = new Set([
      ...effects.flatMap((e) =>
        e.kind === 'transition' && e.transition === 'returned' ? [bare(e.rule)] : [],
      ),
      ...effects.flatMap((e) => (e.kind === 'hold' ? [bare(e.by)] : [])),
      ...Object.keys(scenario.stays ?? {}),
    ]);
    const rules = stationKinds.get(scenario.kind)!.rules.map(({ name }) => name);
    expect(rules.filter((rule) => !ended.has(rule))).toEqual([]);
  });

  test('says nothing unknown', () => {
    const unknown = stories.flatMap(({ line }) =>
      toldIn(line).filter((said) => /unknown|\{\$/.test(said)),
    );
    expect(unknown).toEqual([]);
  });
});
