/**
 * Deadlines in order of (time, owner), an owner having at most one.
 *
 * A heap that holds each owner at most once. Moving a deadline later, or taking it away, costs one
 * store: the owner stays where it stands and is put right when it comes up too soon.
 */
export class Deadlines {
  /** When the owner wants to be called; Infinity for never. Whoever writes to it says so to `moved`. */
  readonly due: Float64Array;
  /** The time it stands under in the heap, its deadline or one before it; Infinity outside. */
  private readonly entered: Float64Array;
  private readonly heap: Int32Array;
  /** Where in the heap it stands, if it does. */
  private readonly places: Int32Array;
  private size = 0;
  /** The deadline of the owner that `take` returned last. */
  takenAt = 0;

  constructor(owners: number) {
    this.due = new Float64Array(owners).fill(Number.POSITIVE_INFINITY);
    this.entered = new Float64Array(owners).fill(Number.POSITIVE_INFINITY);
    this.heap = new Int32Array(owners);
    this.places = new Int32Array(owners);
  }

  set(owner: number, at: number | null): void {
    this.due[owner] = at ?? Number.POSITIVE_INFINITY;
    this.moved(owner);
  }

  /** Its place in `due` was written to. */
  moved(owner: number): void {
    const due = this.due[owner]!;
    const stood = this.entered[owner]!;
    if (!(due < stood)) return;
    this.entered[owner] = due;
    this.rise(owner, stood === Number.POSITIVE_INFINITY ? this.size++ : this.places[owner]!);
  }

  get(owner: number): number | null {
    const due = this.due[owner]!;
    return due === Number.POSITIVE_INFINITY ? null : due;
  }

  /** The next owner due at or before `to`, its deadline taken away; -1 when there is none. */
  take(to: number): number {
    while (this.size > 0) {
      const owner = this.heap[0]!;
      const time = this.entered[owner]!;
      if (time > to) return -1;
      const due = this.due[owner]!;
      if (due === time || due === Number.POSITIVE_INFINITY) this.leave(owner);
      else {
        this.entered[owner] = due;
        this.sink(owner);
      }
      if (due !== time) continue;
      this.due[owner] = Number.POSITIVE_INFINITY;
      this.takenAt = time;
      return owner;
    }
    return -1;
  }

  /** Takes the first out of the heap. */
  private leave(first: number): void {
    this.entered[first] = Number.POSITIVE_INFINITY;
    this.size -= 1;
    if (this.size > 0) this.sink(this.heap[this.size]!);
  }

  /** Puts an owner at `from` or above, where it belongs. */
  private rise(owner: number, from: number): void {
    const { heap, entered, places } = this;
    const time = entered[owner]!;
    let i = from;
    while (i > 0) {
      const place = (i - 1) >> 1;
      const parent = heap[place]!;
      if (!before(time, owner, entered[parent]!, parent)) break;
      heap[i] = parent;
      places[parent] = i;
      i = place;
    }
    heap[i] = owner;
    places[owner] = i;
  }

  /** Puts an owner at the top or below, where it belongs. */
  private sink(owner: number): void {
    const { heap, entered, places, size } = this;
    const time = entered[owner]!;
    let i = 0;
    for (;;) {
      let place = 2 * i + 1;
      if (place >= size) break;
      let child = heap[place]!;
      if (place + 1 < size) {
        const other = heap[place + 1]!;
        if (before(entered[other]!, other, entered[child]!, child)) {
          child = other;
          place += 1;
        }
      }
      if (!before(entered[child]!, child, time, owner)) break;
      heap[i] = child;
      places[child] = i;
      i = place;
    }
    heap[i] = owner;
    places[owner] = i;
  }
}

const before = (timeA: number, ownerA: number, timeB: number, ownerB: number): boolean =>
  timeA < timeB || (timeA === timeB && ownerA < ownerB);
