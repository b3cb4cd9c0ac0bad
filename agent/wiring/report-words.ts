/** Words of the mails that come by the clock, in the languages of people. */
import { loadGuidance } from '#rules/alarm/alarm-load.ts';
import type { Priority } from '#rules/alarm/priority.ts';
import { spanText } from '#rules/alarm/say.ts';
import { counted } from '#rules/quantity/counted.ts';
import type { LoadView } from '../web/load-contract.ts';

type OfPriority = LoadView['figures']['by_priority'][Priority];

export interface ReportWords {
  readonly weekTitle: (day: string, site: string) => string;
  readonly week: (said: WeekSaid) => string;
  readonly noRecord: (span: Pick<WeekSaid, 'from' | 'to'>) => string;
  readonly weekSteps: readonly string[];
  readonly record: string;
  readonly covers: (coveredMs: number, spanMs: number) => string[];
  readonly rates: string;
  readonly perDay: (perDay: number) => string;
  readonly mostInTenMinutes: (count: number) => string;
  readonly tenMinutesAbove: (share: number) => string;
  readonly hoursAbove: (share: number) => string;
  readonly inFlood: (floods: number, share: number) => string;
  readonly priorities: string;
  readonly priority: (priority: Priority, of: OfPriority) => string;
  readonly frequent: string;
  readonly frequentEach: (rule: string, count: number, share: number) => string;
  readonly together: (share: number) => string;
  readonly nuisance: string;
  readonly chattering: (rules: string) => string;
  readonly fleeting: (rules: string) => string;
  readonly standing: (rules: string) => string;
  readonly none: string;
  readonly checkpointTitle: (site: string) => string;
  readonly checkpoint: (said: {
    readonly at: string;
    readonly id: number;
    readonly hash: string;
  }) => string;
  readonly checkpointSteps: (file: string) => string[];
}

interface WeekSaid {
  readonly from: string;
  readonly to: string;
  readonly told: number;
  readonly perDay: number;
}

const one = (value: number): string => String(Number(value.toFixed(1)));
const percent = (share: number): string => `${one(100 * share)} %`;
const { perDay: guide, byPriority } = loadGuidance;
/** An agent that is started anew stands still for a moment. */
const wholeMs = 10 * 60_000;

const en: ReportWords = {
  weekTitle: (day, site) => `Alarm performance, week to ${day} · ${site}`,
  week: ({ from, to, told, perDay }) =>
    `${counted(told, 'alarm')} ${told === 1 ? 'was' : 'were'} told from ${from} to ${to}, ${one(perDay)} a day.`,
  noRecord: ({ from, to }) =>
    `There is no record from ${from} to ${to}: the agent did not run. Nothing was watched then.`,
  weekSteps: [
    'Take the most frequent alarm first: look at its limit, delay and deadband, and at its sensor.',
    'Mend or take out of service what chatters or stands; write down why.',
  ],
  record: 'What this rests on',
  covers: (coveredMs, spanMs) => [
    spanMs - coveredMs < wholeMs
      ? 'The agent ran all the week.'
      : `The agent ran ${spanText(coveredMs)} of ${spanText(spanMs)}. Rates a day are over the time it ran; shares of time count the rest as quiet.`,
    'Targets are guidance of ISA-18.2 / IEC 62682 (from memory and public summaries), which want 30 days or more: take one week for a hint.',
  ],
  rates: 'How many',
  perDay: (n) =>
    `${one(n)} a day (up to ${guide.acceptable} very likely acceptable, ${guide.manageable} the most that can be managed)`,
  mostInTenMinutes: (n) =>
    `at most ${n} within ten minutes (target: no more than ${loadGuidance.mostInTenMinutes})`,
  tenMinutesAbove: (share) =>
    `${percent(share)} of ten minutes had more than 10 (target: under ${percent(loadGuidance.shareOfTenMinutesAbove10)})`,
  hoursAbove: (share) =>
    `${percent(share)} of hours had more than 30 (target: under ${percent(loadGuidance.shareOfHoursAbove30)})`,
  inFlood: (floods, share) =>
    `${counted(floods, 'flood')}, ${percent(share)} of the time (target: under ${percent(loadGuidance.shareInFlood)})`,
  priorities: 'By priority',
  priority: (priority, { count, share, answered, unanswered, median_ms }) =>
    `${priority}: ${count}, ${percent(share)} (target: about ${percent(byPriority[priority])}); ${answered} answered${median_ms === null ? '' : `, half within ${spanText(median_ms)}`}, ${unanswered} not`,
  frequent: 'Most frequent',
  frequentEach: (rule, count, share) => `${rule}: ${count}, ${percent(share)}`,
  together: (share) =>
    `these together: ${percent(share)} (target: at most ${percent(loadGuidance.shareOfTopTen)})`,
  nuisance: 'Chattering, fleeting, standing',
  chattering: (rules) => `chattering, three times within a minute (target: none): ${rules}`,
  fleeting: (rules) => `over within a minute: ${rules}`,
  standing: (rules) => `standing for more than a day (target: under 5): ${rules}`,
  none: 'none',
  checkpointTitle: (site) => `Checkpoint of the ledger · ${site}`,
  checkpoint: ({ at, id, hash }) =>
    `At ${at} the ledger ended with record ${id}, whose hash is ${hash}.`,
  checkpointSteps: (file) => [
    'Keep this mail where whoever runs the box can change nothing.',
    `To verify: save the attachment ${file}, and run on the box or on a backup: forebond ledger verify --data DIR --checkpoint ${file}`,
    'Exit code 0: that record still stands in an unbroken chain. Anything else names the first record that was changed or is missing.',
  ],
};

