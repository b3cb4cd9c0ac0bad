/**
 * Where the built page lies: in dist/dashboards beside package.json, whether the agent itself runs
 * from its sources or from the build.
 */
import { findPackageJSON } from 'node:module';
import { dirname, join } from 'node:path';

const path = findPackageJSON(import.meta.url);
if (path === undefined) throw new Error('package.json is missing beside the agent');

export const pageFolder: string = join(dirname(path), 'dist', 'dashboards');
