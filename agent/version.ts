/**
 * The version of this Forebond, from package.json: the same file from source, build and image.
 *
 * Never import package.json: the compiler would copy it into dist/, where it would become the
 * package that the build's own imports are resolved by.
 */
import { readFileSync } from 'node:fs';
import { findPackageJSON } from 'node:module';

const path = findPackageJSON(import.meta.url);
if (path === undefined) throw new Error('package.json is missing beside the agent');

export const version: string = (JSON.parse(readFileSync(path, 'utf8')) as { version: string })
  .version;
