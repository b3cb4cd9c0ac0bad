import { describe, expect, test } from 'vitest';
import { workerFile } from '#agent/worker-file.ts';

describe('workerFile', () => {
  test('names the source beside a caller that runs from source', () => {
    const url = workerFile('./seal-worker.ts', 'file:///app/agent/store/seal.ts');
    expect(url.href).toBe('file:///app/agent/store/seal-worker.ts');
  });
  test('names the build beside a caller that runs from the build', () => {
    const url = workerFile('./seal-worker.ts', 'file:///app/dist/agent/store/seal.js');
    expect(url.href).toBe('file:///app/dist/agent/store/seal-worker.js');
  });
});
