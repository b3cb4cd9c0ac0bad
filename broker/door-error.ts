/** What stops the door or its list of devices. The shell turns it into words for people. */
export type DoorFault =
  | { readonly kind: 'needs-devices'; readonly host: string }
  | {
      readonly kind: 'cannot-listen';
      readonly host: string;
      readonly port: number;
      readonly reason: string;
    }
  /** A list that was there has been taken away. */
  | { readonly kind: 'devices-gone'; readonly path: string }
  | { readonly kind: 'devices-broken'; readonly path: string; readonly problems: string }
  | { readonly kind: 'devices-failed'; readonly path: string; readonly reason: string }
  /** The list is followed, and its copy cannot be written. */
  | { readonly kind: 'devices-not-kept'; readonly path: string; readonly reason: string };

export class DoorError extends Error {
  readonly fault: DoorFault;

  constructor(fault: DoorFault, cause?: unknown) {
    super(`MQTT door: ${Object.values(fault).join(', ')}`, cause === undefined ? {} : { cause });
    this.name = 'DoorError';
    this.fault = fault;
  }
}
