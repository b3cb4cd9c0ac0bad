/**
 * Thirty signals live on the page for ten minutes, weighed each minute: does anything grow? The
 * first minute fills the trails of the rulers and is told apart; FOREBOND_WATCH_MIN sets another length.
 */
import { setTimeout as sleep } from 'node:timers/promises';
import type { Figure } from '../bench/report.ts';
import { startBenchLine } from './bench-line.ts';
import { launch, open } from './chromium.ts';
import { cellsTick, type Weight, watchCells, weigh } from './weigh.ts';

const cells = 30;
const minutesUsual = 10;
/** A trail gains a point each 7.5 s until it has its hour; a pair of numbers takes some 140 B of the heap. */
const trailBytesPerMin = cells * 8 * 140;

const text = ({ nodes, listeners, heapBytes }: Weight): string =>
  `${nodes} nodes, ${listeners} listeners, ${(heapBytes / 1e6).toFixed(2)} MB`;

export async function watch(): Promise<Figure[]> {
  const minutes = Number(process.env.FOREBOND_WATCH_MIN ?? minutesUsual);
  const [line, browser] = await Promise.all([startBenchLine(), launch()]);
  const stop = cellsTick(line.client, cells);
  const weights: Weight[] = [];
  try {
    const { page, context } = await open(browser, `${line.agent.page}/#/`);
    const session = await watchCells(page, context, cells);
    for (let minute = 0; minute <= minutes; minute += 1) {
      if (minute > 0) await sleep(60_000);
      const weight = await weigh(session);
      weights.push(weight);
      process.stderr.write(`  ${String(minute).padStart(3)} min  ${text(weight)}\n`);
    }
  } finally {
    stop();
    await browser.close();
    await line.stop();
  }
  return [verdict(weights)];
}

/** From the second weighing on: what grew in all, and a minute. */
function verdict(weights: readonly Weight[]): Figure {
  const [first, last] = [weights[1] ?? weights[0]!, weights.at(-1)!];
  const minutes = Math.max(1, weights.length - 2);
  const heapPerMin = (last.heapBytes - first.heapBytes) / minutes;
  const nodes = last.nodes - first.nodes;
  const listeners = last.listeners - first.listeners;
  const heapMax = 2 * trailBytesPerMin;
  return {
    name: `${cells} signals at 4 Hz on the page, after ${minutes} min`,
    budget: `no more nodes or listeners; heap under ${Math.round(heapMax / 1_000)} kB a minute`,
    floor: `${text(first)} after the first minute`,
    figure: `${text(last)}; heap ${(heapPerMin / 1_000).toFixed(1)} kB a minute`,
    ratio: null,
    met: nodes <= 50 && listeners <= 5 && heapPerMin < heapMax,
    note: `nodes ${nodes >= 0 ? '+' : ''}${nodes}, listeners ${listeners >= 0 ? '+' : ''}${listeners}`,
  };
}
