/** Run rules in words: the name each has in evidence, and what a person is told. */
import { nelson, type RunPattern, type RunRuleSet, westernElectric } from '../process/run-rules.ts';

export const runRuleSets = {
  'western-electric': westernElectric,
  nelson,
} as const satisfies Record<string, RunRuleSet>;

/** As it stands in evidence. */
export function patternName(pattern: RunPattern): string {
  const { count } = pattern;
  switch (pattern.look) {
    case 'beyond':
      return `${count} of ${pattern.among} beyond ${pattern.sigmas} sigma`;
    case 'one-side':
      return `${count} on one side`;
    case 'trend':
      return `${count} trending`;
    case 'alternating':
      return `${count} alternating`;
    case 'hugging':
      return `${count} within 1 sigma`;
    case 'avoiding':
      return `${count} outside 1 sigma`;
  }
}

function sentenceOf(pattern: RunPattern): string {
  const { count } = pattern;
  switch (pattern.look) {
    case 'beyond':
      return count === 1
        ? '{$signal} at {$value}, far outside its usual spread about {$reference}.'
        : `{$signal}: ${count} of the last ${pattern.among} readings lie well off {$reference} on one side, the last at {$value}.`;
    case 'one-side':
      return `{$signal}: the last ${count} readings all lie on one side of {$reference}, the last at {$value}.`;
    case 'trend':
      return `{$signal}: the last ${count} readings go one way, each beyond the one before, to {$value}.`;
    case 'alternating':
      return `{$signal}: the last ${count} readings go up and down in turn, the last at {$value}.`;
    case 'hugging':
      return `{$signal}: the last ${count} readings lie closer to {$reference} than its usual spread; is the gauge still reading?`;
    case 'avoiding':
      return `{$signal}: the last ${count} readings keep away from {$reference} on both sides, as if from two sources.`;
  }
}

const sentences: ReadonlyMap<string, string> = new Map(
  Object.values(runRuleSets)
    .flatMap((set: RunRuleSet) => set.rules)
    .map((pattern) => [patternName(pattern), sentenceOf(pattern)]),
);

/** What is told of a pattern by its name; of one that another version knew, that there is one. */
export const patternSentence = (name: string | undefined): string =>
  sentences.get(name ?? '') ??
  '{$signal} at {$value} does not scatter about {$reference} as it usually does.';
