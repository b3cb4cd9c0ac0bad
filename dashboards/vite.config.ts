/**
 * How the page is built: one folder of files with their hash in the name, served by the agent.
 *
 * Always true: nothing of zod is in it (schemas are for the agent; they would cost as much as the
 * rest of the page), and no script or style stands in the HTML itself, which the agent's content
 * security policy would refuse.
 */
import { defineConfig, type Plugin } from 'vite';

const withoutSchemas: Plugin = {
  name: 'without-schemas',
  enforce: 'pre',
  resolveId(id, importer) {
    if (/^zod(\/|$)/.test(id))
      throw new Error(
        `${importer ?? 'the page'} imports ${id}, which the page does not ship. Import a file of rules/ without schemas, or only its types.`,
      );
    return null;
  },
};

export default defineConfig({
  root: import.meta.dirname,
  plugins: [withoutSchemas],
  resolve: { conditions: ['forebond-source', 'module', 'browser'] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: '../dist/dashboards',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    rollupOptions: {
      input: {
        page: `${import.meta.dirname}/index.html`,
        worker: `${import.meta.dirname}/worker/worker.ts`,
      },
      output: {
        // A worker's reach is the folder it is served from, under a name that stays.
        entryFileNames: ({ name }) => (name === 'worker' ? 'worker.js' : 'assets/[name]-[hash].js'),
      },
    },
  },
});
