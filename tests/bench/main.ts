/**
 * `npm run bench [-- NAME…] [--json]`: each budget beside its floor, measured in turns, medians.
 *
 * Figures depend on the machine and on what else it does: compare ratios, and run nothing beside.
 */
import { cpus } from 'node:os';
import { alarmLatency } from './alarm-latency.ts';
import { charts } from './charts.ts';
import { ownRules } from './own-rules.ts';
import { pushLatency } from './push-latency.ts';
import { replaySpeed } from './replay-speed.ts';
import { type Figure, table } from './report.ts';
import { startTime } from './start-time.ts';
import { storeWear } from './store-wear.ts';
import { throughput } from './throughput.ts';
import { watch } from './watch.ts';

const benches: Readonly<Record<string, () => Promise<Figure[]>>> = {
  throughput,
  latency: alarmLatency,
  push: pushLatency,
  replay: replaySpeed,
  'own-rules': ownRules,
  store: storeWear,
  charts,
  start: startTime,
  watch,
};
/** Takes ten minutes: only where it is asked for. */
const byName = ['watch'];

const words = process.argv.slice(2);
const json = words.includes('--json');
const names = words.filter((word) => word !== '--json');
const unknown = names.filter((name) => !(name in benches));
if (unknown.length > 0) {
  process.stderr.write(
    `no benchmark is called ${unknown.join(', ')}; there are ${Object.keys(benches).join(', ')}\n`,
  );
  process.exit(2);
}
const figures: Figure[] = [];
for (const name of names.length > 0
  ? names
  : Object.keys(benches).filter((name) => !byName.includes(name))) {
  process.stderr.write(`${name} …\n`);
  figures.push(...(await benches[name]!()));
}
const machine = `${cpus().length} cores, ${cpus()[0]?.model.trim()}, Node ${process.version}`;
process.stdout.write(
  json ? `${JSON.stringify({ machine, figures }, null, 2)}\n` : `${machine}\n${table(figures)}\n`,
);
process.exit(0);
