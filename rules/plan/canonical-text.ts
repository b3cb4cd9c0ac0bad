/** Plain data to one text, the same for the same data whatever the order of its keys. */
export function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`;
  if (value !== null && typeof value === 'object') {
    const members = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, member]) => `${JSON.stringify(key)}:${canonicalText(member)}`);
    return `{${members.join(',')}}`;
  }
  // JSON has no infinity, and a limit that is free differs from one that is absent.
  if (typeof value === 'number' && !Number.isFinite(value)) return `"${value}"`;
  return JSON.stringify(value) ?? 'null';
}