const comma = (number: string): string => number.replace('.', ',');
const prozent = (share: number): string => comma(percent(share));
const dePriority = { high: 'hoch', medium: 'mittel', low: 'niedrig' } as const;

const de: ReportWords = {
  weekTitle: (day, site) => `Alarmlast, Woche bis ${day} · ${site}`,
  week: ({ from, to, told, perDay }) =>
    `${told === 1 ? 'Ein Alarm wurde' : `${told} Alarme wurden`} von ${from} bis ${to} gemeldet, ${comma(one(perDay))} am Tag.`,
  noRecord: ({ from, to }) =>
    `Von ${from} bis ${to} gibt es keine Aufzeichnung: Der Agent lief nicht. Nichts wurde überwacht.`,
  weekSteps: [
    'Mit dem häufigsten Alarm beginnen: Grenze, Verzögerung, Hysterese und Sensor prüfen.',
    'Was flattert oder steht, beheben oder außer Betrieb nehmen; den Grund aufschreiben.',
  ],
  record: 'Worauf das beruht',
  covers: (coveredMs, spanMs) => [
    spanMs - coveredMs < wholeMs
      ? 'Der Agent lief die ganze Woche.'
      : `Der Agent lief ${comma(spanText(coveredMs))} von ${comma(spanText(spanMs))}. Raten am Tag gelten für die Zeit, in der er lief; Zeitanteile zählen den Rest als ruhig.`,
    'Zielwerte sind Empfehlungen von ISA-18.2 / IEC 62682 (aus dem Gedächtnis und öffentlichen Zusammenfassungen), die 30 Tage oder mehr verlangen: Eine Woche ist ein Hinweis.',
  ],
  rates: 'Wie viele',
  perDay: (n) =>
    `${comma(one(n))} am Tag (bis ${guide.acceptable} sehr wahrscheinlich annehmbar, ${guide.manageable} gerade noch zu bewältigen)`,
  mostInTenMinutes: (n) =>
    `höchstens ${n} in zehn Minuten (Ziel: nicht mehr als ${loadGuidance.mostInTenMinutes})`,
  tenMinutesAbove: (share) =>
    `${prozent(share)} der zehn Minuten hatten mehr als 10 (Ziel: unter ${prozent(loadGuidance.shareOfTenMinutesAbove10)})`,
  hoursAbove: (share) =>
    `${prozent(share)} der Stunden hatten mehr als 30 (Ziel: unter ${prozent(loadGuidance.shareOfHoursAbove30)})`,
  inFlood: (floods, share) =>
    `${counted(floods, 'Alarmflut', 'Alarmfluten')}, ${prozent(share)} der Zeit (Ziel: unter ${prozent(loadGuidance.shareInFlood)})`,
  priorities: 'Nach Priorität',
  priority: (priority, { count, share, answered, unanswered, median_ms }) =>
    `${dePriority[priority]}: ${count}, ${prozent(share)} (Ziel: etwa ${prozent(byPriority[priority])}); ${answered} beantwortet${median_ms === null ? '' : `, die Hälfte in ${comma(spanText(median_ms))}`}, ${unanswered} nicht`,
  frequent: 'Am häufigsten',
  frequentEach: (rule, count, share) => `${rule}: ${count}, ${prozent(share)}`,
  together: (share) =>
    `diese zusammen: ${prozent(share)} (Ziel: höchstens ${prozent(loadGuidance.shareOfTopTen)})`,
  nuisance: 'Flatternd, flüchtig, stehend',
  chattering: (rules) => `flatternd, dreimal in einer Minute (Ziel: keiner): ${rules}`,
  fleeting: (rules) => `innerhalb einer Minute vorbei: ${rules}`,
  standing: (rules) => `länger als einen Tag stehend (Ziel: unter 5): ${rules}`,
  none: 'keine',
  checkpointTitle: (site) => `Prüfpunkt des Protokolls · ${site}`,
  checkpoint: ({ at, id, hash }) =>
    `Um ${at} endete das Protokoll mit Eintrag ${id}, dessen Hash ${hash} ist.`,
  checkpointSteps: (file) => [
    'Diese Mail dort aufbewahren, wo niemand etwas ändern kann, der das Gerät betreibt.',
    `Zum Prüfen: den Anhang ${file} speichern und auf dem Gerät oder an einer Sicherung ausführen: forebond ledger verify --data DIR --checkpoint ${file}`,
    'Rückgabewert 0: Der Eintrag steht noch in einer ununterbrochenen Kette. Alles andere nennt den ersten Eintrag, der geändert wurde oder fehlt.',
  ],
};

export const reportWords: Readonly<Record<'en' | 'de', ReportWords>> = { en, de };
