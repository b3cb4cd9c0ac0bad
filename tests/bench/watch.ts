/**
 * The page looked at for ten minutes, from tests/browser/soak.ts; that is typed with a browser’s
 * names, so it is loaded by address.
 */
import type { Figure } from './report.ts';

export async function watch(): Promise<Figure[]> {
  const place = new URL('../browser/soak.ts', import.meta.url).href;
  const loaded: { readonly watch: () => Promise<Figure[]> } = await import(place);
  return loaded.watch();
}
