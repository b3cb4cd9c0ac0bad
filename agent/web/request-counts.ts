/** Counts of requests and refusals since the start, for /metrics. */
import type { Figure } from './ports.ts';

export class RequestCounts {
  private readonly answered = new Map<string, number>();
  private readonly refused = new Map<string, number>();

  answer(status: number): void {
    const kind = `${Math.floor(status / 100)}xx`;
    this.answered.set(kind, (this.answered.get(kind) ?? 0) + 1);
  }

  refuse(code: string): void {
    this.refused.set(code, (this.refused.get(code) ?? 0) + 1);
  }

  figures(): Figure[] {
    const rows = (counts: Map<string, number>) =>
      [...counts].map(([label, value]) => ({ labels: [label], value }));
    return [
      {
        name: 'forebond_web_answers_total',
        kind: 'counter',
        help: 'HTTP requests answered, by kind of status.',
        labels: ['status'],
        rows: rows(this.answered),
      },
      {
        name: 'forebond_web_problems_total',
        kind: 'counter',
        help: 'HTTP requests refused or failed, by code.',
        labels: ['code'],
        rows: rows(this.refused),
      },
    ];
  }
}
