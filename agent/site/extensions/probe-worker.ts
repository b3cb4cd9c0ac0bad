/** The thread that compiles a site with rules of its own, to see whether that comes to an end. */
import { parentPort, workerData } from 'node:worker_threads';
import { Engine } from '#rules/engine.ts';
import { compileSource } from '../revision.ts';
import type { ProbeWork } from './probe.ts';
import { type CallWatch, fileOf, nobody } from './watch.ts';

const { source, called }: ProbeWork = workerData;
const cell = new Int32Array(called);
const names = Object.keys(source.extensions ?? {}).sort();

const watch: CallWatch = {
  ...nobody,
  enter: (extension) => void Atomics.store(cell, 0, names.indexOf(fileOf(extension))),
  leave: () => void Atomics.store(cell, 0, -1),
};

const { plan } = compileSource(source, {}, watch);
Engine.begin(plan, 0, { emit: () => undefined, planOf: () => plan });
parentPort?.postMessage('done');
