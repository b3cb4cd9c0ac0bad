/**
 * Topic filters of a site file: MQTT 3.1.1 clause 4.7, with `+` only (each needs a name) and
 * never the agent's own topics.
 */
export interface TopicProblem {
  readonly problem: string;
  readonly fix: string;
}

/** Levels, counted from 0, that are `+`. */
export const wildcardLevels = (filter: string): readonly number[] =>
  filter.split('/').flatMap((level, i) => (level === '+' ? [i] : []));

/** Null where the filter may be bound. */
export function topicProblem(filter: string): TopicProblem | null {
  const levels = filter.split('/');
  if (filter.includes('\u0000'))
    return { problem: 'a topic holds no NUL character', fix: 'Take it out.' };
  if (levels.some((level) => level.includes('#')))
    return {
      problem: `"${filter}" has a #, which stands for any number of levels`,
      fix: 'Write a + for each level that varies, and a name for each +.',
    };
  const half = levels.find((level) => level.includes('+') && level !== '+');
  if (half !== undefined)
    return {
      problem: `"${half}" mixes + with other characters`,
      fix: 'A + stands alone between slashes (MQTT 3.1.1, 4.7.1.3).',
    };
  if (levels[0] === 'forebond')
    return {
      problem: 'topics under forebond/ are the agent’s own',
      fix: 'Have the device publish somewhere else.',
    };
  if (filter.startsWith('$') || filter.startsWith('+'))
    return {
      problem: `"${filter}" begins with ${filter.startsWith('$') ? '$' : '+'}`,
      fix: 'Begin with a level of your own, as bench/+/t.',
    };
  return null;
}
