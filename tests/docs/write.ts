/** `npm run docs`: writes the pages that are made from the sources. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { top } from '../tidy/source.ts';
import { generatedPages } from './generated.ts';

for (const [path, make] of generatedPages) {
  const place = join(top, path);
  const text = make();
  const same = (() => {
    try {
      return readFileSync(place, 'utf8') === text;
    } catch {
      return false; // not there yet
    }
  })();
  if (!same) writeFileSync(place, text);
  console.log(`${same ? 'unchanged' : 'written'}  ${path}`);
}
