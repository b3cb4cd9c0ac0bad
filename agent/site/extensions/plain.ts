/**
 * Plain data, as JSON keeps it whole: null, truth values, text, finite numbers, lists and records.
 * What a snapshot cannot keep would make a restart judge otherwise.
 */
const valuesMax = 10_000;
const depthMax = 16;

/** What is not plain in it, in a clause; null where all is. */
export function notPlain(value: unknown): string | null {
  return new Walk().of(value, 0);
}

class Walk {
  private values = 0;

  of(value: unknown, depth: number): string | null {
    this.values += 1;
    if (this.values > valuesMax) return `holds more than ${valuesMax} values`;
    if (depth > depthMax) return `lies more than ${depthMax} deep`;
    if (value === null || typeof value === 'string' || typeof value === 'boolean') return null;
    if (typeof value === 'number')
      return Number.isFinite(value) ? null : `holds ${value}, which is no finite number`;
    if (typeof value !== 'object') return `holds a ${typeof value}`;
    return this.inside(value, depth);
  }

  private inside(value: object, depth: number): string | null {
    const prototype: unknown = Object.getPrototypeOf(value);
    if (prototype !== Object.prototype && prototype !== Array.prototype && prototype !== null)
      return `holds a ${value.constructor?.name ?? 'thing'}, not a plain list or record`;
    for (const key of Reflect.ownKeys(value)) {
      if (Array.isArray(value) && key === 'length') continue;
      const property = Object.getOwnPropertyDescriptor(value, key);
      if (typeof key === 'symbol' || property?.enumerable !== true || !('value' in property))
        return `holds ${String(key)}, which is no plain value`;
      const found = this.of(property.value, depth + 1);
      if (found !== null) return found;
    }
    return null;
  }
}

/** So that nothing can be kept in it. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const each of Object.values(value)) frozen(each);
  }
  return value;
}
