/**
 * Which way a setting is stricter, by rule kind: `less` or `more` of it, or `true`; `free` where
 * neither way keeps people from harm. Of a setting that is not written, what the kind takes instead.
 */
export interface Way {
  readonly stricter: 'less' | 'more' | 'true' | 'free';
  readonly usual?: string | number;
}

const less: Way = { stricter: 'less' };
const more: Way = { stricter: 'more' };
const free: Way = { stricter: 'free' };
const delays = {
  on_delay: { ...less, usual: '0 s' },
  // Held longer it is told no later; let go sooner than usual it comes and goes.
  off_delay: more,
};
const limits = { high: less, high_high: less, low: more, low_low: more };
/** Wider than usual, the alarm never ends, and the next time is no news. */
const deadband: Way = { ...less, usual: '0 K' };

export const stricterWays: Readonly<Record<string, Readonly<Record<string, Way>>>> = {
  band: { ...limits, ...delays, deadband, inclusive: { stricter: 'true' } },
  deviation: {
    ...delays,
    deadband,
    inclusive: { stricter: 'true' },
    // Of the place itself: its drawing says it.
    target: free,
    below: less,
    above: less,
    far_below: less,
    far_above: less,
  },
  approach: {
    ...delays,
    high: less,
    low: more,
    within: more,
    window: less,
    confidence: { ...less, usual: 90 },
  },
  'self-heat': { ...delays, excess: less, rise: less, rise_per: more, window: less },
  age: {
    limit: less,
    early: less,
    damp_limit: less,
    damp_above: less,
    once: { stricter: 'true' },
    season_from: free,
    season_until: free,
  },
  lost: { after: less },
  stuck: { for: less, tolerance: more },
};
