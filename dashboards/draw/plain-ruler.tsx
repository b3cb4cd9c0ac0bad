/** A figure against its limit, without time: how long, how high, how steep. */
import { Banks, Needle } from './ruler.tsx';
import { type Marks, placeOn, scaleFor } from './scale.ts';

interface PlainRulerProps {
  readonly name: string;
  /** The figure in words, which the picture repeats. */
  readonly text: string;
  /** In the unit the reader sees. */
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

export function PlainRuler({ name, text, value, low, high }: PlainRulerProps) {
  const marks: Marks = { low: low === null ? [] : [low], high: high === null ? [] : [high] };
  const scale = scaleFor(marks, value === null ? [] : [value], false);
  return (
    <div class="plain-ruler">
      <div class="signal-head">
        <span>{name}</span>
        <span class="value">{text}</span>
      </div>
      {low === null && high === null ? null : (
        <svg class="ruler-picture ruler-plain" role="img" aria-label={`${name}: ${text}`}>
          <Banks marks={marks} scale={scale} />
          {value === null ? null : <Needle x={placeOn(scale, value)} hollow={false} />}
        </svg>
      )}
    </div>
  );
}
