/**
 * Local time of an IANA zone to an instant.
 *
 * In the hour that comes twice, when clocks go back, the earlier instant is meant, unless the
 * rows before have passed it already: then the later. In the hour that is left out nothing is meant.
 */
import type { EpochMs } from '#rules/signal/sample.ts';

const dayMs = 86_400_000;
const offsetPattern = /^GMT(?:([+-])(\d\d):(\d\d)(?::(\d\d))?)?$/;

/** Clocks are set on quarter hours; an offset holds from one to the next. */
const quarterMs = 900_000;
const quartersMax = 4_096;

export class LocalTime {
  readonly #format: Intl.DateTimeFormat;
  readonly #offsets = new Map<number, number>();

  /** Throws RangeError for a name that is no zone. */
  constructor(timezone: string) {
    this.#format = new Intl.DateTimeFormat('en-US', {
      timeZone: timezone,
      timeZoneName: 'longOffset',
    });
  }

  /**
   * `localMs`: what the local clock shows, as if it were UTC. `previousMs`: the instant of the row
   * before. NaN where the local clock never shows that.
   */
  instantOf(localMs: number, previousMs: EpochMs): EpochMs {
    const before = this.#offsetMsAt(localMs - dayMs);
    const after = this.#offsetMsAt(localMs + dayMs);
    if (before === after) return localMs - before;
    const found = [localMs - before, localMs - after]
      .filter((instant) => localMs - instant === this.#offsetMsAt(instant))
      .sort((one, other) => one - other);
    return found.find((instant) => instant >= previousMs) ?? found[0] ?? Number.NaN;
  }

  #offsetMsAt(instant: EpochMs): number {
    const quarter = Math.floor(instant / quarterMs);
    const known = this.#offsets.get(quarter);
    if (known !== undefined) return known;
    const parts = this.#format.formatToParts(quarter * quarterMs);
    const name = parts.find((part) => part.type === 'timeZoneName')?.value ?? '';
    const match = offsetPattern.exec(name);
    if (match === null) throw new Error(`an offset nobody expected: ${name}`);
    const [, sign, hours = '0', minutes = '0', seconds = '0'] = match;
    const size = (Number(hours) * 60 + Number(minutes)) * 60_000 + Number(seconds) * 1000;
    const offset = sign === '-' ? -size : size;
    if (this.#offsets.size >= quartersMax) this.#offsets.clear();
    this.#offsets.set(quarter, offset);
    return offset;
  }
}
