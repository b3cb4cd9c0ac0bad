/** Colours for a canvas, from the page's own tokens: light, dark and forced colours alike. */
export interface Colours {
  readonly ink: string;
  readonly quiet: string;
  readonly line: string;
  readonly edge: string;
  readonly slate: string;
  readonly surface: string;
}

export function colours(): Colours {
  const style = getComputedStyle(document.documentElement);
  const token = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: token('ink'),
    quiet: token('quiet'),
    line: token('line'),
    edge: token('edge'),
    slate: token('slate'),
    surface: token('surface'),
  };
}

/** Pixels of a rem: canvases follow the reader's text size. */
export const remPx = (): number =>
  Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
