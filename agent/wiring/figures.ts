/** The agent's own figures, for /metrics. */
import type { Intake } from '../intake/intake.ts';
import type { StoreSizes } from '../store/store-types.ts';
import type { JournalState } from '../turn/journal.ts';
import type { Figure } from '../web/ports.ts';

export interface FigureSources {
  readonly intake: Intake;
  readonly journal: JournalState;
  /** Null where it cannot be measured. */
  readonly sizes: StoreSizes | null;
  readonly door: object | null;
  readonly openOccurrences: number;
  readonly holds: number;
  readonly samples: number;
}

const counter = (name: string, help: string, value: number): Figure => ({
  name,
  kind: 'counter',
  help,
  rows: [{ value }],
});
const gauge = (name: string, help: string, value: number): Figure => ({
  name,
  kind: 'gauge',
  help,
  rows: [{ value }],
});

const marksSaid = ({ markCounters }: Intake): Figure => ({
  name: 'forebond_marks_total',
  kind: 'counter',
  help: 'Marks that devices said, and messages of theirs that said none.',
  labels: ['outcome'],
  rows: Object.entries(markCounters).map(([outcome, value]) => ({ labels: [outcome], value })),
});

export function figures(from: FigureSources): Figure[] {
  const { counters } = from.intake;
  return [
    counter('forebond_messages_total', 'Messages taken in.', counters.messages),
    counter('forebond_messages_unrouted_total', 'Messages that fed no signal.', counters.unrouted),
    byCause(from.intake),
    marksSaid(from.intake),
    counter('forebond_samples_total', 'Samples stored, derived ones included.', from.samples),
    counter('forebond_commits_total', 'Transactions on disk.', from.journal.commits),
    counter(
      'forebond_rows_dropped_total',
      'Rows given up because the disk refused for long and nobody waited for them.',
      from.journal.droppedRows,
    ),
    gauge('forebond_rows_waiting', 'Rows that wait for the disk.', from.journal.waitingRows),
    gauge('forebond_occurrences_open', 'Alarms that stand.', from.openOccurrences),
    gauge('forebond_holds', 'Holds that stand.', from.holds),
    ...sizeFigures(from.sizes),
    gauge('forebond_memory_bytes', 'Resident memory.', process.memoryUsage.rss()),
    ...doorFigures(from.door),
  ];
}

const sizeFigures = (sizes: StoreSizes | null): Figure[] =>
  sizes === null
    ? []
    : [
        gauge('forebond_store_bytes', 'Size of the database file.', sizes.fileBytes),
        gauge('forebond_disk_free_bytes', 'Free on the disk of the store.', sizes.diskFreeBytes),
      ];

function byCause(intake: Intake): Figure {
  const causes = Object.entries(intake.counters.causes);
  return {
    name: 'forebond_readings_marked_total',
    kind: 'counter',
    help: 'Readings marked, refused or dropped, by cause.',
    labels: ['cause'],
    rows: causes.map(([cause, value]) => ({ labels: [cause], value })),
  };
}

/** The door's counters are plain numbers and records of numbers by cause. */
function doorFigures(door: object | null): Figure[] {
  const rows: { labels: string[]; value: number }[] = [];
  for (const [name, value] of Object.entries(door ?? {})) {
    if (typeof value === 'number') rows.push({ labels: [name, ''], value });
    else if (typeof value === 'object' && value !== null)
      for (const [cause, n] of Object.entries(value))
        if (typeof n === 'number') rows.push({ labels: [name, cause], value: n });
  }
  return [
    {
      name: 'forebond_door_events',
      kind: 'gauge',
      help: 'What the MQTT door counts.',
      labels: ['what', 'cause'],
      rows,
    },
  ];
}
