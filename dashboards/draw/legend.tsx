/** What the marks of a chart mean: each as it is drawn, with its words. */
import type { ComponentChild } from 'preact';
import { say } from '../text/say.ts';
import type { LegendItem } from './series.ts';

export const LegendList = ({ items }: { readonly items: readonly LegendItem[] }) =>
  items.length === 0 ? null : (
    <ul class="legend">
      {items.map((item) => (
        <li key={item}>
          <svg class={`key key-${item}`} viewBox="0 0 32 16" aria-hidden="true">
            {samples[item]}
          </svg>
          {say('legend')[item]}
        </li>
      ))}
    </ul>
  );

const hatch = (
  <path
    class="key-hatch"
    d="M1 0 9 8M9 0l8 8M17 0l8 8M25 0l6 6M0 8l8 8M8 8l8 8M16 8l8 8M24 8l8 8"
  />
);

const samples: Readonly<Record<LegendItem, ComponentChild>> = {
  mean: <path class="key-line" d="M1 11 11 5l10 5 10-6" />,
  range: <path class="key-area" d="M1 6 11 1l10 4 10-4v10l-10 5-10-4-10 4Z" />,
  doubtful: (
    <>
      <path class="key-thick" d="M3 11 13 5l8 5 8-6" />
      <path class="key-hollow" d="M3 11 13 5l8 5 8-6" />
    </>
  ),
  unusable: hatch,
  partly: <g class="key-partly">{hatch}</g>,
  gap: <path class="key-line" d="M1 10h8M23 6h8" />,
  limit: (
    <>
      <path class="key-limit" d="M0 10h32" />
      <path class="key-bank" d="M0 8 8 0M8 8l8-8M16 8l8-8M24 8l8-8" />
    </>
  ),
  forecast: <path class="key-dotted" d="M1 14 31 3" />,
  alarm: <rect class="key-full" x="2" y="4" width="28" height="8" />,
  answered: <rect class="key-outline" x="3" y="5" width="26" height="6" />,
};
