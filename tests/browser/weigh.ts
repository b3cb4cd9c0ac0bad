/** What a page holds while it looks on: signals that tick, and live nodes, listeners and heap. */
import type { MqttClient } from 'mqtt';
import type { BrowserContext, CDPSession, Page } from 'playwright-core';

const tickMs = 250;

/** Publishes to every cell four times a second until it is stopped. */
export function cellsTick(client: MqttClient, cells: number): () => void {
  let turn = 0;
  const timer = setInterval(() => {
    turn += 1;
    for (let i = 0; i < cells; i += 1)
      client.publish(`bench/cell-${i}/t`, (40 + 5 * Math.sin((turn + i) / 9)).toFixed(1));
  }, tickMs);
  return () => clearInterval(timer);
}

/** Opens the station of the cells, waits until all are there, and a session that weighs. */
export async function watchCells(
  page: Page,
  context: BrowserContext,
  cells: number,
): Promise<CDPSession> {
  await page.evaluate(() => {
    location.hash = '#/station/mounts-2%2Fbench';
  });
  await page
    .locator('.signal-row')
    .nth(cells - 1)
    .waitFor({ timeout: 20_000 });
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable');
  return session;
}

export interface Weight {
  readonly nodes: number;
  readonly listeners: number;
  readonly heapBytes: number;
}

/** After what can be collected has been. */
export async function weigh(session: CDPSession): Promise<Weight> {
  await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string): number => metrics.find((metric) => metric.name === name)!.value;
  return { nodes: of('Nodes'), listeners: of('JSEventListeners'), heapBytes: of('JSHeapUsedSize') };
}
