/**
 * A number and what it counts, as English writes it: `counted(1, 'rule')` is "1 rule", `counted(0, 'rule')`
 * "0 rules". `many` where it is not the one with an s.
 */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
