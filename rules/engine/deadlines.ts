/**
 * Deadlines in order of (time, owner), an owner having at most one.
 *
 * Moving a deadline later costs one store: its entry in the heap stays where it is and is put
 * back when it comes up too soon. Moving it earlier adds an entry and orphans the old one.
 */
export class Deadlines {
  /** When the owner wants to be called; Infinity for never. */
  readonly due: Float64Array;
  /** The time under which the owner's living entry stands in the heap; Infinity without one. */
  private readonly entered: Float64Array;
  private readonly times: number[] = [];
  private readonly owners: number[] = [];
  /** The deadline of the owner that `take` returned last. */
  takenAt = 0;

  constructor(owners: number) {
    this.due = new Float64Array(owners).fill(Number.POSITIVE_INFINITY);
    this.entered = new Float64Array(owners).fill(Number.POSITIVE_INFINITY);
  }

  set(owner: number, at: number | null): void {
    const due = at ?? Number.POSITIVE_INFINITY;
    this.due[owner] = due;
    if (due < this.entered[owner]!) this.enter(owner, due);
  }

  get(owner: number): number | null {
    const due = this.due[owner]!;
    return due === Number.POSITIVE_INFINITY ? null : due;
  }

  /** The next owner due at or before `to`, its deadline taken away; -1 when there is none. */
  take(to: number): number {
    while (this.times.length > 0 && this.times[0]! <= to) {
      const time = this.times[0]!;
      const owner = this.owners[0]!;
      this.leave();
      if (this.entered[owner] !== time) continue;
      this.entered[owner] = Number.POSITIVE_INFINITY;
      const due = this.due[owner]!;
      if (due === time) {
        this.due[owner] = Number.POSITIVE_INFINITY;
        this.takenAt = time;
        return owner;
      }
      if (due !== Number.POSITIVE_INFINITY) this.enter(owner, due);
    }
    return -1;
  }

  private enter(owner: number, time: number): void {
    this.entered[owner] = time;
    const { times, owners } = this;
    let i = times.length;
    times.push(time);
    owners.push(owner);
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (!before(time, owner, times[parent]!, owners[parent]!)) break;
      times[i] = times[parent]!;
      owners[i] = owners[parent]!;
      i = parent;
    }
    times[i] = time;
    owners[i] = owner;
  }

  private leave(): void {
    const { times, owners } = this;
    const time = times.pop()!;
    const owner = owners.pop()!;
    const n = times.length;
    if (n === 0) return;
    let i = 0;
    for (;;) {
      let child = 2 * i + 1;
      if (child >= n) break;
      const right = child + 1;
      if (right < n && before(times[right]!, owners[right]!, times[child]!, owners[child]!))
        child = right;
      if (!before(times[child]!, owners[child]!, time, owner)) break;
      times[i] = times[child]!;
      owners[i] = owners[child]!;
      i = child;
    }
    times[i] = time;
    owners[i] = owner;
  }
}

const before = (timeA: number, ownerA: number, timeB: number, ownerB: number): boolean =>
  timeA < timeB || (timeA === timeB && ownerA < ownerB);
