/**
 * A strict reader of OpenMetrics 1.0 text, for tests: families, types and samples, or an error that
 * names the line. Source: OpenMetrics 1.0, section "Overall Structure" (ABNF) and "Counter", "Gauge"
 * (prometheus/OpenMetrics, specification/OpenMetrics.md), from memory.
 */
export interface Family {
  readonly type: string;
  readonly help: string;
  readonly samples: { readonly name: string; readonly labels: string; readonly value: number }[];
}

const name = '[a-zA-Z_:][a-zA-Z0-9_:]*';
const label = '[a-zA-Z_][a-zA-Z0-9_]*="(?:[^"\\\\\\n]|\\\\["\\\\n])*"';
const number = '[+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?';
const sampleLine = new RegExp(`^(${name})(\\{(?:${label}(?:,${label})*)?\\})? (${number})$`);
const describing = new RegExp(`^# (TYPE|HELP|UNIT) (${name}) (.+)$`);

export function parseOpenMetrics(text: string): Map<string, Family> {
  if (!text.endsWith('\n# EOF\n')) throw new Error('does not end with # EOF');
  if (text.includes('\r')) throw new Error('has carriage returns');
  const lines = text.slice(0, -'# EOF\n'.length).split('\n').slice(0, -1);
  const families = new Map<string, { type: string; help: string; samples: Family['samples'] }>();
  const seen = new Set<string>();
  let current = '';
  for (const line of lines) {
    const described = describing.exec(line);
    if (described !== null) {
      const [, what, family, rest] = described;
      if (family !== current) {
        if (families.has(family!)) throw new Error(`${family} is not in one piece`);
        families.set(family!, { type: '', help: '', samples: [] });
        current = family!;
      }
      const found = families.get(current)!;
      if (found.samples.length > 0) throw new Error(`described after its samples: ${line}`);
      if (what === 'TYPE') found.type = rest!;
      if (what === 'HELP') found.help = rest!;
      continue;
    }
    const sample = sampleLine.exec(line);
    if (sample === null) throw new Error(`no line of OpenMetrics: ${JSON.stringify(line)}`);
    const [, sampleName, labels = '', value] = sample;
    const family = families.get(current);
    if (family === undefined) throw new Error(`a sample without a family: ${line}`);
    const expected = family.type === 'counter' ? `${current}_total` : current;
    if (sampleName !== expected) throw new Error(`${sampleName} stands in ${current}`);
    if (family.type === 'counter' && Number(value) < 0) throw new Error(`negative: ${line}`);
    if (seen.has(sampleName + labels)) throw new Error(`twice: ${line}`);
    seen.add(sampleName + labels);
    family.samples.push({ name: sampleName!, labels, value: Number(value) });
  }
  return families;
}
