/**
 * A word of a table, or null where the table has none. What the site names may be called as what every
 * object has by itself, so only the table's own words count.
 */
export const ownOf = <T>(table: Readonly<Record<string, T>>, word: string): T | null =>
  Object.hasOwn(table, word) ? table[word]! : null;
