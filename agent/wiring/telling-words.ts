/** What messages say round an alarm's own label, in the languages of people. */
import { deferral, type SignalWord } from '#rules/alarm/label.ts';
import { deferralInGerman } from '#rules/german/deferral.ts';
import { counted } from '#rules/quantity/counted.ts';
import type { Note } from '#rules/telling/chase.ts';

export interface TellingWords {
  readonly word: Readonly<Record<SignalWord, string>>;
  readonly alarm: string;
  readonly deferral: string;
  /** In the title. */
  readonly over: string;
  readonly answered: string;
  /** In the title of one that ended as its rule's gate closed. */
  readonly notJudged: string;
  /** Before the alarm's own sentence. */
  readonly overAt: (clock: string) => string;
  readonly notJudgedSince: (clock: string) => string;
  readonly answeredSince: (clock: string) => string;
  readonly again: string;
  readonly raised: (rule: string) => string;
  readonly limit: (limit: string, side: 'low' | 'high' | null) => string;
  readonly testTitle: string;
  readonly test: string;
  readonly testSteps: readonly string[];
  readonly alarms: (count: number) => string;
  readonly flood: (count: number, waiting: number, worst: string) => string;
  readonly floodOver: (count: number) => string;
  readonly digestTitle: (count: number) => string;
  readonly untold: (notes: string) => string;
  readonly managed: (notes: string) => string;
  /** Behind each of those. */
  readonly eachTime: string;
  readonly digestSteps: readonly string[];
  readonly note: Readonly<Record<Note['why'], string>>;
}

const en: TellingWords = {
  word: { DANGER: 'DANGER', WARNING: 'WARNING', CAUTION: 'CAUTION', NOTICE: 'NOTICE' },
  alarm: 'Alarm',
  deferral,
  over: 'Over',
  answered: 'Answered',
  notJudged: 'Not judged',
  overAt: (clock) => `Over at ${clock}: `,
  notJudgedSince: (clock) => `Not judged since ${clock}, which is no all-clear: `,
  answeredSince: (clock) => `Somebody has it since ${clock}: `,
  again: 'Still unanswered: ',
  raised: (rule) => `${rule} raised an alarm.`,
  limit: (limit, side) => (side === null ? `limit ${limit}` : `${side} limit ${limit}`),
  testTitle: 'Test',
  test: 'This is a test that you asked for. An alarm would come like this.',
  testSteps: ['Nothing is wrong, and there is nothing to do.'],
  alarms: (count) => counted(count, 'alarm'),
  flood: (count, waiting, worst) =>
    `${counted(count, 'alarm')} within a short time, ${waiting} of them unanswered. Worst: ${worst}`,
  floodOver: (count) =>
    `${counted(count, 'alarm')} that came within a short time ${count === 1 ? 'is' : 'are'} answered or over.`,
  digestTitle: (count) => `${counted(count, 'alarm')} that came and went`,
  untold: (notes) => `These came and went without calling anybody: ${notes}.`,
  managed: (notes) => `These are highly managed, so handled with special care: ${notes}.`,
  eachTime: ', told each time',
  digestSteps: ['Look at delay and deadband of each rule that comes and goes, and at its sensor.'],
  note: {
    chattering: 'chattering',
    fleeting: 'over within a minute',
    quiet: 'over within the quiet hours',
  },
};

const alarme = (count: number): string => (count === 1 ? '1 Alarm' : `${count} Alarme`);

const de: TellingWords = {
  word: { DANGER: 'GEFAHR', WARNING: 'WARNUNG', CAUTION: 'VORSICHT', NOTICE: 'HINWEIS' },
  alarm: 'Alarm',
  deferral: deferralInGerman,
  over: 'Vorbei',
  answered: 'Beantwortet',
  notJudged: 'Nicht beurteilt',
  overAt: (clock) => `Vorbei um ${clock}: `,
  notJudgedSince: (clock) => `Seit ${clock} nicht beurteilt, keine Entwarnung: `,
  answeredSince: (clock) => `Jemand hat es übernommen, seit ${clock}: `,
  again: 'Noch immer nicht beantwortet: ',
  raised: (rule) => `${rule}: Alarm ausgelöst.`,
  limit: (limit, side) =>
    side === null
      ? `Grenzwert ${limit}`
      : `${side === 'low' ? 'unterer' : 'oberer'} Grenzwert ${limit}`,
  testTitle: 'Test',
  test: 'Dies ist ein Test, um den Sie gebeten haben. So käme ein Alarm.',
  testSteps: ['Es ist alles in Ordnung, und es ist nichts zu tun.'],
  alarms: alarme,
  flood: (count, waiting, worst) =>
    `${alarme(count)} in kurzer Zeit, davon nicht beantwortet: ${waiting}. Der schwerste: ${worst}`,
  floodOver: (count) => `${alarme(count)} aus kurzer Zeit: beantwortet oder vorbei.`,
  digestTitle: (count) => `${alarme(count)}, gekommen und gegangen`,
  untold: (notes) => `Diese kamen und gingen, ohne dass jemand gerufen wurde: ${notes}.`,
  managed: (notes) => `Diese sind besonders geführt, mit besonderer Sorgfalt behandelt: ${notes}.`,
  eachTime: ', jedes Mal gemeldet',
  digestSteps: [
    'Verzögerung und Totband jeder Regel ansehen, deren Alarm kommt und geht, und ihren Sensor.',
  ],
  note: {
    chattering: 'flatternd',
    fleeting: 'binnen einer Minute vorbei',
    quiet: 'innerhalb der Ruhezeit vorbei',
  },
};

export const tellingWords: Readonly<Record<'en' | 'de', TellingWords>> = { en, de };
