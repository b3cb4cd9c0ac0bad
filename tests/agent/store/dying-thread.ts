/** A thread that ends at the first question instead of answering it. */
import { parentPort } from 'node:worker_threads';

parentPort?.on('message', () => process.exit(3));
